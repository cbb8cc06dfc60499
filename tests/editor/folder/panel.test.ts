import { assert } from "chai";
import { commands, Range, type TextDocument, ViewColumn, WorkspaceEdit, window, workspace } from "vscode";
import { change, closeAll, placeCursor, positionOf, rangeOf, show, write } from "../designs";
import { layHouse } from "../house";
import { clickInPanel, focusInPanel, look, seen, thing } from "../panel";
import { hand } from "../stage";
import { until } from "../until";

describe("the diagram beside the text", () => {
  beforeEach(async () => {
    await closeAll();
    await commands.executeCommand("workbench.action.closeSidebar");
    await commands.executeCommand("notifications.clearAll");
  });
  after(closeAll);

  async function open(test: Mocha.Context, path?: string): Promise<TextDocument> {
    const document = await show(path ?? (await layHouse()));
    await commands.executeCommand("sunwright.showDiagram");
    // The first picture waits until server and drawing worker have started.
    await seen(test, "the string is drawn", thing("S1"), () => true, 45_000);
    return document;
  }

  /** Where the cursor is, in the column of the text. */
  function cursorLine(document: TextDocument): string | undefined {
    const editor = window.activeTextEditor;
    if (editor?.document !== document || editor.viewColumn !== ViewColumn.One) return undefined;
    return document.lineAt(editor.selection.active.line).text;
  }

  it("shows the design in front, and follows an edit", async function () {
    const document = await open(this);
    const string = await seen(this, "the string is told", thing("S1"));
    assert.match(string.attributes["aria-label"] ?? "", /^S1: .*15 × Sallow405/);
    const findings = await seen(this, "its finding is listed", ".findings li.error");
    assert.include(findings.words, "612.1 V");
    await change(document, "15 x", "14 x");
    await seen(this, "the picture follows", thing("S1"), ({ attributes }) =>
      /14 × Sallow405/.test(attributes["aria-label"] ?? ""),
    );
    await seen(this, "the finding goes", ".findings h2", ({ words }) => words === "Nothing found");
    assert.equal(window.activeTextEditor?.document, document);
    assert.equal(window.activeTextEditor?.viewColumn, ViewColumn.One);
  });

  it("a click and the Enter key lead to the line, in the editor that was there", async function () {
    const document = await open(this);
    await clickInPanel(this, thing("INV"));
    await until("the cursor is at the inverter", () => cursorLine(document)?.startsWith("inverter INV"));
    await focusInPanel(this, thing("S1"));
    await hand(this, "press", { key: "ArrowRight" });
    const wire = await seen(this, "the focus goes along the wire", "[data-id]:focus");
    assert.match(wire.attributes["aria-label"] ?? "", /^W\d+: run from S1/);
    await hand(this, "press", { key: "Enter" });
    await until("the cursor is at the run", () =>
      cursorLine(document)?.startsWith(`run ${wire.attributes["data-id"]} `),
    );
    assert.lengthOf(window.visibleTextEditors, 1);
  });

  it("marks what the cursor stands on, and brings it in sight", async function () {
    const document = await open(this, "examples/alder-cottage/alder-cottage.sun");
    for (let times = 0; times < 3; times++) await clickInPanel(this, "button[aria-label='Zoom in']");
    await window.showTextDocument(document, ViewColumn.One);
    await placeCursor(positionOf(document, "GRID {"));
    await seen(this, "the supply is marked and seen", ".at-cursor", ({ attributes, box, window: whole }) => {
      const isSeen = box.x >= 0 && box.x + box.width <= whole.width && box.y >= 0 && box.y + box.height <= whole.height;
      return attributes["data-id"] === "GRID" && isSeen;
    });
    for (const [line, id] of [
      ["measured CU.K9", "CU.K9"],
      ["departure surge-second on INV.pv2", "INV"],
      ["departure dc-voltage-drop on W4", "W4"],
    ] as const) {
      await placeCursor(positionOf(document, line));
      await seen(this, `${line} marks ${id}`, ".at-cursor", ({ attributes }) => attributes["data-id"] === id);
    }
    await placeCursor(positionOf(document, "lowest-temperature"));
    await until("nothing is marked", async () => (await look(this, ".at-cursor")) === null);
  });

  it("what is seen and where the focus is stay over an edit; a broken line leaves the last picture and says so", async function () {
    const document = await open(this);
    await clickInPanel(this, "button[aria-label='Zoom in']");
    await focusInPanel(this, thing("INV"));
    const { attributes: before } = await seen(this, "it is enlarged", ".stage svg");
    const edit = async (from: string, to: string): Promise<void> => {
      const at = document.getText().indexOf(from);
      const change = new WorkspaceEdit();
      change.replace(document.uri, new Range(document.positionAt(at), document.positionAt(at + from.length)), to);
      await workspace.applyEdit(change);
    };
    await edit("15 x", "14 x");
    await seen(this, "the picture follows", thing("S1"), ({ attributes }) =>
      /14 × Sallow405/.test(attributes["aria-label"] ?? ""),
    );
    const { attributes: after } = await seen(this, "it is there", ".stage svg");
    // Its height is that of the page, where the list of findings has become shorter.
    const seenFrom = ({ viewBox = "" }: Readonly<Record<string, string>>) => viewBox.split(" ").slice(0, 3);
    assert.deepEqual(seenFrom(after), seenFrom(before));
    assert.isTrue((await look(this, thing("INV")))?.hasFocus);
    await edit("string S1 is 14 x", "string S1 is { { 14 x");
    const note = await seen(this, "it is said", ".unread");
    assert.match(note.words, /line \d+ cannot be read: what it last said is drawn/);
    assert.match((await look(this, thing("S1")))?.attributes["aria-label"] ?? "", /14 × Sallow405/);
  });

  it("the focus in the list of findings stays on its finding over an edit", async function () {
    const document = await open(this);
    const rule = ".findings li .rule";
    await seen(this, "its finding is listed", rule, ({ words }) => words === "string-voltage");
    await focusInPanel(this, rule);
    const edit = new WorkspaceEdit();
    edit.replace(document.uri, rangeOf(document, "15 x"), "16 x");
    await workspace.applyEdit(edit);
    await seen(this, "the picture follows", thing("S1"), ({ attributes }) =>
      /16 × Sallow405/.test(attributes["aria-label"] ?? ""),
    );
    await seen(this, "the focus is there", `${rule}[data-key^='rule string-voltage']`, ({ hasFocus }) => hasFocus);
  });

  it("tells of a thing what the text's hover tells, and its links lead to the text", async function () {
    await open(this);
    await hand(this, "pointInPanel", { selector: thing("S1") });
    const card = await seen(this, "the card is shown", ".card:not([hidden])");
    assert.include(card.words, "612.1 V");
    assert.include(card.words, "Sallow405");
    assert.isNull(await look(this, ".card script"));
  });

  it("the links of what is told are reached by a key, and Escape leads back", async function () {
    await open(this);
    await focusInPanel(this, thing("S1"));
    await hand(this, "press", { key: "d" });
    await seen(this, "the focus is on a link", ".card a:focus", ({ hasFocus }) => hasFocus);
    await hand(this, "press", { key: "Escape" });
    await seen(this, "the string has the focus again", thing("S1"), ({ hasFocus }) => hasFocus);
  });

  it("an open switch shows what stays live, in the picture and in words", async function () {
    await open(this);
    await clickInPanel(this, "button[aria-pressed]");
    const caution = await seen(this, "the cautions are there", ".switches .important");
    assert.match(caution.words, /Prove dead .* cannot be switched off/);
    await clickInPanel(this, thing("Q1"));
    await seen(this, "it is drawn open", thing("Q1"), ({ attributes }) => {
      return attributes["data-open"] === "true" && /, open, live$/.test(attributes["aria-label"] ?? "");
    });
    const words = await seen(this, "it is said", ".live li", ({ words }) => words.includes("Q1.in"));
    assert.match(words.words, /^S1 in any light .* keeps live: S1, Q1\.in/);
    assert.equal((await look(this, thing("S1")))?.attributes["data-live"], "true");
    await focusInPanel(this, thing("Q1"));
    await hand(this, "press", { key: "o" });
    await seen(this, "it is closed again", thing("Q1"), ({ attributes }) => attributes["data-open"] === "false");
  });

  it("says so where there is nothing to draw, and where a file is in several designs", async function () {
    await show(await write("examples/training/trial-empty.sun", ""));
    await commands.executeCommand("sunwright.showDiagram");
    await seen(this, "it is said", ".empty", ({ words }) => words.startsWith("Nothing is declared yet"));
    await show("examples/training/parts/house.sun");
    const choice = await seen(this, "there is a choice", ".site select");
    assert.match(choice.attributes["aria-label"] ?? "", /belongs to several/);
  });

  it("is there again after its page was closed, and goes with its tab", async function () {
    await open(this);
    await commands.executeCommand("workbench.action.focusSecondEditorGroup");
    await commands.executeCommand("workbench.action.closeActiveEditor");
    await until("it is gone", async () => (await look(this, "#panel")) === null);
    await commands.executeCommand("sunwright.showDiagram");
    await seen(this, "it is there again", thing("S1"));
  });
});
