import type { LangiumDocument } from "langium";
import { type Diagnostic, DiagnosticSeverity, DiagnosticTag } from "vscode-languageserver";
import type { Severity } from "../../design/model.js";
import { type Diagnoser, TextDiagnoser } from "../../language/validation.js";
import { type Mark, marksOf } from "../diagnostics.js";
import type { Editor } from "./editor.js";
import { faultText } from "./fault-text.js";

const severities: Readonly<Record<Severity | "hint", DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  note: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

/** What the editor is told of a mark beside its place, for code actions. */
export interface MarkData {
  readonly thing?: string;
}

/** Squiggles from the assessments of every design that a document belongs to. */
export class DesignDiagnoser implements Diagnoser {
  private readonly ofTextAlone: TextDiagnoser;

  constructor(private readonly editor: Editor) {
    this.ofTextAlone = new TextDiagnoser(editor.services.sunwright.Project);
  }

  diagnose(document: LangiumDocument): Diagnostic[] {
    const uri = document.uri.toString();
    const { view, settings, severities } = this.editor;
    try {
      return marksOf(view, uri, { ...settings, severities }).map((mark) => this.diagnostic(mark));
    } catch (error) {
      // A design that cannot be computed must not look like one without a finding.
      this.editor.connection?.console.error(`${uri}: ${faultText(error)}`);
      return [failed(), ...this.ofTextAlone.diagnose(document)];
    }
  }

  private diagnostic(mark: Mark): Diagnostic {
    const { positions } = this.editor;
    const data: MarkData = { thing: mark.thing };
    return {
      range: positions.range(mark.span),
      severity: severities[mark.severity],
      source: "sunwright",
      code: mark.id,
      message: mark.message,
      ...(mark.page === undefined ? {} : { codeDescription: { href: mark.page } }),
      ...(mark.unnecessary ? { tags: [DiagnosticTag.Unnecessary] } : {}),
      ...(mark.related.length === 0
        ? {}
        : {
            relatedInformation: mark.related.map(({ span, message }) => ({
              location: positions.location(span),
              message,
            })),
          }),
      ...(mark.thing === undefined ? {} : { data }),
    };
  }
}

function failed(): Diagnostic {
  return {
    range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } },
    severity: DiagnosticSeverity.Error,
    source: "sunwright",
    code: "not-computed",
    message:
      "This design could not be computed, so nothing here has been checked. The output channel says what went wrong; the last change to the text is the likeliest cause.",
  };
}
