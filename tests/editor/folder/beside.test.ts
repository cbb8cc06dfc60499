import { assert } from "chai";
import { type CodeLens, ConfigurationTarget, commands, type InlayHint, type TextDocument, workspace } from "vscode";
import { closeAll, positionOf, show } from "../designs";
import { layCottage } from "../house";
import { hand } from "../stage";
import { until } from "../until";

describe("figures beside the text", () => {
  const hints = workspace.getConfiguration("sunwright.hints");

  afterEach(async () => {
    for (const sort of ["strings", "runs"]) await hints.update(sort, undefined, ConfigurationTarget.Workspace);
    await closeAll();
  });

  /** The hints of a line, by the words that the line begins with. */
  async function hintsOf(document: TextDocument, words: string): Promise<string[]> {
    const { range } = document.lineAt(positionOf(document, words));
    const found = await commands.executeCommand<InlayHint[]>("vscode.executeInlayHintProvider", document.uri, range);
    return (found ?? []).map(({ label }) =>
      typeof label === "string" ? label : label.map(({ value }) => value).join(""),
    );
  }

  function untilHinted(document: TextDocument, words: string, hint: RegExp): Promise<string> {
    return until(`${words} has its hint`, async () => (await hintsOf(document, words)).find((each) => hint.test(each)));
  }

  it("each sort stands where it belongs, with its value", async () => {
    const document = await show(await layCottage());
    // 11 · 38.9 V · (1 + 0.0025 · 35) = 465.3 V, by hand; of 600 V that is 77.6 %.
    await untilHinted(document, "string S1", /^Uoc 465\.3 V cold, 77\.6 % of 600 V$/);
    await untilHinted(document, "run W1 from", /^−[\d.]+ V, [\d.]+ %, [\d.]+ W$/);
    await untilHinted(document, "    way 9: rcbo K9", /^Ib 19\.1 A ≤ In 25 A ≤ Iz [\d.]+ A$/);
    const reading = document.getText().match(/open-circuit-voltage: +402 V/)![0];
    await untilHinted(document, reading, /^expected [\d.]+ V$/);
  });

  it("a sort that is switched off is gone at once, the others stay", async () => {
    const document = await show(await layCottage());
    await untilHinted(document, "string S1", /^Uoc/);
    await hints.update("strings", false, ConfigurationTarget.Workspace);
    await until("the string has none", async () => (await hintsOf(document, "string S1")).length === 0);
    assert.isNotEmpty(await hintsOf(document, "run W1 from"));
  });

  it("the lines above site, string and part say how they stand", async () => {
    const document = await show(await layCottage());
    const lensOf = (on: TextDocument, words: string) =>
      until(`${words} has its line`, async () => {
        const found = await commands.executeCommand<CodeLens[]>("vscode.executeCodeLensProvider", on.uri, 99);
        const { line } = positionOf(on, words);
        return found.find(({ range, command }) => range.start.line === line && command)?.command?.title;
      });
    assert.equal(
      await lensOf(document, "string S1"),
      "works at 304.5 V hot to 400.6 V cold; INV.pv1 tracks 80 V to 550 V",
    );
    assert.match(
      await lensOf(document, "site "),
      /^4 departures; tightest of what holds: [a-z-]+ on \S+, [\d.]+ % of its limit$/,
    );
    const sheet = await show("examples/alder-cottage/parts/plant.sun");
    assert.match(await lensOf(sheet, "part RotaryDc32"), /^used by \d+ sites, \d+ times$/);
  });

  it("are drawn", async function () {
    await show(await layCottage());
    await until("hint and line are drawn", async () => {
      const words = await hand<string[]>(this, "words", {
        selector: ".monaco-editor .view-lines, .monaco-editor .codelens-decoration",
      });
      const all = words.join("\n").replaceAll("\u00a0", " ");
      return all.includes("departures") && all;
    });
  });
});
