import { assert } from "chai";
import { commands, Selection, window, workspace } from "vscode";
import { change, closeAll, findings, idOf, show, untilFound, untilGone, write } from "../designs";
import { layHouse } from "../house";
import { untilAsked } from "../quick-input";
import { hand } from "../stage";
import { later, until } from "../until";

const item = "#sunwright\\.sunwright\\.sunwright\\.verdict";

/** A fact that checks need: without it they are not made. */
const temperature = /highest-temperature: +35 degC/;

/** The words of the item in the status bar; nothing where it is hidden. */
async function verdict(test: Mocha.Context): Promise<string | undefined> {
  const [words] = await hand<string[]>(test, "words", { selector: item });
  return words?.trim() || undefined;
}
function untilSaid(test: Mocha.Context, pattern: RegExp): Promise<string> {
  return until(`the status bar says ${pattern}`, async () => {
    const words = await verdict(test);
    return words !== undefined && pattern.test(words) && words;
  });
}

describe("the verdict in the status bar", () => {
  afterEach(closeAll);

  it("names the site and what there is, follows an edit and the editor in front, and hides without a design", async function () {
    const document = await show(await layHouse());
    await untilFound(document.uri, "string-voltage");
    const before = await untilSaid(this, /: 1 finding, tightest \d/);
    const title = /site "([^"]+)"/.exec(document.getText())![1]!;
    assert.include(before, title);
    await change(document, "15 x", "14 x");
    await untilGone(document.uri, "string-voltage");
    await untilSaid(this, /: nothing found, tightest \d/);
    await change(document, temperature.exec(document.getText())![0], "");
    await untilSaid(this, /: nothing found, \d+ not checked, tightest \d/);
    assert.notMatch((await verdict(this))!, /\bOK\b|compliant/i);

    await show("notes.txt");
    await until("it is hidden", async () => (await verdict(this)) === undefined);
    await window.showTextDocument(document);
    await untilSaid(this, /nothing found|finding/);
  });

  it("says itself to whoever cannot see it", async function () {
    await show(await layHouse());
    const labels = await until("it has a label", async () => {
      const found = await hand<string[]>(this, "attribute", { selector: `${item} a`, name: "aria-label" });
      return found.some((label) => label.includes("tightest of what holds")) && found;
    });
    assert.match(labels[0]!, /: 1 error; tightest of what holds: .* Press to see/);
  });

  it("by keys alone: findings first, and the one that is chosen is gone to", async function () {
    const document = await show(await layHouse((text) => text.replace(temperature, "")));
    const finding = await untilFound(document.uri, "string-voltage");
    await untilSaid(this, /finding/);
    window.activeTextEditor!.selection = new Selection(0, 0, 0, 0);
    void commands.executeCommand("sunwright.showFindings");
    const asked = await untilAsked(this, "string-voltage on S1");
    assert.isBelow(asked.words.indexOf("findings"), asked.words.indexOf("not checked", asked.title.length));
    await hand(this, "picture", { name: "status-pick" });
    await hand(this, "press", { key: "Enter" });
    const first = findings(document.uri).filter(({ severity }) => severity === finding.severity)[0]!;
    await until(`the cursor is at ${idOf(first)}`, () =>
      findings(document.uri).some(({ range }) => range.isEqual(window.activeTextEditor!.selection)),
    );
  });

  it("of a file in two designs names the one shown, and the other can be chosen", async function () {
    await write("status/sheets.sun", "part Elm is module { power: 400 W }\n");
    for (const name of ["Left", "Right"])
      await write(
        `status/${name.toLowerCase()}.sun`,
        `use "sheets.sun"\n\nsite "${name} House" {\n    rules: iec\n}\n\nstring S1 is 3 x Elm\n`,
      );
    await show("status/sheets.sun");
    const shown = await untilSaid(this, /(Left|Right) House: /);
    const other = shown.includes("Left") ? "Right House" : "Left House";
    void commands.executeCommand("sunwright.showFindings");
    await untilAsked(this, other);
    await later(150);
    await hand(this, "type", { text: other });
    await later(300);
    await hand(this, "press", { key: "Enter" });
    await untilSaid(this, new RegExp(`${other}: `));
    await untilAsked(this, `${other}: `);
    await hand(this, "press", { key: "Escape" });
    await workspace.fs.delete(
      workspace.workspaceFolders![0]!.uri.with({ path: `${workspace.workspaceFolders![0]!.uri.path}/status` }),
      { recursive: true },
    );
  });

  it("goes with the server that said it, and comes again with the next", async function () {
    await show(await layHouse());
    await untilSaid(this, /finding/);
    await commands.executeCommand("sunwright.restartServer");
    await untilSaid(this, /finding/);
  });
});
