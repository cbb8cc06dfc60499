import { assert } from "chai";
import { commands, window, workspace } from "vscode";
import { closeAll, read, write } from "../designs";
import { answer, take, takeAllUntil, untilAnswered, untilAsked } from "../quick-input";
import { until } from "../until";

function untilOpen(name: string) {
  return until(`${name} is in front`, () => {
    const document = window.activeTextEditor?.document;
    return document?.uri.path.endsWith(`/${name}`) && document;
  });
}

describe("a folder in which nothing lies", function () {
  // Dozens of keys go through a whole browser.
  this.timeout(150_000);

  afterEach(async () => {
    await closeAll();
    for (const uri of await workspace.findFiles("**/*.sun")) await workspace.fs.delete(uri);
  });

  it("takes a new part into a file of its own", async function () {
    assert.deepEqual(await workspace.findFiles("**/*.sun"), []);
    void commands.executeCommand("sunwright.newPart");
    await untilAsked(this, "What sort of thing");
    await answer(this, "PV module");
    await take(this, "In which folder");
    await take(this, "Name of the file");
    await untilAsked(this, "A name for the part");
    await answer(this, "Oak430");
    await untilAsked(this, "power (Pmax)");
    await answer(this, "430 W");
    await takeAllUntil(this, "Which sheet and revision");
    await untilAnswered(this);
    await untilOpen("parts.sun");
    assert.match(await read("parts.sun"), /^part Oak430 is module \{\n {4}power: +430 W\n\}\n$/);
  });

  it("takes a new site beside a sheet, and uses the part of it that is chosen", async function () {
    await write("parts.sun", "part Oak430 is module {\n    power: 430 W\n}\n");
    void commands.executeCommand("sunwright.newSite");
    await untilAsked(this, "Name of the site");
    await answer(this, "Rook End");
    for (const question of ["Which rules", "How the supply is earthed", "How many phases", "supplier's fuse"])
      await take(this, question);
    await take(this, "How many strings");
    await untilAsked(this, "String S1: which module");
    await answer(this, "Oak430");
    await untilAsked(this, "how many modules in series");
    await answer(this, "9");
    for (const question of ["Which inverter", "Which battery", "In which folder"]) await take(this, question);
    await take(this, "Name of the file");
    await untilAnswered(this);
    await untilOpen("rook-end.sun");
    assert.match(
      await read("rook-end.sun"),
      /^use "parts\.sun"\n\nsite "Rook End" \{[\s\S]*^string S1 is 9 x Oak430 \{/m,
    );
  });
});
