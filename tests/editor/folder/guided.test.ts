import { assert } from "chai";
import { commands, languages, window, workspace } from "vscode";
import { at, closeAll, idOf, read, write } from "../designs";
import { answer, goBack, untilAnswered, untilAsked } from "../quick-input";
import { hand } from "../stage";
import { later, until } from "../until";

/** The file in front, once it is a certain one. */
function untilOpen(name: string) {
  return until(`${name} is in front`, () => {
    const editor = window.activeTextEditor;
    return editor?.document.uri.path.endsWith(`/${name}`) && editor;
  });
}

/** Without blanks that set values below each other: that is the formatter's. */
function plainly(text: string): string {
  return text.replace(/: +/g, ": ");
}

describe("guided inputs", function () {
  // Dozens of keys go through a whole browser.
  this.timeout(150_000);

  before(async () => {
    await write("guided/sheets.sun", "/** Invented. */\npart Elm400 is module {\n    power: 400 W\n}\n");
  });
  afterEach(closeAll);
  after(() => workspace.fs.delete(at("guided"), { recursive: true }));

  it("a new site, by keys alone: back keeps what was typed, what is not known is left out, and the first gap is marked", async function () {
    void commands.executeCommand("sunwright.newSite", at("guided"));
    await untilAsked(this, "Name of the site");
    await answer(this, "");
    await untilAsked(this, "A site needs a name.");
    await hand(this, "picture", { name: "new-site-name" });
    await answer(this, "Rook End");
    await untilAsked(this, "Which rules");
    await hand(this, "picture", { name: "new-site-rules" });
    await goBack();
    const again = await untilAsked(this, "Name of the site");
    assert.include(again.title, "1/");
    await later(150);
    await hand(this, "press", { key: "Enter" });
    await untilAsked(this, "Which rules");
    await later(150);
    await hand(this, "press", { key: "Enter" });
    await untilAsked(this, "How the supply is earthed");
    await hand(this, "picture", { name: "new-site-earthing" });
    await answer(this, "TT");
    await untilAsked(this, "How many phases");
    await later(150);
    await hand(this, "press", { key: "Enter" });
    await untilAsked(this, "supplier's fuse");
    await answer(this, "80");
    await untilAsked(this, "needs its unit");
    await hand(this, "picture", { name: "new-site-fuse" });
    await answer(this, "80 A");
    await untilAsked(this, "How many strings");
    await answer(this, "1 string");
    await untilAsked(this, "String S1: which module");
    await hand(this, "picture", { name: "new-site-module" });
    await answer(this, "Elm400");
    await untilAsked(this, "how many modules in series");
    await answer(this, "9");
    await untilAsked(this, "Which inverter");
    await later(150);
    await hand(this, "press", { key: "Enter" });
    await untilAsked(this, "Which battery");
    await later(150);
    await hand(this, "press", { key: "Enter" });
    await untilAsked(this, "In which folder");
    await hand(this, "picture", { name: "new-site-folder" });
    await later(150);
    await hand(this, "press", { key: "Enter" });
    await untilAsked(this, "Name of the file");
    await answer(this, "sheets");
    await untilAsked(this, "There is a file sheets.sun already");
    await answer(this, "rook-end");
    const editor = await untilOpen("guided/rook-end.sun");
    const text = plainly(await read("guided/rook-end.sun"));
    assert.match(text, /^use "sheets\.sun"\n\nsite "Rook End" \{\n {4}rules: gb\n/);
    assert.include(text, "    earthing: TT\n    service-fuse: 80 A\n");
    assert.notMatch(text, /phases: /);
    assert.include(text, "string S1 is 9 x Elm400 {");
    await until("the first gap is marked", () =>
      editor.document.getText(editor.selection).startsWith("// still to be written: lowest-temperature"),
    );
    const marks = await until("it has been checked", () => {
      const found = languages.getDiagnostics(editor.document.uri);
      return found.some((each) => idOf(each) === "not-checked") && found;
    });
    assert.deepEqual(
      marks.filter(({ severity }) => severity === 0).map(({ message }) => message),
      [],
    );
    await until("the status bar names it", async () => {
      const words = await hand<string[]>(this, "words", { selector: ".statusbar-item" });
      return words.some((each) => each.includes("Rook End: "));
    });
    await hand(this, "picture", { name: "new-site-done" });
  });

  it("leaving at any question writes nothing", async function () {
    const before = (await workspace.fs.readDirectory(at("guided"))).length;
    void commands.executeCommand("sunwright.newSite", at("guided"));
    await untilAsked(this, "Name of the site");
    await answer(this, "Nowhere");
    await untilAsked(this, "Which rules");
    await later(150);
    await hand(this, "press", { key: "Escape" });
    await untilAnswered(this);
    assert.equal((await workspace.fs.readDirectory(at("guided"))).length, before);
  });

  it("a new part from a data sheet: the lines in order, in the sheet's own words, each judged by the language", async function () {
    void commands.executeCommand("sunwright.newPart");
    await untilAsked(this, "What sort of thing");
    await hand(this, "picture", { name: "new-part-kind" });
    await answer(this, "PV module");
    await untilAsked(this, "In which file");
    await answer(this, "guided/sheets.sun");
    await untilAsked(this, "A name for the part");
    await answer(this, "Elm400");
    await untilAsked(this, "There is a part Elm400 in that file already");
    await answer(this, "Oak430");
    await untilAsked(this, "power (Pmax)");
    await answer(this, "430");
    await untilAsked(this, "needs its unit");
    await answer(this, "430,5 W");
    await untilAsked(this, "430.5 W?");
    await hand(this, "picture", { name: "new-part-comma" });
    await answer(this, "430.5 W");
    const asked = await untilAsked(this, "On the sheet: Voc, open-circuit voltage");
    assert.include(asked.words, "a number with its unit: V");
    await hand(this, "picture", { name: "new-part-line" });
    await goBack();
    await untilAsked(this, "power (Pmax)");
    await later(150);
    await hand(this, "press", { key: "Enter" });
    await untilAsked(this, "On the sheet: Voc, open-circuit voltage");
    await answer(this, "38.9 V");
    for (const words of [
      "short-circuit current",
      "Vmp or Vmpp",
      "Imp or Impp",
      "coefficient of Voc",
      "coefficient of Isc",
    ]) {
      await untilAsked(this, words);
      await answer(this, "");
    }
    await untilAsked(this, "coefficient of Pmax");
    await answer(this, "");
    await untilAsked(this, "maximum system voltage");
    await answer(this, "1500 V");
    await untilAsked(this, "maximum series fuse rating");
    await answer(this, "");
    await untilAsked(this, "What else does the sheet state?");
    await hand(this, "type", { text: "technology" });
    await later(200);
    await hand(this, "press", { key: "ArrowDown" });
    await hand(this, "press", { key: "Space" });
    await later(150);
    await hand(this, "picture", { name: "new-part-others" });
    await hand(this, "press", { key: "Enter" });
    await untilAsked(this, "Cell technology");
    await hand(this, "picture", { name: "new-part-words" });
    await answer(this, "thin-film");
    await untilAsked(this, "Which sheet and revision");
    await answer(this, "invented sheet, revision 2");
    await untilAnswered(this);
    const editor = await untilOpen("guided/sheets.sun");
    await until("the part is written", () => editor.document.getText().includes("Oak430"));
    assert.equal(
      plainly(editor.document.getText()),
      `/** Invented. */
part Elm400 is module {
    power: 400 W
}

part Oak430 is module {
    power: 430.5 W
    open-circuit-voltage: 38.9 V
    max-system-voltage: 1500 V
    technology: thin-film
    reference: "invented sheet, revision 2"
}
`,
    );
    await later(500);
    await hand(this, "picture", { name: "new-part-done" });
  });
});
