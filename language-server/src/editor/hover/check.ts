import * as l10n from "@vscode/l10n";
import type { Check } from "../../assessment/assessment.js";
import { assumptions, type Figure, type Given, givens, type Source } from "../../physics/figure.js";
import { formatApart, formatFigure, sourceText, workingLines } from "../../physics/working.js";
import type { Place } from "../../place.js";
import type { Finding, Pass } from "../../rules/rule.js";
import { idLink, plain } from "../markdown.js";
import { percent } from "../percent.js";
import { severityWord } from "../severity-word.js";
import { isNotChecked, missingText } from "../unknowns.js";

/** How a hover links: to a place of the text, and to a rule's page. */
export interface Links {
  readonly to: (place: Place) => string | undefined;
  readonly docs?: string;
}

/** One check in one sentence: the outcome in words, the rule, both figures. */
export function verdictText(check: Check, links: Links): string {
  const rule = idLink(check.rule.id, links.docs);
  const { outcome } = check;
  switch (outcome.outcome) {
    case "finding": {
      const severity = outcome.severity ?? check.rule.severity;
      const sentence = plain(`${outcome.what} ${outcome.why} ${outcome.todo}`);
      return l10n.t("Finding ({0}), {1}. {2}", severityWord(severity), rule, sentence);
    }
    case "departure":
      return l10n.t(
        "Departed from {0}. {1} Reason given: {2}",
        rule,
        plain(outcome.finding.what),
        plain(outcome.departure.reason),
      );
    case "pass":
      if (!outcome.against) return l10n.t("Holds, {0}{1}.", rule, margin(outcome));
      return outcome.value
        ? l10n.t("Holds, {0} against {1}{2}.", rule, plain(outcome.against), margin(outcome))
        : l10n.t("Holds, {0}: {1}.", rule, plain(outcome.against).replace(/\.$/, ""));
    case "not-applicable":
      return l10n.t("Does not apply, {0}: {1}.", rule, plain(outcome.reason).replace(/\.$/, ""));
    case "not-checked":
      return l10n.t("Not checked, {0}: {1}.", rule, plain(isNotChecked(check) ? missingText(check) : ""));
  }
}

function margin({ value, limit, utilisation }: Pass): string {
  if (!value || !limit) return "";
  const [text, limitText] = formatApart(value, limit);
  if (utilisation === undefined)
    return value.value > limit.value
      ? l10n.t(": {0}, above {1}", text, limitText)
      : l10n.t(": {0}, limit {1}", text, limitText);
  return value.value > limit.value && utilisation < 1
    ? l10n.t(": {0}, at least {1}, {2} of it needed", text, limitText, percent(utilisation))
    : l10n.t(": {0}, limit {1}, {2} of the limit used", text, limitText, percent(utilisation));
}

/** A finding's share of its limit, said as what is left or what is over. */
export function marginText({ value, limit }: Pick<Finding, "value" | "limit">): string | undefined {
  if (!value || !limit || limit.value === 0 || value.dimension !== limit.dimension) return undefined;
  const [text, limitText] = formatApart(value, limit);
  // A share of a share helps nobody to see how far it is off.
  if (value.dimension === "ratio") return l10n.t("{0} against a limit of {1}.", text, limitText);
  return l10n.t("{0} against a limit of {1}: {2} of it.", text, limitText, percent(value.value / limit.value));
}

/** The figures that a check compares. */
export function figuresOf({ outcome }: Check): Figure[] {
  const compared = outcome.outcome === "departure" ? outcome.finding : outcome;
  if (compared.outcome !== "pass" && compared.outcome !== "finding") return [];
  const { value, limit } = compared;
  return [...(value ? [value] : []), ...(limit ? [limit] : [])];
}

/**
 * The sums behind some checks, each once, then where their figures are stated, what was assumed, and who says so.
 * Assumptions are named of all checks of `listed`, worked out here or not.
 */
export function workingText(
  checks: readonly Check[],
  ruleSet: string,
  links: Links,
  listed: readonly Check[] = checks,
): string {
  const figures = new Set(checks.flatMap(figuresOf));
  const lines = new Set<string>();
  const stated = new Map<string, Given>();
  const assumed = new Set<string>();
  const sources = new Set<string>();
  for (const figure of figures) {
    for (const line of workingLines(figure)) lines.add(line);
    for (const given of givens(figure)) if (given.origin.kind === "stated") stated.set(given.origin.text, given);
    for (const source of sourcesOf(figure)) sources.add(sourceText(source));
  }
  for (const figure of listed.flatMap(figuresOf))
    for (const given of assumptions(figure)) assumed.add(given.origin.text);
  for (const { rule } of checks) for (const source of rule.sources[ruleSet] ?? []) sources.add(sourceText(source));
  const paragraphs: string[] = [];
  if (lines.size > 0) paragraphs.push(`${l10n.t("Working:")}\n\`\`\`text\n${[...lines].join("\n")}\n\`\`\``);
  if (stated.size > 0)
    paragraphs.push(
      list(
        l10n.t("Stated"),
        [...stated.values()].map((given) => statedText(given, links)),
      ),
    );
  if (assumed.size > 0) paragraphs.push(list(l10n.t("Assumed"), [...assumed].map(plain)));
  if (sources.size > 0) paragraphs.push(list(l10n.t("Source"), [...sources].map(plain)));
  return paragraphs.join("\n\n");
}

function statedText(given: Given, links: Links): string {
  const { text, place } = given.origin;
  const link = place && links.to(place);
  const where = link === undefined ? plain(text) : `[${plain(text)}](${link})`;
  return `${plain(given.symbol)} = ${formatFigure(given)}, ${where}`;
}

function list(title: string, entries: readonly string[]): string {
  return entries.length === 1
    ? `${title}: ${entries[0]}`
    : `${title}:\n${entries.map((entry) => `- ${entry}`).join("\n")}`;
}

function* sourcesOf(figure: Figure): Generator<Source> {
  if (figure.kind === "given") {
    if (figure.origin.source) yield figure.origin.source;
    return;
  }
  if (figure.source) yield figure.source;
  for (const term of figure.terms) yield* sourcesOf(term);
}
