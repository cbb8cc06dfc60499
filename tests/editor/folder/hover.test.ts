import { assert } from "chai";
import { commands, type Hover, type MarkdownString } from "vscode";
import { closeAll, positionOf, show, untilFound } from "../designs";
import { layHouse } from "../house";
import { hand } from "../stage";
import { later, until } from "../until";

describe("hover", () => {
  afterEach(closeAll);

  it("shows the sum with its figures, the limit and the source", async () => {
    const document = await show(await layHouse());
    await untilFound(document.uri, "string-voltage");
    const hovers = await commands.executeCommand<Hover[]>(
      "vscode.executeHoverProvider",
      document.uri,
      positionOf(document, "S1 is 15"),
    );
    const text = hovers.flatMap(({ contents }) => contents.map((part) => (part as MarkdownString).value)).join("\n");
    // 15 · 37.4 V · (1 + 0.0026 · 35) = 612.051 V, by hand.
    assert.include(text, "15 · 37.4 V · (1 + (−0.26 %/K) · (−10 °C − 25 °C)) = 612.1 V");
    assert.include(text, "600 V");
    assert.include(text, "IEC 62548");
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
