import { change, closeAll, show, untilFound } from "../designs";
import { layHouse } from "../house";
import { hand } from "../stage";

describe("two windows on one folder", () => {
  afterEach(closeAll);

  it("show the same of a saved file", async function () {
    this.timeout(120_000);
    const document = await show(await layHouse((text) => text, "shared-house.sun"));
    await untilFound(document.uri, "string-voltage");
    const shown = { file: "trial-shared-house.sun", selector: ".squiggly-error" };
    await hand(this, "secondWindow", { ...shown, appears: true });
    await change(document, "15 x Sallow405", "14 x Sallow405");
    await document.save();
    await hand(this, "secondWindow", { ...shown, appears: false });
    // The first window has its own server, which goes on.
    await change(document, "14 x Sallow405", "15 x Sallow405");
    await untilFound(document.uri, "string-voltage");
  });
});
