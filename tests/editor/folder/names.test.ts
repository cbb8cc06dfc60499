import { assert } from "chai";
import { commands, type DocumentSymbol, type Location, type LocationLink, type WorkspaceEdit, workspace } from "vscode";
import { at, closeAll, positionOf, read, show, untilFound, write } from "../designs";
import { layCottage, layHouse } from "../house";
import { until } from "../until";

describe("names", () => {
  afterEach(closeAll);

  it("are renamed in every file that uses them", async () => {
    // A sheet of its own: what every exercise uses would be changed in all of them.
    const sheet = await read("examples/training/parts/inverters.sun");
    await write("examples/training/parts/renamed.sun", sheet);
    const path = await layHouse((text) => text.replace("parts/inverters.sun", "parts/renamed.sun"));
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
    const renamed = await workspace.openTextDocument(at("examples/training/parts/renamed.sun"));
    assert.equal(renamed.getText(), sheet.replaceAll(/\bBeck5\b/g, "Beck5B"));
    const { relatedInformation = [] } = await untilFound(document.uri, "string-voltage");
    assert.equal(relatedInformation[0]!.location.uri.path, renamed.uri.path);
  });

  it("of a way are renamed with its run, its reading and its departure", async () => {
    const departed = 'departure ac-protection on CU.K9 because "agreed"\n';
    const document = await show(await layCottage((text) => text + departed));
    const before = document.getText();
    const edit = await until("the name can be changed", () =>
      commands.executeCommand<WorkspaceEdit>(
        "vscode.executeDocumentRenameProvider",
        document.uri,
        positionOf(document, "K9 is"),
        "K12",
      ),
    );
    assert.isTrue(await workspace.applyEdit(edit));
    assert.equal(document.getText(), before.replaceAll(/\bK9\b/g, "K12"));
    for (const words of ["to CU.K12:", "measured CU.K12 on", "on CU.K12 because"])
      assert.include(document.getText(), words);
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
