import * as l10n from "@vscode/l10n";
import type { Assessment } from "../../assessment/assessment.js";
import type { IsolationReport } from "../../isolation/report.js";
import { plain } from "../markdown.js";
import { headLines, incompleteText, notCountedLines, section } from "./page.js";

/** How to make a thing dead, as a page to read. */
export function isolationMarkdown(assessment: Assessment, report: IsolationReport): string {
  const { thing, open, incomplete, instead, complete, order, waits, stillLive, besides, notCounted, cautions } = report;
  return [
    ...headLines(assessment, l10n.t("How to isolate {0}", thing)),
    `**${plain(open)}**`,
    ...(incomplete ? [incompleteText()] : []),
    ...order.map(({ text }) => plain(text)),
    ...waits.map(({ text }) => plain(text)),
    ...section(
      complete ? l10n.t("Open instead, for the same") : l10n.t("Open instead, for the same (there are more such sets)"),
      instead,
    ),
    ...section(l10n.t("Stays live"), stillLive),
    ...section(l10n.t("Parts it from what has no source in this text; open these as well"), besides),
    ...section(l10n.t("Does not count"), notCountedLines(notCounted)),
    ...section(l10n.t("Mind"), cautions),
    "",
  ].join("\n\n");
}
