import { assert } from "chai";
import {
  type Diagnostic,
  DiagnosticSeverity,
  languages,
  Range,
  RelativePattern,
  type TextDocument,
  window,
  workspace,
} from "vscode";
import { closeAll, findings, idOf, read, show, write } from "../designs";
import { diagnosticsFile } from "../results";
import { until } from "../until";

/** What is shown, without where the workspace is; the order of problems is the editor's own. */
function plain(folder: string, diagnostics: readonly Diagnostic[]): string[] {
  const one = ({ range, severity, message, source, code, relatedInformation = [], tags = [] }: Diagnostic) =>
    JSON.stringify({
      range,
      severity,
      message,
      source,
      code: typeof code === "object" ? { value: code.value, page: code.target.path.replace(/^.*\/docs\//, "") } : code,
      tags,
      related: relatedInformation.map((related) => ({
        message: related.message,
        range: related.location.range,
        file: related.location.uri.path.slice(folder.length),
      })),
    });
  return diagnostics.map(one).sort();
}

/** Where nothing is to be found, only a slip that comes and goes shows that the design was looked at. */
async function untilComputed(document: TextDocument): Promise<void> {
  const isMarked = () => findings(document.uri).some(({ range }) => document.getText(range).includes("¤"));
  const end = document.positionAt(document.getText().length);
  const editor = await window.showTextDocument(document, { preview: false });
  await editor.edit((edit) => edit.insert(end, "\n¤\n"));
  await until("a slip is marked", isMarked);
  await editor.edit((edit) => edit.delete(new Range(end, end.translate(2, 0))));
  await until("the slip is gone", () => !findings(document.uri).some(({ message }) => message.includes("¤")));
}

describe("the examples", () => {
  after(closeAll);

  it("show what their own lines foretell, and the good ones no error", async function () {
    this.timeout(180_000);
    const [folder] = workspace.workspaceFolders!;
    const files = await workspace.findFiles(new RelativePattern(folder!, "examples/**/*.sun"));
    const paths = files.map(({ path }) => path.slice(folder!.uri.path.length + 1));
    // Others lay designs of their own beside them.
    const designs = paths.filter((path) => !path.includes("/parts/") && !path.includes("/trial-")).sort();
    assert.isAbove(designs.length, 20);
    const shown: Record<string, string[]> = {};
    for (const path of designs) {
      const document = await show(path);
      const { uri } = document;
      const foretold = [...(await read(path)).matchAll(/^expect ([\w-]+) on/gm)].map(([, id]) => id!);
      await until(`${path} shows ${foretold}`, () => {
        const ids = findings(uri).map(idOf);
        return foretold.every((id) => ids.includes(id));
      });
      await untilComputed(document);
      if (foretold.length === 0)
        assert.isFalse(
          findings(uri).some(({ severity }) => severity === DiagnosticSeverity.Error),
          path,
        );
      shown[path] = plain(folder!.uri.path, languages.getDiagnostics(uri));
      await closeAll();
    }
    await write(diagnosticsFile, JSON.stringify(shown));
  });
});
