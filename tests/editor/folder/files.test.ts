import { assert } from "chai";
import { commands, EndOfLine, workspace } from "vscode";
import { at, change, closeAll, findings, rangeOf, read, show, untilFound, untilGone } from "../designs";
import { applyFix } from "../fixes";
import { layHouse } from "../house";
import { hand } from "../stage";
import { until } from "../until";

describe("files", () => {
  afterEach(closeAll);

  it("with carriage returns keep them, and are marked at the right word", async () => {
    const path = await layHouse((text) => text.replaceAll("\n", "\r\n"), "carriage-returns.sun");
    const document = await show(path);
    assert.equal(document.eol, EndOfLine.CRLF);
    const { range } = await untilFound(document.uri, "string-voltage");
    assert.equal(document.getText(range), "15");
    await applyFix(document, () => rangeOf(document, "15 x"), /^Record a departure/);
    await document.save();
    const saved = await read(path);
    assert.notMatch(saved, /[^\r]\n/);
    assert.include(saved, 'departure string-voltage on S1 because ""\r\n');
  });

  it("with a byte order mark are read, and keep it", async () => {
    const path = await layHouse((text) => `\uFEFF${text}`, "byte-order-mark.sun");
    const document = await show(path);
    const { range } = await untilFound(document.uri, "string-voltage");
    assert.equal(document.getText(range), "15");
    await change(document, "15 x", "14 x");
    await untilGone(document.uri, "string-voltage");
    await document.save();
    const saved = await read(path);
    assert.isTrue(saved.startsWith("\uFEFF"));
    assert.equal(saved.indexOf("\uFEFF", 1), -1);
  });

  it("that nobody opened are read with a byte order mark too", async () => {
    const path = "examples/training/parts/array.sun";
    const sheet = await read(path);
    await workspace.fs.writeFile(at("examples/training/parts/marked.sun"), new TextEncoder().encode(`\uFEFF${sheet}`));
    const document = await show(await layHouse((text) => text.replace("parts/array.sun", "parts/marked.sun")));
    await untilFound(document.uri, "string-voltage");
    assert.lengthOf(findings(at("examples/training/parts/marked.sun")), 0);
  });

  it("may have blanks and letters of any language in their names", async () => {
    const sheet = await read("examples/training/parts/inverters.sun");
    const name = "Wechselrichter für Müller 1 %.sun";
    await workspace.fs.writeFile(at(`examples/training/parts/${name}`), new TextEncoder().encode(sheet));
    const path = await layHouse(
      (text) => text.replace("parts/inverters.sun", `parts/${name}`),
      "Haus Übersee №1 + 2.sun",
    );
    const document = await show(path);
    const { relatedInformation = [] } = await untilFound(document.uri, "string-voltage");
    assert.equal(relatedInformation[0]!.location.uri.path, at(`examples/training/parts/${name}`).path);
  });

  it("that were never saved are computed", async () => {
    const text = `part P is module { open-circuit-voltage: 40 A }\n`;
    const document = await workspace.openTextDocument({ language: "sunwright", content: text });
    await show(document.uri);
    const [found] = await until("the wrong unit is marked", () => {
      const all = findings(document.uri);
      return all.length > 0 && all;
    });
    assert.equal(document.getText(found!.range), "40 A");
    await change(document, "40 A", "40 V");
    await until("it is marked no more", () =>
      findings(document.uri).every(({ range }) => document.getText(range) !== "40 V"),
    );
  });

  it("that may not be written are computed, and stay as they are", async function () {
    const path = await layHouse();
    const text = await read(path);
    await hand(this, "protect", { path });
    const document = await show(path);
    await untilFound(document.uri, "string-voltage");
    await commands.executeCommand("workbench.action.files.save");
    assert.equal(await read(path), text);
  });

  it("that nobody opened are computed, and take their problems with them when they are deleted", async () => {
    const path = await layHouse();
    await untilFound(at(path), "string-voltage");
    await workspace.fs.delete(at(path));
    await untilGone(at(path), "string-voltage");
  });
});
