import { problemTitles } from "../../assessment/problem-ids.js";
import { nearest } from "../../design/suggest.js";
import { rulePage } from "../../reference/rule-page.js";
import { rules } from "../../rules/index.js";
import { Page, type PageOptions } from "./page.js";

/** All rules by section, then what can be wrong with the text itself. */
export function rulesText(options: PageOptions): string {
  const page = new Page(options);
  const width = Math.max(...[...rules.map(({ id }) => id), ...Object.keys(problemTitles)].map((id) => id.length));
  const row = (id: string, severity: string, title: string): void =>
    page.line(`  ${page.paint.bold(id.padEnd(width))}  ${severity.padEnd(7)}  ${title}`);
  for (const section of new Set(rules.map((rule) => rule.section))) {
    page.line(page.paint.underline(section));
    for (const rule of rules) if (rule.section === section) row(rule.id, rule.severity, rule.title);
    page.line();
  }
  page.line(page.paint.underline("The text itself"));
  for (const [id, title] of Object.entries(problemTitles)) row(id, "", title);
  page.line();
  page.line("sunwright rules ID explains a rule.");
  return page.toString();
}

/** The page of one rule; undefined where nothing has that id. */
export function ruleText(id: string, options: PageOptions): string | undefined {
  const rule = rules.find((candidate) => candidate.id === id);
  const page = new Page(options);
  if (rule) writeMarkdown(page, rulePage(rule));
  else if (Object.hasOwn(problemTitles, id)) {
    page.line(page.paint.bold(id));
    page.line();
    page.text(0, problemTitles[id]!);
  } else return undefined;
  return page.toString();
}

/** "There is no rule strng-voltage. Did you mean string-voltage?" */
export function unknownRuleText(id: string): string {
  const near = nearest(id, [...rules.map((rule) => rule.id), ...Object.keys(problemTitles)]);
  return `There is no rule ${id}.${near ? ` Did you mean ${near}?` : ""} sunwright rules lists them all.`;
}

/** The little Markdown that rule pages are written in, for a terminal. */
function writeMarkdown(page: Page, markdown: string): void {
  let isCode = false;
  for (const line of markdown.trim().split("\n")) {
    const heading = /^#+ (.*)/.exec(line);
    if (line.startsWith("```")) isCode = !isCode;
    else if (isCode) page.line(line === "" ? "" : `    ${line}`);
    else if (heading) page.line(page.paint.bold(heading[1]!));
    else page.text(0, inline(line));
  }
}

/** Without the marks of emphasis, and links as their words; the page of all rules is a command here. */
function inline(text: string): string {
  return text
    .replace(/\[([^\]]+)\]\(\.\.\/rules\.md\)/g, "$1: sunwright rules")
    .replace(/\[([^\]]+)\]\([^)]*\)/g, "$1")
    .replace(/\*\*([^*]+)\*\*/g, "$1")
    .replace(/(^|\s)\*([^*]+)\*(?=\s|$)/g, "$1$2")
    .replace(/`([^`]+)`/g, "$1");
}
