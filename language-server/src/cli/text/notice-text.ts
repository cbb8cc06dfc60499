import type { NoticeReport } from "../report/notices.js";
import type { Location } from "../report/report.js";
import { type Page, type Paint, printable } from "./page.js";

/** A problem, finding or departure: where, how bad, which; then the message and the places it points at. */
export function writeNotice(page: Page, notice: NoticeReport): void {
  const { paint } = page;
  const { line, column } = notice.location;
  const expected = notice.expected ? paint.dim("  (expected)") : "";
  const whatIf = notice.hypothetical ? "  (what if)" : "";
  page.line(
    `  ${position(line, column)}  ${severityWord(notice, paint)}  ${paint.bold(notice.id)}${whatIf}${expected}`,
  );
  page.text(8, notice.message);
  for (const related of notice.related)
    page.text(8, `${place(related.location)}  ${related.message}`, (text) => paint.dim(text));
  for (const working of notice.workings) page.text(10, working, (text) => paint.cyan(text));
  if (notice.workings.length > 0 && notice.sources.length > 0)
    page.text(10, `Source: ${notice.sources.join("; ")}`, (text) => paint.dim(text));
}

/** The form that terminals make a link of. */
export function place({ file, line, column }: Location): string {
  return `${printable(file)}:${line}:${column}`;
}

function position(line: number, column: number): string {
  return `${line}:${column}`.padEnd(6);
}

function severityWord({ severity, answered }: NoticeReport, paint: Paint): string {
  if (answered) return paint.magenta("departed");
  const word = severity.padEnd(8);
  if (severity === "error") return paint.red(word);
  return severity === "warning" ? paint.yellow(word) : paint.blue(word);
}
