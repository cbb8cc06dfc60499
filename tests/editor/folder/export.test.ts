import { assert } from "chai";
import { commands, type Uri, workspace } from "vscode";
import { at, closeAll, show } from "../designs";
import { layHouse } from "../house";
import { clickInPanel, seen } from "../panel";
import { answer, untilAnswered, untilAsked } from "../quick-input";
import { hand } from "../stage";
import { later, until } from "../until";

async function bytesOf(uri: Uri): Promise<Uint8Array | undefined> {
  return workspace.fs.readFile(uri).then(
    (bytes) => (bytes.length > 0 ? bytes : undefined),
    () => undefined,
  );
}
function written(name: string): Promise<Uint8Array> {
  return until(`${name} is written`, () => bytesOf(at(name)));
}
async function remove(name: string): Promise<void> {
  await workspace.fs.delete(at(name)).then(undefined, () => undefined);
}
function told(test: Mocha.Context, words: RegExp): Promise<string> {
  return until(`it is told: ${words}`, async () => {
    const notes = await hand<string[]>(test, "words", { selector: ".notifications-toasts .notification-list-item" });
    return notes.find((note) => words.test(note));
  });
}

describe("drawings as files", () => {
  beforeEach(async () => {
    await closeAll();
    await commands.executeCommand("notifications.clearAll");
  });
  after(closeAll);

  const design = "examples/alder-cottage/alder-cottage.sun";
  for (const { what, as, start } of [
    { what: "diagram", as: "svg", start: "<svg" },
    { what: "diagram", as: "pdf", start: "%PDF" },
    { what: "margins", as: "svg", start: "<svg" },
    { what: "curve:INV.pv1", as: "pdf", start: "%PDF" },
  ])
    it(`${what} as ${as}`, async () => {
      const name = `exported-${what.replace(":", "-")}.${as}`;
      await remove(name);
      await show(design);
      await commands.executeCommand("sunwright.exportDrawing", { what, as, to: at(name).toString() });
      const bytes = await written(name);
      assert.equal(new TextDecoder().decode(bytes.slice(0, 4)), start);
      await remove(name);
    });

  it("from the panel: asks as what and where to, beside the design", async function () {
    const path = await layHouse();
    const name = `${path.replace(/\.sun$/, "")}.svg`;
    await show(path);
    await commands.executeCommand("sunwright.showDiagram");
    await seen(this, "the string is drawn", ".stage [data-id='S1']");
    await clickInPanel(this, ".views > button");
    await untilAsked(this, "PDF");
    await answer(this, "SVG");
    await until("the file is asked for", async () => {
      const [box] = await hand<string[]>(this, "words", { selector: ".quick-input-widget .quick-input-title" });
      return box?.includes("Export") && box;
    });
    await later(500);
    await hand(this, "press", { key: "Enter" });
    assert.match(new TextDecoder().decode(await written(name)), /^<svg [\s\S]*S1/);
    await untilAnswered(this);
  });

  it("a file that is there, and a text that cannot be read, are told, and nothing is written", async function () {
    const path = await layHouse((text) => `${text}\nstring is is is {`);
    await show(path);
    const to = at("exported-broken.svg");
    await commands.executeCommand("sunwright.exportDrawing", { what: "diagram", as: "svg", to: to.toString() });
    await told(this, /cannot be read. Mend it first/);
    assert.isUndefined(await bytesOf(to));
    await show(design);
    await commands.executeCommand("sunwright.exportDrawing", {
      what: "margins",
      as: "svg",
      to: at(design).toString(),
    });
    await told(this, /is there already/);
  });
});
