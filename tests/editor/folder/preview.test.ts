import { assert } from "chai";
import { ConfigurationTarget, commands, type Uri, WorkspaceEdit, workspace } from "vscode";
import { at, closeAll, rangeOf, show, write } from "../designs";
import { hand } from "../stage";
import { later, until } from "../until";

const page = `# Notes

\`\`\`sun
use "parts/roof.sun"
use "parts/plant.sun"
string S1 is 11 x Hollin430 { tilt: 35 deg  azimuth: 180 deg  mounting: on-roof }
isolator Q1 is RotaryDc32 { location: "plant wall" }
run W1 from S1 to Q1: 18 m of Solar4 { method: conduit-in-air  ambient: 45 degC }
\`\`\`

A part by itself is its text:

\`\`\`sun
part Sheet is cable { conductor-area: 4 mm2 }
\`\`\`

\`\`\`sun
string is is {
\`\`\`
`;

/** What the frames of panels and previews say. */
function says(test: Mocha.Context, what: string, words: RegExp): Promise<string> {
  return until(what, async () => (await hand<string[]>(test, "panels")).find((frame) => words.test(frame)), 30_000);
}

async function openPage(): Promise<Uri> {
  const uri = await write("examples/alder-cottage/notes.md", page);
  await show(uri);
  await commands.executeCommand("markdown.showPreview", uri);
  return uri;
}

describe("designs in a page of Markdown", () => {
  beforeEach(closeAll);
  after(async () => {
    await closeAll();
    await workspace.fs.delete(at("examples/alder-cottage/notes.md"));
  });

  it("are drawn, with their text below; what cannot be read stays a text, with its line told", async function () {
    await openPage();
    const words = await says(this, "the block is drawn", /11 × Hollin430/);
    assert.match(words, /Text of this drawing/);
    assert.match(words, /part Sheet is cable/);
    await says(this, "what is wrong is told", /Line 1: /);
    await says(this, "nothing is being drawn any more", /Notes(?![\s\S]*drawing …)/);
  });

  it("follow an edit of the page", async function () {
    const uri = await openPage();
    await says(this, "the block is drawn", /11 × Hollin430/);
    const edit = new WorkspaceEdit();
    edit.replace(uri, rangeOf(await workspace.openTextDocument(uri), "11 x"), "9 x");
    await workspace.applyEdit(edit);
    await says(this, "the picture follows", /9 × Hollin430/);
  });

  for (const theme of ["Default Light Modern", "Default Dark Modern", "Default High Contrast"])
    it(`a picture in ${theme}`, async function () {
      const settings = workspace.getConfiguration();
      await settings.update("workbench.colorTheme", theme, ConfigurationTarget.Workspace);
      try {
        await commands.executeCommand("workbench.action.closeSidebar");
        await openPage();
        await says(this, "the block is drawn", /11 × Hollin430/);
        await later(1_000);
        await hand(this, "picture", { name: `preview-${theme.replaceAll(" ", "-")}` });
      } finally {
        await settings.update("workbench.colorTheme", undefined, ConfigurationTarget.Workspace);
      }
    });
});
