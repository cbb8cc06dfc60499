import { count, flag, range, text, words } from "./row.js";

/** Rows that many kinds share. */
export const location = text("location", "Where it is fixed, in the words used on site.", { typical: '"plant wall"' });
export const place = words(
  "place",
  ["indoors", "outdoors", "loft", "escape-route", "sleeping-room", "outbuilding"],
  "What sort of place that is; some rules exclude some places.",
);
export const note = text("note", "Anything a reader should know. Printed, never computed with.");
export const maker = text("reference", "Sheet and revision the figures were taken from.", {
  typical: '"sheet 3, revision B"',
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
