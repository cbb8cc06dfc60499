import * as l10n from "@vscode/l10n";
import type { Assessment } from "../../assessment/assessment.js";
import type { LiveReport } from "../../isolation/report.js";
import { plain } from "../markdown.js";
import { headLines, incompleteText, notCountedLines, section } from "./page.js";

/** What is live, as a page to read: places by what reaches them, then what nothing reaches. */
export function liveMarkdown(assessment: Assessment, report: LiveReport): string {
  const { open, asked, places, dead, incomplete, notCounted, goesOn, neutralEarth, cautions } = report;
  const title =
    open.length > 0 ? l10n.t("What is live with {0} open", open.join(", ")) : l10n.t("What is live with nothing open");
  const live = places.map(({ where, arrivals }) =>
    [`- **${plain(where.join(", "))}**`, ...arrivals.map(({ text }) => `  - ${plain(text)}`)].join("\n"),
  );
  return [
    ...headLines(assessment, `${title}, ${asked}`),
    ...(incomplete ? [incompleteText()] : []),
    ...(live.length > 0 ? [live.join("\n")] : [l10n.t("Nothing that is written here feeds anything.")]),
    ...section(
      incomplete
        ? l10n.t("Reached by nothing in what could be read")
        : l10n.t("Reached by nothing: dead if wired as written"),
      dead.length > 0 ? [dead.join(", ")] : [],
    ),
    ...section(l10n.t("Traced as closed all the same"), notCountedLines(notCounted)),
    ...section(
      l10n.t("Goes on without the grid"),
      goesOn.map(({ text }) => text),
    ),
    ...section(
      l10n.t("Neutral and earth"),
      neutralEarth.map(({ text }) => text),
    ),
    ...section(l10n.t("Mind"), cautions),
    "",
  ].join("\n\n");
}
