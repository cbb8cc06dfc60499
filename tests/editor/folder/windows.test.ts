import { assert } from "chai";
import { change, closeAll, show, untilFound } from "../designs";
import { layHouse } from "../house";
import { hand } from "../stage";

describe("two windows on one folder", () => {
  afterEach(closeAll);

  it("show the same of a saved file, and each its own of an unsaved one", async function () {
    this.timeout(120_000);
    const document = await show(await layHouse((text) => text, "shared-house.sun"));
    await untilFound(document.uri, "string-voltage");
    const other = { file: "shared-house.sun", selector: ".squiggly-error" };
    assert.equal(await hand<number>(this, "secondWindow", { ...other, until: 1 }), 1);

    await change(document, "15 x Sallow405", "14 x Sallow405");
    assert.equal(await hand<number>(this, "secondWindow", { ...other, until: 1 }), 1, "not saved yet");
    await document.save();
    assert.equal(await hand<number>(this, "secondWindow", { ...other, until: 0 }), 0);
  });
});
