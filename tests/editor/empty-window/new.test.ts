import { assert } from "chai";
import { commands, languages, window, workspace } from "vscode";
import { closeAll, idOf } from "../designs";
import { answer, choose, take, takeAllUntil, untilAnswered, untilAsked } from "../quick-input";
import { hand } from "../stage";
import { later, until } from "../until";

/** The document in front, once it is one that was never saved and has a text. */
function untilWritten(text: string) {
  return until("a document in no file is in front", () => {
    const editor = window.activeTextEditor;
    return editor?.document.isUntitled && editor.document.getText().includes(text) && editor;
  });
}

describe("a window in which nothing is open", function () {
  // Dozens of keys go through a whole browser.
  this.timeout(150_000);

  afterEach(closeAll);

  it("has a site and a part among its new files, and the site becomes a document in no file", async function () {
    assert.isUndefined(workspace.workspaceFolders);
    void commands.executeCommand("welcome.showNewFileEntries");
    const asked = await untilAsked(this, "Sunwright Site");
    assert.include(asked.words, "Sunwright Part From a Data Sheet");
    await hand(this, "picture", { name: "new-file" });
    // What is typed here is the name of a new file.
    await choose(this, "Sunwright Site");
    await untilAsked(this, "Name of the site");
    await answer(this, "Rook End");
    for (const question of ["Which rules", "How the supply is earthed", "How many phases", "supplier's fuse"])
      await take(this, question);
    await take(this, "How many strings");
    // There is no sheet to choose a module from, and no folder to choose.
    for (const question of ["Which inverter", "Which battery"]) await take(this, question);
    await untilAnswered(this);
    const { document, selection } = await untilWritten("Rook End");
    assert.equal(document.languageId, "sunwright");
    assert.match(document.getText(), /^site "Rook End" \{\n {4}rules: +gb\n/);
    assert.match(document.getText(selection), /^\/\/ still to be written: lowest-temperature/);
    // What the first lines leave open is not checked, and nothing in them is wrong.
    const marks = await until("it has been checked", () => {
      const found = languages.getDiagnostics(document.uri);
      return found.length > 0 && found;
    });
    assert.deepEqual(
      marks.filter(({ severity }) => severity === 0).map((each) => `${idOf(each)}: ${each.message}`),
      [],
    );
    await later(500);
    await hand(this, "picture", { name: "new-site-untitled" });
  });

  it("takes a new part into a document in no file", async function () {
    void commands.executeCommand("sunwright.newPart");
    await untilAsked(this, "What sort of thing");
    await answer(this, "PV module");
    await untilAsked(this, "A name for the part");
    await answer(this, "Oak430");
    await untilAsked(this, "power (Pmax)");
    await answer(this, "430 W");
    await takeAllUntil(this, "Which sheet and revision");
    await untilAnswered(this);
    const { document } = await untilWritten("Oak430");
    assert.match(document.getText(), /^part Oak430 is module \{\n {4}power: +430 W\n\}\n$/);
  });
});
