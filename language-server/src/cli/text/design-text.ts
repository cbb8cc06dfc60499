import type {
  DesignReport,
  NotCheckedReport,
  OwnLimitReport,
  PassReport,
  RuleSetReport,
  SwitchedOffReport,
} from "../report/report.js";
import { counted, type Page } from "./page.js";

/** How a design did: the five outcomes, the tightest margin, what could not be checked, and by which rules. */
export function writeSummary(page: Page, design: DesignReport): void {
  const { passes, findings, departures, notApplicable, notChecked } = design.outcomes;
  page.text(
    2,
    `${passes} passed, ${counted(findings, "finding")}, ${counted(departures, "departure")}, ${notApplicable} not applicable, ${notChecked} not checked`,
    (text) => page.paint.bold(text),
  );
  if (design.incomplete) page.text(2, "Not all of the text could be read: these are results of what could.");
  if (design.tightest) page.text(2, `Tightest margin: ${margin(design.tightest)}`);
  if (design.switchedOff) writeSwitchedOff(page, design.switchedOff);
  if (design.notChecked.length > 0) writeNotChecked(page, design.notChecked);
  page.text(2, ruleSetLine(design.ruleSet));
  if (design.ownLimits) page.text(2, `The site's own limits: ${design.ownLimits.map(ownLimit).join("; ")}`);
}

/** Everything that passed or does not apply, with the sums. */
export function writePasses(page: Page, design: DesignReport): void {
  if (design.passes.length > 0) page.text(2, "Passed");
  for (const [check, passes] of byCheck(design.passes)) {
    page.text(4, check);
    for (const pass of passes) page.text(6, comparison(pass) + mark(pass));
    const lines = new Set(passes.flatMap(({ workings }) => workings ?? []));
    for (const working of lines) page.text(10, working, (text) => page.paint.cyan(text));
  }
  if (design.notApplicable.length > 0) page.text(2, "Not applicable");
  for (const { rule, thing, reason, hypothetical } of design.notApplicable)
    page.text(4, `${rule} on ${thing}: ${reason}${mark({ hypothetical })}`);
}

export function writeAssumptions(page: Page, design: DesignReport): void {
  if (design.assumptions.length === 0) {
    page.text(2, "Assumed: nothing that took part in a result.");
    return;
  }
  page.text(2, "Assumed");
  for (const { text, usedBy } of design.assumptions)
    page.text(4, `${text} (for ${usedBy.length > 0 ? checks(usedBy) : "every check"})`);
}

/** A thing may pass one rule against many limits: the sum that they share is then shown once. */
function byCheck(passes: readonly PassReport[]): Map<string, PassReport[]> {
  const found = new Map<string, PassReport[]>();
  for (const pass of passes) {
    const check = `${pass.rule} on ${pass.thing}`;
    const same = found.get(check);
    if (same) same.push(pass);
    else found.set(check, [pass]);
  }
  return found;
}

function margin(pass: PassReport): string {
  const left = (1 - pass.utilisation!) * 100;
  return `${left.toFixed(1)} % at ${pass.thing}, ${pass.rule} (${comparison(pass)})${mark(pass)}`;
}

function mark({ hypothetical }: { readonly hypothetical?: true }): string {
  return hypothetical ? " (what if)" : "";
}

/** "465.3 V against 600 V, INV"; what holds, for a yes-or-no check. */
function comparison({ thing, value, limit, utilisation, against }: PassReport): string {
  const parts: string[] = [];
  if (value) parts.push(limit ? `${value.text} against ${limit.text}` : value.text);
  if (against !== undefined && against !== thing) parts.push(against);
  if (utilisation !== undefined) parts.push(`${(utilisation * 100).toFixed(1)} % used`);
  return parts.length > 0 ? parts.join(", ") : "holds";
}

/** What the settings hide at its place is named here, so that nobody forgets that it is there. */
function writeSwitchedOff(page: Page, list: readonly SwitchedOffReport[]): void {
  page.text(2, "Switched off by settings");
  for (const { rule, thing, severity, what, hypothetical } of list)
    page.text(4, `${severity}, ${rule} on ${thing}: ${what}${mark({ hypothetical })}`);
}

/** One line for each property or circumstance that is not known, with the rules that wait for it. */
function writeNotChecked(page: Page, list: readonly NotCheckedReport[]): void {
  const properties = new Map<string, { things: Set<string>; rules: Set<string> }>();
  const reasons = new Map<string, NotCheckedReport[]>();
  for (const check of list) {
    for (const { thing, property } of check.missing) {
      const entry = properties.get(property) ?? { things: new Set(), rules: new Set() };
      properties.set(property, entry);
      entry.things.add(thing);
      entry.rules.add(check.rule);
    }
    if (check.reason !== undefined) reasons.set(check.reason, [...(reasons.get(check.reason) ?? []), check]);
  }
  page.text(2, "Not checked");
  for (const [property, { things, rules }] of properties)
    page.text(4, `${property} is not stated: ${[...things].join(", ")} (for ${[...rules].join(", ")})`);
  for (const [reason, those] of reasons) page.text(4, `${reason} (for ${checks(those)})`);
}

/** "string-voltage on S1, S2; dc-isolator on Q1". */
function checks(list: readonly { readonly rule: string; readonly thing: string }[]): string {
  const byRule = new Map<string, Set<string>>();
  for (const { rule, thing } of list) {
    const things = byRule.get(rule);
    if (things) things.add(thing);
    else byRule.set(rule, new Set([thing]));
  }
  return [...byRule].map(([rule, things]) => `${rule} on ${[...things].join(", ")}`).join("; ");
}

function ruleSetLine({ id, editions }: RuleSetReport): string {
  return `Rule set ${id}: ${editions.map(({ title, edition }) => `${title} (${edition})`).join(", ")}`;
}

/** "dc-ac-ratio 2.2 in place of 1.5". */
function ownLimit({ name, value, ruleSet }: OwnLimitReport): string {
  return value === ruleSet ? `${name} ${value}, as the rule set has it` : `${name} ${value} in place of ${ruleSet}`;
}
