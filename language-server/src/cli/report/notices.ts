import type { Severity } from "../../design/model.js";
import type { FileReport, Location, RelatedReport } from "./report.js";

/** One line to show at a place: a problem, a finding or a departure. */
export interface NoticeReport {
  readonly severity: Severity;
  readonly id: string;
  readonly message: string;
  readonly location: Location;
  readonly related: readonly RelatedReport[];
  readonly expected: boolean;
  /** A finding that is answered for in writing: shown, and never a reason to fail. */
  readonly answered: boolean;
  /** Rests on something supposed, or comes out otherwise than it does for the text as it is. */
  readonly hypothetical?: true;
  readonly workings: readonly string[];
  readonly sources: readonly string[];
}

/** Everything to show of some files in the order of the text, each once however many designs meet it. */
export function notices(files: readonly FileReport[]): NoticeReport[] {
  const found = new Map<string, NoticeReport>();
  for (const file of files) {
    for (const notice of ofFile(file)) {
      const { file: name, line, column, endLine, endColumn } = notice.location;
      const key = [notice.id, name, line, column, endLine, endColumn, notice.message].join(" ");
      if (!found.has(key)) found.set(key, notice);
    }
  }
  return [...found.values()].sort(inOrderOfText);
}

function* ofFile(file: FileReport): Generator<NoticeReport> {
  for (const problem of file.problems) yield { ...problem, answered: false, workings: [], sources: [] };
  if (file.kind === "text") return;
  for (const { rule, workings = [], ...finding } of file.findings)
    yield { ...finding, id: rule, workings, answered: false };
  for (const { rule, workings = [], ...departure } of file.departures)
    yield { ...departure, id: rule, workings, sources: [], expected: false, answered: true };
}

function inOrderOfText(a: NoticeReport, b: NoticeReport): number {
  if (a.location.file !== b.location.file) return a.location.file < b.location.file ? -1 : 1;
  return a.location.line - b.location.line || a.location.column - b.location.column;
}
