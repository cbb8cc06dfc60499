import { assert } from "chai";
import { commands, DiagnosticSeverity, languages, workspace } from "vscode";
import { closeAll, idOf, show, untilFound } from "../designs";
import { layHouse } from "../house";
import { listProblemsOf } from "../problems-panel";
import { hand } from "../stage";
import { until } from "../until";

describe("problems", () => {
  afterEach(closeAll);

  it("carry the rule's id, and a link to its page that leads somewhere", async () => {
    const document = await show(await layHouse());
    const { code, source, severity } = await untilFound(document.uri, "string-voltage");
    if (typeof code !== "object") throw new Error("The id has no link");
    assert.equal(code.value, "string-voltage");
    assert.equal(source, "sunwright");
    assert.equal(severity, DiagnosticSeverity.Error);
    const page = new TextDecoder().decode(await workspace.fs.readFile(code.target));
    assert.match(page, /string-voltage/);
    assert.match(page, /IEC 62548/);
  });

  it("point at the sheet on the other side", async () => {
    const document = await show(await layHouse());
    const { relatedInformation = [] } = await untilFound(document.uri, "string-voltage");
    const [related] = relatedInformation;
    assert.match(related!.location.uri.path, /parts\/inverters\.sun$/);
    const sheet = await workspace.openTextDocument(related!.location.uri);
    assert.equal(sheet.getText(related!.location.range), "600 V");
  });

  it("stand in the panel with id and message", async function () {
    const document = await show(await layHouse((text) => text, "listed-house.sun"));
    await untilFound(document.uri, "string-voltage");
    await listProblemsOf(this, "trial-listed-house.sun");
    const rows = await until("the panel lists the problem", async () => {
      const shown = await hand<string[]>(this, "words", { selector: ".markers-panel-container .monaco-list-row" });
      return shown.some((row) => row.includes("string-voltage")) && shown;
    });
    assert.isTrue(
      rows.some((row) => row.includes("612.1") && row.includes("600")),
      rows.join("\n"),
    );
    await commands.executeCommand("workbench.action.closePanel");
  });

  it("say of what could not be checked which property is missing, as a hint", async () => {
    const document = await show(await layHouse((text) => text.replace(/^ {4}ambient: +45 degC\n/m, "")));
    const hint = await until("something is not checked for want of it", () =>
      languages
        .getDiagnostics(document.uri)
        .find((diagnostic) => idOf(diagnostic) === "not-checked" && diagnostic.message.includes("ambient")),
    );
    assert.equal(hint.severity, DiagnosticSeverity.Hint);
    assert.equal(document.getText(hint.range), "W1");
  });
});
