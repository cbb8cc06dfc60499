import { foretold } from "../../assessment/answers.js";
import type { Assessment } from "../../assessment/assessment.js";
import type { Problem } from "../../design/model.js";
import { caution } from "../caution.js";
import { type AssessedDesign, designReport, type ReportOptions } from "./design-report.js";
import type { Locator } from "./locate.js";
import { notices } from "./notices.js";
import {
  type FileReport,
  type ProblemReport,
  type Report,
  type Summary,
  schemaId,
  schemaVersion,
  type Unreadable,
} from "./report.js";

/** One file as it was asked for: a design of its own, or only text because a design uses it or it declares no item. */
export interface Checked extends AssessedDesign {
  readonly isDesign: boolean;
}

/**
 * Puts the results of many files together. Every file that was read has one entry, with the problems that stand in it;
 * a problem that several designs meet in a file they share is told once.
 */
export function buildReport(
  checked: readonly Checked[],
  unreadable: readonly Unreadable[],
  version: string,
  locator: Locator,
  options: ReportOptions,
): Report {
  const problems = new Map<string, Map<string, ProblemReport>>();
  for (const { files } of checked) for (const { uri } of files) problems.set(locator.name(uri), new Map());
  for (const { assessment } of checked)
    for (const report of problemReports(assessment, locator)) {
      const { file, line, column, endLine, endColumn } = report.location;
      const key = [report.id, line, column, endLine, endColumn, report.message].join(" ");
      const own = problems.get(file);
      if (own && !own.has(key)) own.set(key, report);
    }

  const designs = new Map<string, Omit<FileReport, "problems">>();
  for (const each of checked)
    if (each.isDesign) designs.set(locator.name(each.assessment.design.entry), designReport(each, locator, options));
  const files = [...problems].map(([file, own]): FileReport => {
    const list = [...own.values()].sort(inOrderOfText);
    return { kind: "text", file, ...designs.get(file), problems: list } as FileReport;
  });
  return {
    $schema: schemaId,
    schemaVersion,
    tool: { name: "sunwright", version },
    caution,
    summary: summaryOf(files),
    unreadable,
    files,
  };
}

function* problemReports(assessment: Assessment, locator: Locator): Generator<ProblemReport> {
  const expected = foretold(assessment).problems;
  for (const problem of assessment.problems) yield problemReport(problem, expected.has(problem), locator);
}

function problemReport(problem: Problem, expected: boolean, locator: Locator): ProblemReport {
  const { id, severity, message, place, related = [] } = problem;
  return {
    id,
    severity,
    message,
    location: locator.locate(place),
    related: related.map((entry) => ({ message: entry.message, location: locator.locate(entry.place) })),
    expected,
  };
}

function inOrderOfText(a: ProblemReport, b: ProblemReport): number {
  return a.location.line - b.location.line || a.location.column - b.location.column;
}

function summaryOf(files: readonly FileReport[]): Summary {
  const designs = files.filter((file) => file.kind === "design");
  const counts = { error: 0, warning: 0, note: 0 };
  for (const { severity, answered } of notices(files)) if (!answered) counts[severity]++;
  const total = (key: keyof Summary["outcomes"]): number =>
    designs.reduce((sum, { outcomes }) => sum + outcomes[key], 0);
  return {
    files: files.length,
    designs: designs.length,
    errors: counts.error,
    warnings: counts.warning,
    notes: counts.note,
    outcomes: {
      passes: total("passes"),
      findings: total("findings"),
      departures: total("departures"),
      notApplicable: total("notApplicable"),
      notChecked: total("notChecked"),
    },
  };
}
