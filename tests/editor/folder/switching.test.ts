import { assert } from "chai";
import {
  commands,
  extensions,
  Selection,
  TabInputCustom,
  TabInputText,
  TabInputWebview,
  type TextDocument,
  window,
  workspace,
} from "vscode";
import { closeAll, findings, idOf, positionOf, read, show, untilFound, untilGone } from "../designs";
import { layHouse } from "../house";
import { later, until } from "../until";

const accept = "workbench.action.acceptSelectedQuickOpenItem";

/** Opens a house with its cursor on a word. */
async function houseAt(word: string, mend?: (text: string) => string): Promise<TextDocument> {
  const document = await show(await layHouse(mend));
  const position = positionOf(document, word);
  const editor = await window.showTextDocument(document);
  editor.selection = new Selection(position, position);
  await until("its server answers", async () => {
    const symbols = await commands.executeCommand<unknown[]>("vscode.executeDocumentSymbolProvider", document.uri);
    return symbols?.length > 0;
  });
  return document;
}

/** The page that an answer is given on. */
async function page(part: string): Promise<string> {
  const document = await until(`a page on ${part} is open`, () =>
    workspace.textDocuments.find(({ uri }) => uri.scheme === "sunwright-answer" && uri.path.includes(part)),
  );
  return document.getText();
}

/** Presses the key that takes what is marked in a list, until the list has gone or another has come. */
async function takeUntil<Answer>(what: string, done: () => Answer | undefined | false): Promise<Answer> {
  return until(what, async () => {
    await later(150);
    const found = done();
    if (found) return found;
    await commands.executeCommand(accept);
    return false;
  });
}

describe("questions about a design", () => {
  afterEach(async () => {
    await commands.executeCommand("sunwright.clearWhatIf");
    await closeAll();
  });

  it("what if: problems are of what is supposed, and go with it; nothing is written", async () => {
    const document = await houseAt("string S1", (text) => text.replace("15 x", "14 x"));
    const written = document.getText();
    await untilGone(document.uri, "string-voltage");
    await commands.executeCommand("sunwright.whatIf", "S1.count = 16; site.lowest-temperature = -20 degC");
    const finding = await untilFound(document.uri, "string-voltage");
    assert.match(finding.message, /^What if: S1: 16 × Sallow405/);
    const marks = findings(document.uri).filter((each) => idOf(each) === "what-if");
    assert.deepEqual(
      marks.map(({ range }) => document.getText(range)).sort(),
      ["14", document.getText().match(/lowest-temperature: +(-?\d+ degC)/)![1]!].sort(),
    );
    assert.equal(document.getText(), written);
    assert.isFalse(document.isDirty);
    await commands.executeCommand("sunwright.clearWhatIf");
    await untilGone(document.uri, "string-voltage");
    await untilGone(document.uri, "what-if");
    assert.equal(await read(workspace.asRelativePath(document.uri, false)), written);
  });

  it("what if: goes with the server that remembered it", async () => {
    const document = await houseAt("string S1", (text) => text.replace("15 x", "14 x"));
    await commands.executeCommand("sunwright.whatIf", "S1.count = 16");
    await untilFound(document.uri, "string-voltage");
    await commands.executeCommand("sunwright.restartServer");
    await untilGone(document.uri, "what-if");
  });

  it("how to isolate: by keys alone, what the cursor stands on first, and a page with the answer", async () => {
    await houseAt("INV is");
    void commands.executeCommand("sunwright.howToIsolate");
    await takeUntil("the answer is shown", () =>
      workspace.textDocuments.some(({ uri }) => uri.scheme === "sunwright-answer"),
    );
    const text = await page("How to isolate INV");
    assert.match(text, /^# How to isolate INV\n/);
    assert.include(text, "Prove dead at the point of work");
    // The first page of a window as well: whatever shows it may not have been started before.
    const isAsPage = extensions.getExtension("vscode.markdown-language-features") ? isShown : isText;
    await until("it can be seen as a page, where the editor can show one", () =>
      window.tabGroups.all.flatMap(({ tabs }) => tabs).some(({ input }) => isAsPage(input)),
    );
  });

  it("what stays live: by keys alone, in every mode where none is chosen", async () => {
    await houseAt("Q1 is");
    void commands.executeCommand("sunwright.whatStaysLive");
    await takeUntil("the answer is shown", () =>
      workspace.textDocuments.some(({ uri }) => uri.path.includes("What stays live")),
    );
    const text = await page("What stays live");
    assert.match(text, /^# What is live with Q1 open, by day and by night, with the grid and in an island\n/);
  });
});

function isText(input: unknown): boolean {
  return input instanceof TabInputText && input.uri.scheme === "sunwright-answer";
}

function isShown(input: unknown): boolean {
  return input instanceof TabInputWebview || input instanceof TabInputCustom;
}
