import type { Severity } from "../design/model.js";
import { nearest } from "../design/suggest.js";
import { rules } from "../rules/index.js";
import type { Check } from "./assessment.js";

/** What somebody wants a rule's findings shown as. `off` hides them at their place; every summary still names them. */
export type ChosenSeverity = Severity | "off";
/** By rule id; a rule that is not named keeps its own. */
export type Severities = ReadonlyMap<string, ChosenSeverity>;

export const noSeverities: Severities = new Map();

/** Name of the file that says so for every design beside and below it. */
export const settingsFile = "sunwright.json";

const words: readonly string[] = ["error", "warning", "note", "off"] satisfies ChosenSeverity[];
const ruleIds = new Set(rules.map(({ id }) => id));

/** Something in the settings that means nothing: a sentence that names what is wrong and what to write. */
export interface SettingsFault {
  readonly message: string;
  /** The word it is about, where it is written. */
  readonly word?: string;
}

export interface ReadSeverities {
  readonly severities: Severities;
  readonly faults: readonly SettingsFault[];
}

/** `{ "string-voltage": "warning" }`; what cannot be understood is a fault, and the rest counts. */
export function readSeverities(given: unknown): ReadSeverities {
  const severities = new Map<string, ChosenSeverity>();
  const faults: SettingsFault[] = [];
  if (given === undefined || given === null) return { severities, faults };
  if (typeof given !== "object" || Array.isArray(given))
    return { severities, faults: [{ message: 'severity is no list of rules. Write { "rule-id": "warning" }.' }] };
  for (const [id, word] of Object.entries(given)) {
    const severity = words.find((known) => known === word) as ChosenSeverity | undefined;
    if (!ruleIds.has(id)) faults.push({ message: unknownRule(id), word: id });
    else if (!severity)
      faults.push({ message: `${id} cannot be ${JSON.stringify(word)}. It is one of ${words.join(", ")}.`, word: id });
    else severities.set(id, severity);
  }
  return { severities, faults };
}

function unknownRule(id: string): string {
  const near = nearest(id, ruleIds);
  return `There is no rule ${id}.${near ? ` Did you mean ${near}?` : " The command rules lists them."}`;
}

/** The text of a settings file. A name that it does not know is a fault: a setting that does nothing helps nobody. */
export function readSettingsText(text: string): ReadSeverities {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { severities: noSeverities, faults: [{ message: `This is no JSON: ${why}.` }] };
  }
  if (typeof parsed !== "object" || parsed === null || Array.isArray(parsed))
    return { severities: noSeverities, faults: [{ message: 'Write an object: { "severity": { … } }.' }] };
  const { severities, faults } = readSeverities((parsed as Record<string, unknown>).severity);
  const others = Object.keys(parsed)
    .filter((name) => name !== "severity" && name !== "$schema")
    .map((name): SettingsFault => ({ message: `There is no setting ${name}. There is severity.`, word: name }));
  return { severities, faults: [...faults, ...others] };
}

/** What a finding is shown as; undefined for a check that is none. */
export function shownSeverity({ rule, outcome }: Check, severities: Severities): ChosenSeverity | undefined {
  if (outcome.outcome !== "finding") return undefined;
  return severities.get(rule.id) ?? outcome.severity ?? rule.severity;
}

/** The findings that are switched off, which every summary names. */
export function switchedOff(checks: readonly Check[], severities: Severities): Check[] {
  if (severities.size === 0) return [];
  return checks.filter((check) => shownSeverity(check, severities) === "off");
}
