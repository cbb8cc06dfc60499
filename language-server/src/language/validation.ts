import {
  type AstNode,
  Cancellation,
  DefaultDocumentValidator,
  type LangiumCoreServices,
  type LangiumDocument,
  type TextDocument,
  type ValidationOptions,
} from "langium";
import type { Diagnostic, DiagnosticSeverity, Range } from "vscode-languageserver";
import type { Problem, Severity } from "../design/model.js";
import { absolute } from "../place.js";
import type { SunwrightOwnServices } from "./core-module.js";
import type { Project } from "./project.js";

/** Says what to show in a document. The editor room has the full answer; here is the one without electricity. */
export interface Diagnoser {
  diagnose(document: LangiumDocument, token: Cancellation.CancellationToken): Diagnostic[] | Promise<Diagnostic[]>;
}

/** Hands documents to the diagnoser. The framework's own checks have nothing to check: its tree is empty. */
export class SunwrightDocumentValidator extends DefaultDocumentValidator {
  private readonly diagnoser: () => Diagnoser;

  constructor(services: LangiumCoreServices & SunwrightOwnServices) {
    super(services);
    this.diagnoser = () => services.sunwright.Diagnoser;
  }

  override async validateDocument(
    document: LangiumDocument<AstNode>,
    _options?: ValidationOptions,
    token?: Cancellation.CancellationToken,
  ): Promise<Diagnostic[]> {
    return this.diagnoser().diagnose(document, token ?? Cancellation.CancellationToken.None);
  }
}

/** What is wrong with the text of a document and its `use` lines. */
export class TextDiagnoser implements Diagnoser {
  constructor(private readonly project: Project) {}

  diagnose({ uri, textDocument }: LangiumDocument): Diagnostic[] {
    return this.project
      .fragments(uri.toString())
      .flatMap(({ problems }) => problems.map((problem) => problemDiagnostic(problem, textDocument)));
  }
}

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = { error: 1, warning: 2, note: 3 };

function problemDiagnostic({ id, severity, message, place }: Problem, text: TextDocument): Diagnostic {
  const { start, end } = absolute(place);
  return { range: rangeOf(text, start, end), severity: severities[severity], code: id, source: "sunwright", message };
}

/** Offsets of a text as the editor's lines and columns. */
export function rangeOf(text: TextDocument, start: number, end: number): Range {
  return { start: text.positionAt(start), end: text.positionAt(end) };
}
