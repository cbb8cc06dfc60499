import { assert } from "chai";
import { extensions } from "vscode";
import { closeAll, extensionId, show } from "../designs";
import { later, until } from "../until";

describe("activation", () => {
  after(closeAll);

  it("waits until a design is opened, and no other file", async () => {
    const extension = extensions.getExtension(extensionId);
    if (!extension) throw new Error("The packaged extension is not installed");
    assert.equal(extension.isActive, false, "before any file is opened");
    await show("notes.txt");
    await show("examples/README.md");
    // Long enough for what a file of another kind would set off.
    await later(1_000);
    assert.equal(extension.isActive, false, "with a text and a Markdown file open");

    const design = await show("examples/alder-cottage/alder-cottage.sun");
    assert.equal(design.languageId, "sunwright");
    await until("the extension is active", () => extension.isActive);
  });
});
