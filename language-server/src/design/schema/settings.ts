/**
 * Choices on which practitioners differ: words in the `limits` block of a site. One row a choice; every rule set has a
 * word of its own for each, with its reason, and the rules read whichever holds.
 */
export interface SettingRow {
  /** Name of the property in the text. */
  readonly name: string;
  readonly words: readonly string[];
  readonly help: string;
}

export const settingRows = {
  rcdSide: {
    name: "rcd-side",
    words: ["own-rcd", "ahead-of-rcds", "shared-noted"],
    help: "Where a generator may join a board: behind an RCD of its own at most, ahead of every RCD, or behind a shared one with a warning.",
  },
  singlePoleRcbo: {
    name: "single-pole-rcbo",
    words: ["finding", "allowed"],
    help: "Whether an RCBO that leaves the neutral of a generator's circuit connected is a finding.",
  },
  frameBonding: {
    name: "frame-bonding",
    words: ["record-decision", "required", "not-allowed"],
    help: "Whether the array's frame is bonded: as decided and recorded, always, or never.",
  },
  dcIsolator: {
    name: "dc-isolator",
    words: ["built-in-accepted", "external"],
    help: "Whether a d.c. switch built into the inverter is enough, or one outside it is wanted as well.",
  },
  lowestTemperatureBasis: {
    name: "lowest-temperature-basis",
    words: ["record-low", "statistical-minimum"],
    help: "What the site's lowest temperature has to be: the lowest ever recorded, or at least a yearly minimum of statistics.",
  },
} as const satisfies Record<string, SettingRow>;

export type SettingKey = keyof typeof settingRows;

/** The row of a property of the `limits` block. */
export function settingKey(name: string): SettingKey | undefined {
  return keyByName.get(name);
}

const keyByName: ReadonlyMap<string, SettingKey> = new Map(
  (Object.entries(settingRows) as [SettingKey, SettingRow][]).map(([key, { name }]) => [name, key]),
);
