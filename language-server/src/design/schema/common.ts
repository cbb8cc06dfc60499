import { count, flag, list, quantity, range, text, words } from "./row.js";

/** Rows that many kinds share. */
export const location = text("location", "Where it is fixed, in the words used on site.", {
  typical: '"plant wall"',
  onSite: true,
  checked: "never",
});
export const placeWords = [
  "indoors",
  "outdoors",
  "loft",
  "garage",
  "outbuilding",
  "cellar",
  "escape-route",
  "sleeping-room",
] as const;
export const place = words("place", placeWords, "What sort of place that is.", { onSite: true, checked: "not-yet" });
export const note = text("note", "Anything a reader should know.", { onSite: true, checked: "never" });
export const maker = text("reference", "Sheet and revision the figures were taken from.", {
  typical: '"sheet 3, revision B"',
  checked: "never",
});
const conductorsPerTerminal = count(
  "conductors-per-terminal",
  "How many conductors one terminal is made for. Without it the terminal check is not made.",
  { typical: "1", sheet: "terminal capacity" },
);
/** What a terminal is made for, as a connection sheet says it. */
export const terminalCapacity = [
  conductorsPerTerminal,
  range("terminal-area", "area", "Cross-sections that one terminal is made for.", {
    symbol: "S",
    typical: "2.5..16 mm2",
    sheet: "connection capacity",
  }),
  flag("mixed-sizes", "Its maker allows conductors of different cross-section in one terminal.", { typical: "no" }),
] as const;
export const poles = count("poles", "Number of poles that open together.", { symbol: "poles", typical: "2" });
export const switchedNeutral = flag(
  "switched-neutral",
  "The neutral opens as well, where it is not counted among the poles (a device sold as 1P+N).",
  { typical: "yes" },
);
export const opensTogether = flag("opens-all-poles-together", "All live conductors open in one movement.", {
  typical: "yes",
});
export const lockable = flag("lockable", "Can be locked open.", { typical: "yes" });
export const withinReach = flag("within-reach", "Can be reached from the equipment it isolates, without tools.", {
  typical: "yes",
  onSite: true,
});
export const suitableForIsolation = flag(
  "suitable-for-isolation",
  "Marked as suitable for isolation; one that is not opens nothing that a person may rely on.",
  { typical: "yes", sheet: "isolating function" },
);
export const existing = flag("existing", "Was there before this work; described as found.", {
  typical: "yes",
  onSite: true,
});
export const powerFlow = words(
  "power-flow",
  ["one-way", "both-ways"],
  "Whether its maker declares it for power from either side.",
  { typical: "both-ways", sheet: "line and load marks, or arrows, mean one-way" },
);
export const supplyTerminal = words(
  "supply-terminal",
  ["in", "out"],
  "For a device that wants its supply on one side: the terminal its maker marks for it. On a board, in is the bar.",
  { typical: "in" },
);
export const phases = count("phases", "Number of line conductors: 1 or 3.", { typical: "1" });
export const phase = words("phase", ["L1", "L2", "L3"], "Which line conductor of a three-phase supply it is on.", {
  typical: "L1",
  onSite: true,
});
export const earthConductor = quantity(
  "earth-conductor",
  "area",
  "Cross-section of its protective conductor; 0 mm2 where it has none.",
  {
    symbol: "S",
    typical: "6 mm2",
    onSite: true,
  },
);
export const enclosureRating = text("enclosure-rating", "Ingress protection of its enclosure.", {
  symbol: "IP",
  typical: '"IP65"',
  checked: "not-yet",
});
export const cableEntry = words("cable-entry", ["bottom", "side", "top"], "The face through which cables enter.", {
  typical: "bottom",
  checked: "not-yet",
});
/** Labels that a rule set has a text for. */
export const labelWords = [
  "multiple-supplies",
  "live-in-daylight",
  "dc-isolator",
  "ac-isolator",
  "isolate-both-sides",
  "dc-cable",
  "dc-connector",
  "battery",
  "backup-supply",
  "electrode",
  "bonding",
  "rcd-test",
  "surge-protection",
  "solar-and-battery-sign",
  "circuit-diagram",
  "shutdown-procedure",
] as const;
export type LabelWord = (typeof labelWords)[number];
export const labels = list(
  "labels",
  { is: "words", words: labelWords },
  "Labels on it: planned, and fitted once the site is as built. The label schedule says which are needed.",
  { typical: "[multiple-supplies]", onSite: true },
);
