import type { Severity } from "../../design/model.js";
import { type NoticeReport, notices } from "../report/notices.js";
import type { DesignReport, FileReport, Report, Summary } from "../report/report.js";
import { writeAssumptions, writePasses, writeSummary } from "./design-text.js";
import { writeNotice } from "./notice-text.js";
import { counted, Page, type PageOptions, printable } from "./page.js";
import { whatIfClosing, writeChanges, writeSuppositions } from "./what-if-text.js";

export interface CheckTextOptions extends PageOptions {
  readonly showWorking: boolean;
  readonly assumptions: boolean;
  /** Only what fails, and the last lines. */
  readonly quiet: boolean;
  readonly failOn: Severity;
}

/** A report for people, grouped by the file in which things stand. */
export function checkText(report: Report, options: CheckTextOptions): string {
  const page = new Page(options);
  const byFile = new Map<string, NoticeReport[]>();
  for (const notice of notices(report.files)) {
    if (options.quiet && !fails(notice, options.failOn)) continue;
    const { file } = notice.location;
    const same = byFile.get(file);
    if (same) same.push(notice);
    else byFile.set(file, [notice]);
  }
  for (const file of report.files) writeFile(page, file, byFile.get(file.file) ?? [], options);
  page.text(0, closing(report.summary) + hidden(report.files));
  if (report.whatIf) page.text(0, whatIfClosing(report.whatIf));
  page.text(0, report.caution, (text) => page.paint.dim(text));
  return page.toString();
}

const ranks: Readonly<Record<Severity, number>> = { note: 0, warning: 1, error: 2 };

/** Whether a notice is a reason for exit code 1. */
export function fails({ severity, answered }: NoticeReport, failOn: Severity): boolean {
  return !answered && ranks[severity] >= ranks[failOn];
}

function writeFile(page: Page, file: FileReport, own: readonly NoticeReport[], options: CheckTextOptions): void {
  const isSummed = file.kind === "design" && !options.quiet;
  if (own.length === 0 && !isSummed) return;
  const title = file.kind === "design" && file.site !== undefined ? `  ${printable(file.site)}` : "";
  page.line(page.paint.underline(printable(file.file)) + title);
  if (file.kind === "design") writeSuppositions(page, file);
  for (const notice of own) writeNotice(page, notice);
  if (isSummed) {
    if (own.length > 0) page.line();
    writeDesign(page, file, options);
  }
  page.line();
}

function writeDesign(page: Page, design: DesignReport, options: CheckTextOptions): void {
  if (options.showWorking) writePasses(page, design);
  if (options.assumptions) writeAssumptions(page, design);
  writeSummary(page, design);
  writeChanges(page, design);
}

/** What the settings hide is said in the last line too, also of those who only read that. */
function hidden(files: readonly FileReport[]): string {
  const count = files.reduce((sum, file) => sum + (file.kind === "design" ? (file.switchedOff?.length ?? 0) : 0), 0);
  return count === 0 ? "" : ` ${counted(count, "finding")} switched off by settings.`;
}

/** What it all comes to. A result without a finding is called that, and nothing more. */
function closing({ files, designs, errors, warnings, notes, outcomes }: Summary): string {
  const scope = `${counted(files, "file")}, ${counted(designs, "design")}`;
  const open = outcomes.notChecked > 0 ? ` ${counted(outcomes.notChecked, "check")} could not be made.` : "";
  if (errors + warnings + notes > 0)
    return `${scope}: ${counted(errors, "error")}, ${counted(warnings, "warning")}, ${counted(notes, "note")}.${open}`;
  if (designs === 0) return `${scope}: nothing is wrong with the text. There was no installation to check.`;
  if (outcomes.passes + outcomes.departures === 0) return `${scope}: no rule was checked.${open}`;
  return `${scope}: no finding from the rules checked.${open}`;
}
