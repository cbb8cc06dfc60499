import { assert } from "chai";
import { commands, type Hover, type MarkdownString, type TextDocument } from "vscode";
import { closeAll, positionOf, show, untilFound } from "../designs";
import { layCottage, layHouse } from "../house";
import { hand } from "../stage";
import { later, until } from "../until";

describe("hover", () => {
  afterEach(closeAll);

  /** All that hovers say of the first place where some words are written. */
  async function told(document: TextDocument, words: string): Promise<string> {
    const hovers = await commands.executeCommand<Hover[]>(
      "vscode.executeHoverProvider",
      document.uri,
      positionOf(document, words),
    );
    return hovers.flatMap(({ contents }) => contents.map((part) => (part as MarkdownString).value)).join("\n");
  }

  it("shows the sum with its figures, the limit and the source", async () => {
    const document = await show(await layHouse());
    await untilFound(document.uri, "string-voltage");
    const text = await told(document, "S1 is 15");
    // 15 · 37.4 V · (1 + 0.0026 · 35) = 612.051 V, by hand.
    assert.include(text, "15 · 37.4 V · (1 + (−0.26 %/K) · (−10 °C − 25 °C)) = 612.1 V");
    assert.include(text, "600 V");
    assert.include(text, "IEC 62548");
  });

  it("says of a device where it is, what feeds it and what it feeds", async () => {
    const document = await show(await layCottage());
    const isolator = await told(document, "Q1 is");
    assert.include(isolator, "S1 → W1 → Q1 → W2 → INV.pv1");
    assert.include(isolator, "Fed from S1 through W1. Feeds into INV.pv1 through W2.");
    const breaker = await told(document, "K9 is");
    assert.include(breaker, "INV.ac → W8 → Q3 → W9 → M1 → W10 → Q4 → W11 → CU.K9 → CU.MS → W12 → GRID");
    assert.include(breaker, "Way 9 of CU, serves INV.");
  });

  it("says of a property what it means, its unit, and what data sheets call it", async () => {
    const property = await told(await show("examples/alder-cottage/parts/roof.sun"), "open-circuit-voltage:");
    assert.include(property, "Open-circuit voltage at STC.");
    assert.include(property, "Written as a number with its unit: `V`");
    assert.include(property, "On a data sheet: Voc, open-circuit voltage.");
  });

  it("says a quantity in the other units that it can be written in", async () => {
    // A foot is 0.3048 m, an inch 0.0254 m, both exactly (ISO 80000-3): 18 m are 59.055 ft and 708.66 in.
    const length = await told(await show(await layCottage()), "18 m of");
    assert.include(length, "a length: the same as 1800 cm, 0.018 km, 59.055 ft, 708.66 in");
  });

  it("comes up under the pointer", async function () {
    const document = await show(await layHouse());
    await untilFound(document.uri, "string-voltage");
    await until("the squiggle is drawn", async () => {
      return (await hand<number>(this, "count", { selector: ".squiggly-error" })) > 0;
    });
    const shown = await until("the hover is drawn", async () => {
      // A squiggle that is just drawn anew is not there for a moment: try again.
      const isPointedAt = await hand<boolean>(this, "point", { selector: ".squiggly-error" });
      if (!isPointedAt) return false;
      // Longer than the editor waits before it asks; a pointer that moves again begins anew.
      await later(500);
      const words = await hand<string[]>(this, "words", { selector: ".monaco-hover-content" });
      return words.some((word) => word.includes("612.1 V")) && words;
    });
    assert.isNotEmpty(shown);
  });
});
