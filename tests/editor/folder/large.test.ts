import type { TextDocument } from "vscode";
import { change, closeAll, placeCursor, positionOf, show, untilFound, untilGone } from "../designs";
import { layHouse } from "../house";
import { note } from "../run-all";
import { hand } from "../stage";
import { until } from "../until";

describe("a file of a thousand lines", () => {
  afterEach(closeAll);

  /** The house many times over, each with names of its own, the first as it was. */
  const copies = (text: string) => {
    const start = text.indexOf("string S1");
    const block = text.slice(start);
    const blocks = Array.from({ length: 46 }, (_, index) =>
      block.replaceAll(/\b(S1|Q1|F1|INV|W\d)\b/g, `$1n${index}`).replace("15 x", "14 x"),
    );
    return text + blocks.join("\n");
  };

  async function showLarge(): Promise<TextDocument> {
    const document = await show(await layHouse(copies));
    await untilFound(document.uri, "string-voltage");
    if (document.lineCount < 1_000) throw new Error(`only ${document.lineCount} lines`);
    return document;
  }

  it("answers an edit with what is found now", async function () {
    const document = await showLarge();
    const times: number[] = [];
    for (let round = 0; round < 5; round++) {
      await change(document, "15 x Sallow405", "14 x Sallow405");
      await untilGone(document.uri, "string-voltage");
      const start = Date.now();
      await change(document, "14 x Sallow405", "15 x Sallow405");
      await untilFound(document.uri, "string-voltage");
      times.push(Date.now() - start);
    }
    note(this, `${document.lineCount} lines, edit to problem, looked at every 20 ms: ${times.join(", ")} ms`);
  });

  it("draws the squiggle soon after the key", async function () {
    const document = await showLarge();
    await change(document, "15 x Sallow405", "14 x Sallow405");
    await untilGone(document.uri, "string-voltage");
    await placeCursor(positionOf(document, "14 x Sallow405").translate(0, 2));
    const times: number[] = [];
    const selector = ".squiggly-error";
    for (let round = 0; round < 5; round++) {
      await until("it is drawn no more", async () => (await hand<number>(this, "count", { selector })) === 0);
      times.push(await hand<number>(this, "keyToMark", { key: "0", selector }));
      await hand(this, "press", { key: "Backspace" });
    }
    note(this, `${document.lineCount} lines, key to drawn squiggle: ${times.join(", ")} ms`);
  });
});
