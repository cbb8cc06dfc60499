import { assert } from "chai";
import { workspace } from "vscode";
import { at, closeAll, findings, idOf, rangeOf, read, show, untilFound, untilGone, write } from "../designs";
import { applyFix } from "../fixes";
import { layHouse } from "../house";
import { until } from "../until";

describe("quick fixes", () => {
  afterEach(closeAll);

  /** Opens a design, applies the fix at some words and waits until what was found is gone. */
  async function mended(path: string, word: string, title: RegExp, id: string): Promise<string> {
    const document = await show(path);
    await untilFound(document.uri, id);
    const before = document.getText();
    await applyFix(document, () => rangeOf(document, word), title);
    await untilGone(document.uri, id);
    assert.notEqual(document.getText(), before);
    return document.getText();
  }

  it("set a count to the largest that holds, with the figure in the title", async () => {
    const path = await layHouse();
    const text = await mended(path, "15 x", /14.*V/, "string-voltage");
    assert.equal(text, (await read(path)).replace("15 x", "14 x"));
  });

  it("choose a part in scope that holds", async () => {
    const path = "examples/training/cable-for-less-voltage.sun";
    const text = await mended(path, "OldSolar4 {", /Solar4/, "dc-cable-voltage");
    assert.equal(text, (await read(path)).replace("of OldSolar4", "of Solar4"));
  });

  it("choose the next cable that loses little enough", async () => {
    const path = "examples/training/thin-cable-on-a-long-run.sun";
    const text = await mended(path, "48 m of Solar4", /Solar\d+/, "dc-voltage-drop");
    const [, cable] = /48 m of (\w+)/.exec(text)!;
    assert.equal(text, (await read(path)).replace("48 m of Solar4", `48 m of ${cable}`));
    assert.notEqual(cable, "Solar4");
  });

  it("put a device on a free way of a board, with what it feeds below the board", async () => {
    const path = "examples/training/nothing-against-surges-on-the-board.sun";
    const text = await mended(path, "GRID {", /^Put an spd, SurgeAc, .*on way 2 of CU/, "surge-needed");
    const [, device, spd] = /\n {4}way 2: breaker (\w+) is \w+ serves (\w+)\n/.exec(text)!;
    assert.include(text, `}\nspd ${spd} is SurgeAc\n`);
    assert.include(text, ` from CU.${device} to ${spd}  // state its length`);
  });

  it("offer the name that was meant", async () => {
    const path = await layHouse((text) => text.replace("isolator Q1 is RotaryDc32", "isolator Q1 is RotryDc32"));
    const text = await mended(path, "RotryDc32", /RotaryDc32/, "unknown-name");
    assert.equal(text, (await read(path)).replace("RotryDc32", "RotaryDc32"));
  });

  it("offer the unit and the form that were meant", async () => {
    const path = await layHouse((text) => text.replace("7 m of Solar4", "7 M of Solar4"));
    const document = await show(path);
    const [first] = await until("the unit is marked", () => {
      const found = findings(document.uri).filter(({ range }) => document.getText(range).includes("M"));
      return found.length > 0 && found;
    });
    await applyFix(document, () => first!.range, /m/);
    await untilGone(document.uri, idOf(first!));
    assert.equal(document.getText(), (await read(path)).replace("7 M of", "7 m of"));
  });

  it("insert the property that is missing, open until a fact is written there", async () => {
    const path = await layHouse((text) => text.replace(/^ {4}ambient: +45 degC\n/m, ""));
    const document = await show(path);
    await until("the design is computed", () => findings(document.uri).length > 0);
    await applyFix(document, () => rangeOf(document, "W1"), /^Insert ambient of W1/);
    assert.match(document.getText(), /\n {4}ambient: +\w+\n/);
    const open = await untilFound(document.uri, "wrong-value");
    assert.include(document.lineAt(open.range.start).text, "ambient");
  });

  it("insert it into another file where the sheet is there", async () => {
    const sheet = await read("examples/training/parts/array.sun");
    await write("examples/training/parts/bare.sun", sheet.replace(/^ {4}max-system-voltage: .*\n/m, ""));
    const path = await layHouse((text) => text.replace("parts/array.sun", "parts/bare.sun"));
    const document = await show(path);
    await until("the design is computed", () => findings(document.uri).length > 0);
    await applyFix(document, () => rangeOf(document, "S1 is"), /^Insert max-system-voltage of Sallow405 in bare\.sun/);
    const other = await workspace.openTextDocument(at("examples/training/parts/bare.sun"));
    assert.match(other.getText(), /\n {4}max-system-voltage: +\w+\n/);
    await untilFound(other.uri, "wrong-value");
  });

  it("record a departure, whose reason is an error until it is written", async () => {
    const document = await show(await layHouse());
    await untilFound(document.uri, "string-voltage");
    await applyFix(document, () => rangeOf(document, "15 x"), /^Record a departure from string-voltage on S1/);
    assert.include(document.getText(), '\ndeparture string-voltage on S1 because ""\n');
    await untilFound(document.uri, "empty-reason");
  });
});
