import { assert } from "chai";
import { change, closeAll, findings, idOf, placeCursor, positionOf, show, untilFound, untilGone } from "../designs";
import { layHouse } from "../house";
import { hand } from "../stage";
import { until } from "../until";

describe("typing", () => {
  afterEach(closeAll);

  it("has a squiggle come and go with the fault", async () => {
    const path = await layHouse();
    const document = await show(path);
    await untilFound(document.uri, "string-voltage");
    await change(document, "15 x Sallow405", "14 x Sallow405");
    await untilGone(document.uri, "string-voltage");
    await change(document, "14 x Sallow405", "15 x Sallow405");
    await untilFound(document.uri, "string-voltage");
    assert.equal(document.isDirty, true, "nothing needs to be saved for it");
  });

  it("marks the word that is the choice", async () => {
    const document = await show(await layHouse());
    const { range } = await untilFound(document.uri, "string-voltage");
    assert.equal(document.getText(range), "15");
  });

  it("costs a half-typed line only itself", async () => {
    const document = await show(await layHouse());
    await untilFound(document.uri, "string-voltage");
    await change(document, "isolator Q1", "string S9 is\nisolator Q1");
    await until("the half-typed line is marked", () =>
      findings(document.uri).some(({ range }) => document.lineAt(range.start).text.startsWith("string S9")),
    );
    assert.include(findings(document.uri).map(idOf), "string-voltage");
  });

  it("draws the squiggle under keys that are really pressed", async function () {
    const document = await show(await layHouse((text) => text.replace("15 x", "14 x")));
    await placeCursor(positionOf(document, "14 x Sallow405").translate(0, 2));
    await hand(this, "press", { key: "Backspace" });
    await hand(this, "press", { key: "5" });
    await untilFound(document.uri, "string-voltage");
    await until("it is drawn", async () => (await hand<number>(this, "count", { selector: ".squiggly-error" })) > 0);
    await hand(this, "press", { key: "Backspace" });
    await hand(this, "press", { key: "4" });
    await until("it is drawn no more", async () => {
      return (await hand<number>(this, "count", { selector: ".squiggly-error" })) === 0;
    });
  });
});
