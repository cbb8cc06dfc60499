import { foretold } from "../../assessment/answers.js";
import type { Assessment } from "../../assessment/assessment.js";
import type { Problem } from "../../design/model.js";
import { type Hypothesis, hypothesisText } from "../../design/what-if/hypothesis.js";
import { caution } from "../caution.js";
import { type AssessedDesign, designReport, type ReportOptions } from "./design-report.js";
import type { Locator } from "./locate.js";
import { notices } from "./notices.js";
import {
  type DesignReport,
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
 * Puts the results of many files together, design by design, and keeps only what is reported of each. Every file that
 * was read has one entry, with the problems that stand in it; a problem that several designs meet in a file they share
 * is told once.
 */
export class ReportBuilder {
  private readonly problems = new Map<string, Map<string, ProblemReport>>();
  private readonly designs = new Map<string, Omit<DesignReport, "problems">>();

  constructor(
    private readonly locator: Locator,
    private readonly options: ReportOptions,
    private readonly suppose: readonly Hypothesis[] = [],
  ) {}

  add(checked: Checked): void {
    const { files, assessment, isDesign } = checked;
    for (const { uri } of files) {
      const name = this.locator.name(uri);
      if (!this.problems.has(name)) this.problems.set(name, new Map());
    }
    for (const report of problemReports(assessment, this.locator)) {
      const { file, line, column, endLine, endColumn } = report.location;
      const key = [report.id, line, column, endLine, endColumn, report.message].join(" ");
      const own = this.problems.get(file);
      if (own && !own.has(key)) own.set(key, report);
    }
    if (isDesign)
      this.designs.set(this.locator.name(assessment.design.entry), designReport(checked, this.locator, this.options));
  }

  finish(unreadable: readonly Unreadable[], version: string): Report {
    const files = [...this.problems].map(([file, own]): FileReport => {
      const problems = [...own.values()].sort(inOrderOfText);
      const design = this.designs.get(file);
      return design ? { ...design, problems } : { kind: "text", file, problems };
    });
    return {
      $schema: schemaId,
      schemaVersion,
      tool: { name: "sunwright", version },
      caution,
      ...(this.suppose.length > 0 && { whatIf: this.suppose.map(hypothesisText) }),
      summary: summaryOf(files),
      unreadable,
      files,
    };
  }
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
