import type { Check, Departed } from "../../language-server/src/assessment/assessment.js";
import { placeOf } from "../../language-server/src/assessment/spots.js";
import { label } from "../../language-server/src/design/facts.js";
import { workingLines } from "../../language-server/src/physics/working.js";
import { absolute } from "../../language-server/src/place.js";
import type { Finding, Fix, Spot } from "../../language-server/src/rules/rule.js";
import { changedLines, type TextDesign, textAfter } from "./designs.js";

/** Everything that a reader of one rule's findings is shown, as text: for comparing with what it was. */
export function findingsPage(design: TextDesign, ruleId: string): string {
  const { assessment } = design;
  const parts: string[] = [];
  for (const check of assessment.checks) {
    if (check.rule.id !== ruleId) continue;
    const { outcome } = check;
    if (outcome.outcome === "finding") parts.push(findingText(check, outcome, design));
    if (outcome.outcome === "departure") parts.push(departureText(check, outcome));
  }
  return parts.join("\n");
}

function departureText({ thing }: Check, { finding, departure }: Departed): string {
  return `departure on ${label(thing)}\n  what:   ${finding.what}\n  reason: ${departure.reason}\n`;
}

function findingText({ rule, thing }: Check, finding: Finding, design: TextDesign): string {
  const { text, assessment } = design;
  const lines = [
    `${finding.severity ?? rule.severity} on ${label(thing)}, at ${spotText(finding.spot, text)}`,
    `  what:  ${finding.what}`,
    `  why:   ${finding.why}`,
    `  to do: ${finding.todo}`,
  ];
  for (const [name, figure] of [
    ["value", finding.value],
    ["limit", finding.limit],
  ] as const)
    if (figure) lines.push(`  ${name}:`, ...workingLines(figure).map((line) => `    ${line}`));
  for (const { spot, message } of finding.related ?? []) lines.push(`  see ${spotText(spot, text)}: ${message}`);
  for (const fix of finding.fixes?.(assessment.judge) ?? [])
    lines.push(`  fix: ${fix.title}${fix.preview ? ` (${fix.preview})` : ""}`, ...fixLines(fix, design));
  return `${lines.join("\n")}\n`;
}

function fixLines(fix: Fix, design: TextDesign): string[] {
  const after = textAfter(design, fix);
  return after === undefined ? ["    changes nothing"] : changedLines(design.text, after).map((line) => `    ${line}`);
}

/** The words at a place, with the line they stand in. */
function spotText(spot: Spot, text: string): string {
  const { start, end } = absolute(placeOf(spot));
  const from = text.lastIndexOf("\n", start - 1) + 1;
  const to = text.indexOf("\n", end);
  const line = text.slice(from, to < 0 ? undefined : to).replace(/\/\/.*/, "");
  return `"${text.slice(start, end)}" of "${line.trim()}"`;
}
