import { assert } from "chai";
import { ConfigurationTarget, commands, WorkspaceEdit, window, workspace } from "vscode";
import { closeAll, positionOf, rangeOf, show } from "../designs";
import { layHouse } from "../house";
import { clickInPanel, focusInPanel, type Look, seen } from "../panel";
import { hand } from "../stage";
import { later, until } from "../until";

const picture = ".chart-picture svg";
const tab = (name: string): string => `[role=tab][data-tab=${name}]`;

function drawn(test: Mocha.Context, words: RegExp): Promise<Look> {
  return seen(test, `the chart says ${words}`, picture, (found) => words.test(found.words));
}
async function open(test: Mocha.Context, name: string, words: RegExp): Promise<void> {
  await commands.executeCommand("sunwright.showDiagram");
  await seen(test, "there are views to choose from", tab(name));
  await clickInPanel(test, tab(name));
  await drawn(test, words);
}

/** Not with the keys for all of it: the editor answers these too, a moment later, when half of the number is written. */
async function write(test: Mocha.Context, field: string, text: string): Promise<void> {
  await focusInPanel(test, field);
  await hand(test, "press", { key: "End" });
  await hand(test, "press", { key: "Shift+Home" });
  await hand(test, "type", { text });
}

describe("charts beside the text", () => {
  beforeEach(async () => {
    await closeAll();
    await commands.executeCommand("workbench.action.closeSidebar");
  });
  after(closeAll);

  it("string voltage: follows an edit, and keeps the string that was chosen", async function () {
    const document = await show("examples/alder-cottage/alder-cottage.sun");
    await open(this, "voltage", /S1: string voltage/);
    await seen(this, "the string can be chosen", ".chooser select");
    await focusInPanel(this, ".chooser select");
    await hand(this, "press", { key: "ArrowDown" });
    await drawn(this, /S2: string voltage/);
    // In the editor where it is: the panel has the focus, and keeps its place.
    const edit = new WorkspaceEdit();
    edit.replace(document.uri, rangeOf(document, "S2 is 10 x"), "S2 is 9 x");
    await workspace.applyEdit(edit);
    await drawn(this, /S2: string voltage[\s\S]*9 × Hollin430/);
    const rows = await seen(this, "the figures are there", ".figures tbody tr");
    assert.isAbove(rows.count, 10);
  });

  it("current against voltage: conditions are followed, and what cannot be is told", async function () {
    await show("examples/alder-cottage/alder-cottage.sun");
    await open(this, "curve", /1000 W\/m² and cells at 25 °C/);
    const number = "#condition-irradiance";
    await write(this, number, "800");
    await drawn(this, /800 W\/m² and cells at 25 °C/);
    await write(this, number, "9000");
    await seen(this, "it is told", ".refused", ({ words }) => /from 50 to 1500/.test(words));
    // What was typed on the way, 900 W/m², could be.
    await drawn(this, /900 W\/m² and cells at 25 °C/);
  });

  it("margins: the tightest first, and a bar leads to where its check is shown", async function () {
    const document = await show(await layHouse());
    await open(this, "margins", /How much of each limit is used/);
    const bar = "[data-id^='S1 · string-voltage']";
    const found = await seen(this, "there is a bar", bar);
    assert.match(found.attributes["aria-label"] ?? "", /102 % used/);
    await clickInPanel(this, bar);
    await until("the cursor stands there", () => {
      const editor = window.activeTextEditor;
      const line = positionOf(document, "string S1").line;
      return editor?.document === document && editor.selection.active.line === line;
    });
  });

  it("a row of the figures keeps the focus over an edit", async function () {
    const document = await show("examples/alder-cottage/alder-cottage.sun");
    await open(this, "margins", /How much of each limit is used/);
    await clickInPanel(this, ".figures summary");
    const row = ".figures [data-key='S1 · string-voltage · INV S1']";
    await seen(this, "its row is there", row);
    await focusInPanel(this, row);
    const edit = new WorkspaceEdit();
    edit.replace(document.uri, rangeOf(document, "S2 is 10 x"), "S2 is 9 x");
    await workspace.applyEdit(edit);
    await drawn(this, /S2 · string-voltage · INV.{0,20}380\.7 V/s);
    await seen(this, "the focus is there", row, ({ hasFocus }) => hasFocus);
  });

  it("voltage drop, and back to the diagram by keys", async function () {
    await show("examples/alder-cottage/alder-cottage.sun");
    await open(this, "drop", /drop from string to tracker/);
    await focusInPanel(this, tab("drop"));
    await hand(this, "press", { key: "ArrowRight" });
    await seen(this, "the first follows the last", tab("diagram"), ({ hasFocus }) => hasFocus);
    await seen(this, "the diagram is back", ".stage [data-id='S1']", ({ box }) => box.width > 0);
  });

  it("a design without a string says what is missing", async function () {
    await show(await layHouse(() => 'site "Bare" { rules: gb }\n'));
    await commands.executeCommand("sunwright.showDiagram");
    await seen(this, "there are views to choose from", tab("curve"));
    await clickInPanel(this, tab("curve"));
    await seen(this, "it says so", ".words-only", ({ words }) => /No string is wired to a tracker/.test(words));
  });
});

describe("pictures of the charts", () => {
  for (const theme of ["Default Light Modern", "Default Dark Modern", "Default High Contrast"])
    it(`in ${theme}`, async function () {
      const settings = workspace.getConfiguration();
      await settings.update("workbench.colorTheme", theme, ConfigurationTarget.Workspace);
      try {
        await closeAll();
        await commands.executeCommand("workbench.action.closeSidebar");
        await show("examples/training/one-module-too-many.sun");
        await open(this, "voltage", /S1: string voltage/);
        await later(1_000);
        await hand(this, "picture", { name: `chart-voltage-${theme.replaceAll(" ", "-")}` });
        if (theme !== "Default Light Modern") return;
        for (const name of ["curve", "margins", "drop"]) {
          await clickInPanel(this, tab(name));
          await later(1_500);
          await hand(this, "picture", { name: `chart-${name}` });
        }
      } finally {
        await settings.update("workbench.colorTheme", undefined, ConfigurationTarget.Workspace);
      }
    });
});
