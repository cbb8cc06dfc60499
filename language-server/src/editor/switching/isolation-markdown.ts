import type { Assessment } from "../../assessment/assessment.js";
import type { IsolationReport } from "../../isolation/report.js";
import { plain } from "../markdown.js";
import { headLines, incompleteText, notCountedLines, section } from "./page.js";

/** How to make a thing dead, as a page to read. */
export function isolationMarkdown(assessment: Assessment, report: IsolationReport): string {
  const { thing, open, incomplete, instead, complete, order, waits, stillLive, besides, notCounted, cautions } = report;
  return [
    ...headLines(assessment, `How to isolate ${thing}`),
    `**${plain(open)}**`,
    ...(incomplete ? [incompleteText] : []),
    ...order.map(({ text }) => plain(text)),
    ...waits.map(({ text }) => plain(text)),
    ...section(
      complete ? "Open instead, for the same" : "Open instead, for the same (there are more such sets)",
      instead,
    ),
    ...section("Stays live", stillLive),
    ...section("Parts it from what has no source in this text; open these as well", besides),
    ...section("Does not count", notCountedLines(notCounted)),
    ...section("Mind", cautions),
    "",
  ].join("\n\n");
}
