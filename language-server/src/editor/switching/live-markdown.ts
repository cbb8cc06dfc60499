import type { Assessment } from "../../assessment/assessment.js";
import type { LiveReport } from "../../isolation/report.js";
import { plain } from "../markdown.js";
import { headLines, incompleteText, notCountedLines, section } from "./page.js";

/** What is live, as a page to read: places by what reaches them, then what nothing reaches. */
export function liveMarkdown(assessment: Assessment, report: LiveReport): string {
  const { open, asked, places, dead, incomplete, notCounted, goesOn, neutralEarth, cautions } = report;
  const title = open.length > 0 ? `What is live with ${open.join(", ")} open` : "What is live with nothing open";
  const live = places.map(({ where, arrivals }) =>
    [`- **${plain(where.join(", "))}**`, ...arrivals.map(({ text }) => `  - ${plain(text)}`)].join("\n"),
  );
  return [
    ...headLines(assessment, `${title}, ${asked}`),
    ...(incomplete ? [incompleteText] : []),
    ...(live.length > 0 ? [live.join("\n")] : ["Nothing that is written here feeds anything."]),
    ...section(
      incomplete ? "Reached by nothing in what could be read" : "Reached by nothing: dead if wired as written",
      dead.length > 0 ? [dead.join(", ")] : [],
    ),
    ...section("Traced as closed all the same", notCountedLines(notCounted)),
    ...section(
      "Goes on without the grid",
      goesOn.map(({ text }) => text),
    ),
    ...section(
      "Neutral and earth",
      neutralEarth.map(({ text }) => text),
    ),
    ...section("Mind", cautions),
    "",
  ].join("\n\n");
}
