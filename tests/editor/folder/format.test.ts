import { assert } from "chai";
import { ConfigurationTarget, commands, type TextEdit, WorkspaceEdit, workspace } from "vscode";
import { change, closeAll, rangeOf, show, untilFound } from "../designs";
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

  it("of a stretch leaves the rest", async () => {
    const document = await show(await layHouse((text) => untidy(text).replace("spd F1 is", "spd   F1   is")));
    await untilFound(document.uri, "string-voltage");
    const edits = await until("there is something to tidy", async () => {
      const found = await commands.executeCommand<TextEdit[]>(
        "vscode.executeFormatRangeProvider",
        document.uri,
        document.lineAt(rangeOf(document, "isolator    Q1").start).range,
        { insertSpaces: true, tabSize: 4 },
      );
      return (found?.length ?? 0) > 0 && found;
    });
    const edit = new WorkspaceEdit();
    edit.set(document.uri, edits);
    assert.isTrue(await workspace.applyEdit(edit));
    assert.include(document.getText(), "\nisolator Q1 is RotaryDc32 {");
    assert.include(document.getText(), "\nspd   F1   is");
  });

  it("is done on saving where that is asked for, and slips with one meaning are mended then", async () => {
    const own = workspace.getConfiguration("editor");
    const slip = (text: string) => untidy(text).replace("7 m of Solar4", "7,0 m of Solar4");
    const save = async () => {
      const document = await show(await layHouse(slip));
      await untilFound(document.uri, "decimal-comma");
      await change(document, "spd F1", "spd F1 ");
      await document.save();
      return document.getText();
    };
    assert.include(await save(), "7,0 m of Solar4");
    try {
      await own.update("formatOnSave", true, ConfigurationTarget.Workspace);
      await own.update("codeActionsOnSave", { "source.fixAll": "explicit" }, ConfigurationTarget.Workspace);
      const saved = await save();
      assert.include(saved, "7.0 m of Solar4");
      assert.include(saved, "\nisolator Q1 is RotaryDc32 {");
    } finally {
      await own.update("formatOnSave", undefined, ConfigurationTarget.Workspace);
      await own.update("codeActionsOnSave", undefined, ConfigurationTarget.Workspace);
    }
  });

  it("is done by the editor's own command", async () => {
    const document = await show(await layHouse(untidy));
    await untilFound(document.uri, "string-voltage");
    await commands.executeCommand("editor.action.formatDocument");
    await until("the text is tidy", () => document.getText().includes("\nisolator Q1 is RotaryDc32 {"));
  });
});
