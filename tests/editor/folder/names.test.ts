import { assert } from "chai";
import { commands, type DocumentSymbol, type Location, type LocationLink, type WorkspaceEdit, workspace } from "vscode";
import { at, closeAll, findings, positionOf, read, show, untilFound } from "../designs";
import { layHouse } from "../house";
import { until } from "../until";

describe("names", () => {
  afterEach(closeAll);

  it("are renamed in every file that uses them", async () => {
    const path = await layHouse();
    const document = await show(path);
    await untilFound(document.uri, "string-voltage");
    const edit = await commands.executeCommand<WorkspaceEdit>(
      "vscode.executeDocumentRenameProvider",
      document.uri,
      positionOf(document, "Beck5"),
      "Beck5B",
    );
    assert.isTrue(await workspace.applyEdit(edit));
    assert.equal(document.getText(), (await read(path)).replaceAll("Beck5", "Beck5B"));
    const sheet = await workspace.openTextDocument(at("examples/training/parts/inverters.sun"));
    assert.include(sheet.getText(), "part Beck5B is inverter");
    await untilFound(document.uri, "string-voltage");
    assert.notInclude(
      findings(document.uri)
        .map(({ message }) => message)
        .join("\n"),
      "Beck5 ",
    );
    // Others use the sheet: as it was, for the tests after this one.
    for (const file of workspace.textDocuments.filter(({ isDirty }) => isDirty)) {
      await show(file.uri);
      await commands.executeCommand("workbench.action.files.revert");
    }
  });

  it("lead to where they are declared, in another file", async () => {
    const document = await show(await layHouse());
    const [definition] = await until("a declaration is found", async () => {
      const found = await commands.executeCommand<(Location | LocationLink)[]>(
        "vscode.executeDefinitionProvider",
        document.uri,
        positionOf(document, "Beck5"),
      );
      return found.length > 0 && found;
    });
    const target = "uri" in definition! ? definition.uri : definition!.targetUri;
    assert.match(target.path, /parts\/inverters\.sun$/);
  });

  it("make the outline", async () => {
    const document = await show(await layHouse());
    const symbols = await until("there is an outline", async () => {
      const found = await commands.executeCommand<DocumentSymbol[]>(
        "vscode.executeDocumentSymbolProvider",
        document.uri,
      );
      return found?.length > 0 && found;
    });
    const names = symbols.map(({ name }) => name);
    for (const name of ["Frost Hollow", "S1", "Q1", "INV", "W1", "W2"]) assert.include(names, name);
    const inverters = await show("examples/training/parts/inverters.sun");
    const parts = await commands.executeCommand<DocumentSymbol[]>(
      "vscode.executeDocumentSymbolProvider",
      inverters.uri,
    );
    const beck = parts.find(({ name }) => name === "Beck5");
    assert.include(
      beck!.children.map(({ name }) => name),
      "pv1",
    );
  });
});
