/** Sorts of figures shown beside the text they belong to. Each can be switched off by itself. */
const hintSorts = ["strings", "runs", "devices", "tests"] as const;
export type HintSort = (typeof hintSorts)[number];
export type HintSettings = Readonly<Record<HintSort, boolean>>;

const allHints: HintSettings = { strings: true, runs: true, devices: true, tests: true };

/** The user's choice as it comes over the wire: `{ "runs": false }`; what is not said stays as it is. */
function readHints(given: unknown, before: HintSettings): HintSettings {
  if (typeof given !== "object" || given === null) return before;
  const chosen: Record<HintSort, boolean> = { ...before };
  for (const sort of hintSorts) {
    const value = (given as Record<string, unknown>)[sort];
    if (typeof value === "boolean") chosen[sort] = value;
  }
  return chosen;
}

/** What the user may choose. */
export interface Settings {
  /** Whether things that could not be checked are marked in the text. */
  readonly notChecked: "hint" | "off";
  readonly hints: HintSettings;
  /** What the findings of a rule are shown as, as the user wrote it; a file beside the design has the last word. */
  readonly severity: unknown;
  /** Folder of the generated pages. */
  readonly docs?: string;
}

export const defaultSettings: Settings = { notChecked: "hint", hints: allHints, severity: undefined };

/** The settings as they come over the wire; what they do not say stays as it is. */
export function readSettings(given: unknown, before: Settings): Settings {
  if (typeof given !== "object" || given === null) return before;
  const { notChecked, hints, severity, docs } = given as Record<string, unknown>;
  return {
    notChecked: notChecked === "hint" || notChecked === "off" ? notChecked : before.notChecked,
    hints: readHints(hints, before.hints),
    severity: severity === undefined ? before.severity : severity,
    docs: typeof docs === "string" && docs !== "" ? docs : before.docs,
  };
}
