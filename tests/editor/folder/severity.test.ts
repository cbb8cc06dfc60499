import { assert } from "chai";
import { ConfigurationTarget, DiagnosticSeverity, workspace } from "vscode";
import { at, closeAll, findings, idOf, show, untilFound, untilGone, write } from "../designs";
import { layHouse } from "../house";
import { until } from "../until";

describe("what a finding is shown as", () => {
  const own = workspace.getConfiguration("sunwright");
  const file = "examples/training/sunwright.json";

  afterEach(async () => {
    await own.update("severity", undefined, ConfigurationTarget.Workspace);
    await workspace.fs.delete(at(file)).then(undefined, () => undefined);
    await closeAll();
  });

  it("follows the user's setting at once, and the file beside the design comes before it", async () => {
    const { uri } = await show(await layHouse());
    const shownAs = (severity: DiagnosticSeverity) =>
      until(`it is shown as ${DiagnosticSeverity[severity]}`, () =>
        findings(uri).some((found) => idOf(found) === "string-voltage" && found.severity === severity),
      );
    assert.equal((await untilFound(uri, "string-voltage")).severity, DiagnosticSeverity.Error);
    await own.update("severity", { "string-voltage": "note" }, ConfigurationTarget.Workspace);
    await shownAs(DiagnosticSeverity.Information);
    await write(file, '{ "severity": { "string-voltage": "warning" } }');
    await shownAs(DiagnosticSeverity.Warning);
    await write(file, '{ "severity": { "string-voltage": "off" } }');
    await untilGone(uri, "string-voltage");
    await workspace.fs.delete(at(file));
    await shownAs(DiagnosticSeverity.Information);
    await own.update("severity", undefined, ConfigurationTarget.Workspace);
    await shownAs(DiagnosticSeverity.Error);
  });
});
