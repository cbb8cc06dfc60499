import { assert } from "chai";
import { commands, languages, type Uri } from "vscode";
import { closeAll, findings, idOf, placeCursor, positionOf, show, untilFound } from "../designs";
import { layHouse } from "../house";
import { hand } from "../stage";
import { later, until } from "../until";

const finished = 'isolator Q9 { location: "plant room" }';

describe("while a line is being typed", function () {
  this.timeout(120_000);
  afterEach(closeAll);

  /** What is shown of a file but for one line, each time that the editor tells of it. */
  function watch(uri: Uri, line: () => number): { readonly told: string[][]; stop(): void } {
    const told: string[][] = [];
    const listening = languages.onDidChangeDiagnostics(({ uris }) => {
      if (!uris.some((each) => each.toString() === uri.toString())) return;
      told.push(
        languages
          .getDiagnostics(uri)
          .filter(({ range, severity }) => range.start.line !== line() && severity < 3)
          .map((each) => `${idOf(each)}: ${each.message}`)
          .sort(),
      );
    });
    return { told, stop: () => listening.dispose() };
  }

  it("findings elsewhere neither change nor flicker, and its own come when it is finished", async function () {
    const document = await show(await layHouse());
    await untilFound(document.uri, "string-voltage");
    const at = positionOf(document, "isolator Q1");
    await placeCursor(at);
    await commands.executeCommand("editor.action.insertLineBefore");
    await until("a line is empty", () => document.lineAt(at.line).text === "");
    await later(1_000);
    const before = findings(document.uri)
      .map((each) => `${idOf(each)}: ${each.message}`)
      .sort();
    assert.isNotEmpty(before);

    const { told, stop } = watch(document.uri, () => at.line);
    await hand(this, "watch", { selector: ".squiggly-error" });
    for (const letter of finished) {
      await hand(this, "type", { text: letter });
      await later(120);
    }
    const { least, frames } = await hand<{ least: number; frames: number }>(this, "watched");
    assert.isAbove(frames, 20);
    assert.isAtLeast(least, 1, "the squiggle elsewhere was drawn all the time");
    const own = await until("the line has something of its own", () => {
      const found = findings(document.uri).filter(({ range }) => range.start.line === at.line);
      return found.length > 0 && !found.some((each) => idOf(each) === "syntax") && found;
    });
    stop();
    assert.isNotEmpty(own);
    assert.isAbove(told.length, 1, "the line itself was told of while it was typed");
    for (const shown of told) assert.deepEqual(shown, before);
  });
});
