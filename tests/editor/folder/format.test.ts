import { assert } from "chai";
import { commands, type TextEdit, WorkspaceEdit, workspace } from "vscode";
import { closeAll, show, untilFound } from "../designs";
import { layHouse } from "../house";
import { until } from "../until";

describe("formatting", () => {
  afterEach(closeAll);

  const untidy = (text: string) => text.replace("isolator Q1 is RotaryDc32", "isolator    Q1   is RotaryDc32");

  it("gives the one look, changes no meaning, and has nothing to do the second time", async () => {
    const document = await show(await layHouse(untidy));
    await untilFound(document.uri, "string-voltage");
    const edits = await until("there is something to tidy", async () => {
      const found = await format();
      return found.length > 0 && found;
    });
    const edit = new WorkspaceEdit();
    edit.set(document.uri, edits);
    assert.isTrue(await workspace.applyEdit(edit));
    assert.include(document.getText(), "\nisolator Q1 is RotaryDc32 {");
    await untilFound(document.uri, "string-voltage");
    assert.deepEqual(await format(), []);

    async function format(): Promise<TextEdit[]> {
      const options = { insertSpaces: true, tabSize: 4 };
      const found = commands.executeCommand<TextEdit[]>("vscode.executeFormatDocumentProvider", document.uri, options);
      return (await found) ?? [];
    }
  });

  it("is done by the editor's own command", async () => {
    const document = await show(await layHouse(untidy));
    await untilFound(document.uri, "string-voltage");
    await commands.executeCommand("editor.action.formatDocument");
    await until("the text is tidy", () => document.getText().includes("\nisolator Q1 is RotaryDc32 {"));
  });
});
