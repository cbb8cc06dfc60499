import * as l10n from "@vscode/l10n";
import type { Assessment, Check } from "../../assessment/assessment.js";
import { label } from "../../design/facts.js";
import type { Property } from "../../design/model.js";
import type { Item, Part, Run, Thing } from "../../design/things.js";
import { isolationInShort } from "../../isolation/in-short.js";
import { comparedIn, tightestOf } from "../compared.js";
import { code, plain, shortNumber } from "../markdown.js";
import { checksOf } from "../things-of.js";
import { markedWhatIf } from "../what-if/marks.js";
import { acPlaces, wayText } from "./ac-place.js";
import { type Links, verdictText, workingText } from "./check.js";
import { arrayPlaces } from "./feeding.js";
import { neighboursText } from "./neighbours.js";

/** Beyond so many checks a hover is no longer read. */
const shownChecks = 16;
/** So many are worked out below the list. */
const workedChecks = 3;

/**
 * Everything known of an item or run, what is asked first coming first: what it is; what does not hold, or holds most
 * narrowly, with its sum; where it is and what feeds it; what makes it dead; the other checks.
 */
export function thingText(assessment: Assessment, thing: Thing, links: Links): string {
  if (thing.is === "part") return partText(assessment, thing);
  if (thing.is === "reading") return thingText(assessment, thing.target, links);
  const lines = [thing.is === "run" ? runTitle(thing) : itemTitle(thing)];
  const doc = thing.declaration.doc?.trim();
  if (doc) lines.push(doc);
  const { first, others } = checkTexts(assessment, checksOf(assessment, thing), links);
  lines.push(
    wayText(assessment, thing) ?? "",
    ...first,
    titled(l10n.t("On the array side:"), arrayPlaces(assessment, thing)),
    titled(l10n.t("Between supply, inverters and batteries:"), acPlaces(assessment, thing)),
    neighboursText(assessment, thing) ?? "",
  );
  const isolation = isolationInShort(assessment, thing);
  if (isolation) lines.push(plain(isolation.open), titled(l10n.t("Stays live:"), isolation.stillLive.map(plain)));
  lines.push(...others);
  return lines.filter(Boolean).join("\n\n");
}

/** A line of its own for one entry, a list for several, nothing for none. */
function titled(title: string, entries: readonly string[]): string {
  if (entries.length === 0) return "";
  return entries.length === 1 ? `${title} ${entries[0]}` : `${title}\n${entries.map((each) => `- ${each}`).join("\n")}`;
}

/** First what does not hold, or else what holds most narrowly, with its sum; then the others by their weight. */
function checkTexts(
  assessment: Assessment,
  checks: readonly Check[],
  links: Links,
): { readonly first: readonly string[]; readonly others: readonly string[] } {
  const ordered = [...checks].sort((a, b) => weight(a) - weight(b));
  const shown = ordered.slice(0, shownChecks);
  const listed = (some: readonly Check[]): string[] => [
    ...new Set(some.map((check) => markedWhatIf(verdictText(check, links), [check], assessment))),
  ];
  const worked = (some: readonly Check[]): string =>
    workingText(some.slice(0, workedChecks), assessment.ruleSet.id, links, checks);

  const told = shown.filter(({ outcome }) => outcome.outcome === "finding" || outcome.outcome === "departure");
  const tightest = shown.find(
    (check) => check.outcome.outcome === "pass" && tightestOf(comparedIn(check)) !== undefined,
  );
  const first = told.length > 0 || !tightest ? told : [tightest];
  const others = shown.filter((check) => !first.includes(check));
  const more = ordered.length - shown.length;
  return {
    first: first.length > 0 ? [...listed(first), worked(first)] : [],
    others: [
      others.length > 0
        ? `${first.length > 0 ? l10n.t("The other checks:") : l10n.t("Checks:")}\n- ${listed(others).join("\n- ")}`
        : "",
      more > 0 ? l10n.t("{0} more checks are not shown here; the command line lists them all.", more) : "",
    ],
  };
}

/** Sorts of outcome in the order of their weight; within one, the least to spare comes first. */
function weight(check: Check): number {
  const share = Math.min(tightestOf(comparedIn(check))?.share ?? 0, 999) / 1000;
  switch (check.outcome.outcome) {
    case "finding":
      return severities.indexOf(check.outcome.severity ?? check.rule.severity) - share;
    case "departure":
      return 4 - share;
    case "not-checked":
      return 5;
    case "pass":
      return 7 - share;
    case "not-applicable":
      return 8;
  }
}

const severities = ["error", "warning", "note"];

function itemTitle(item: Item): string {
  const title = item.declaration.title ? ` "${plain(item.declaration.title)}"` : "";
  const { count: written } = item.declaration;
  const count = written ? `${item.count}${written.whatIf ? " (what if)" : ""} × ` : "";
  const part = item.part ? `, ${count}${item.part.name}` : "";
  return `**${item.id}**${title}: ${item.row?.title ?? item.kind}${part}`;
}

function runTitle(run: Run): string {
  const { declaration, from, to, cable } = run;
  const { length } = declaration;
  const mark = length?.whatIf ? " (what if)" : "";
  const quantity = length ? `, ${shortNumber(length.value.written, 12)} ${length.value.unit}${mark}` : "";
  const ends = from && to ? ` from ${endText(from)} to ${endText(to)}` : "";
  return `**${run.id}**: run${ends}${quantity}${cable ? ` of ${cable.name}` : ""}`;
}

function endText({ item, terminal }: NonNullable<Run["from"]>): string {
  return terminal === "" ? item.id : `${item.id}.${terminal}`;
}

/** A part sheet in short: what it is and its essential figures. */
function partText(assessment: Assessment, part: Part): string {
  const lines = [`**${part.name}**: ${l10n.t("part, {0}", part.row?.title ?? part.kind)}`];
  const doc = part.declaration.doc?.trim();
  if (doc) lines.push(doc);
  const figures = keyFigures(part);
  if (figures.length > 0) lines.push(figures.map((figure) => `- ${figure}`).join("\n"));
  const users = usersOf(assessment, part);
  lines.push(
    users.length > 0
      ? l10n.t("Used by {0}.", users.slice(0, 12).join(", "))
      : l10n.t("No item of this design uses it."),
  );
  return lines.join("\n\n");
}

/** The essential properties of a part as its sheet states them. */
export function keyFigures(part: Part): string[] {
  return part.declaration.properties
    .filter((property) => part.row?.properties.some((row) => row.name === property.name && row.essential))
    .map((property) => `${property.name}: ${code(valueText(property))}`);
}

/** A value as it was written. */
export function valueText({ value }: Property): string {
  if (!value) return "?";
  switch (value.kind) {
    case "quantity":
      return `${shortNumber(value.written, 12)} ${value.unit}`.trim();
    case "range":
      return `${shortNumber(value.low.written, 12)}..${shortNumber(value.high.written, 12)} ${value.high.unit}`.trim();
    case "flag":
      return value.value ? "yes" : "no";
    case "text":
      return `"${value.value}"`;
    case "list":
      return "a list";
    default:
      return value.value;
  }
}

function usersOf(assessment: Assessment, part: Part): string[] {
  const users: string[] = [];
  const look = (item: Item): void => {
    if (item.part === part) users.push(label(item));
    for (const child of item.children) look(child);
  };
  for (const item of assessment.design.items) look(item);
  for (const run of assessment.design.runs) if (run.cable === part) users.push(run.id);
  return users;
}
