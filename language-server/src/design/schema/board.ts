import {
  cableEntry,
  earthConductor,
  enclosureRating,
  existing,
  labels,
  location,
  maker,
  note,
  phase,
  phases,
  place,
  terminalCapacity,
} from "./common.js";
import { count, flag, type KindRow, mention, quantity, unread, words } from "./row.js";

/** Boards, what they serve, and what watches the conductors without being wired into them. */
export const boardKinds: readonly KindRow[] = [
  {
    kind: "board",
    title: "distribution board",
    help: "A board with its bar. What is nested in it sits on the bar; nesting is feeding. An isolator without a way is its main switch, between `CU` and the bar.",
    declaredAs: "both",
    terminals: ["in", "bar", "earth"],
    properties: [
      quantity("rated-current", "current", "Rated current of the assembly (its bar).", {
        symbol: "InA",
        typical: "100 A",
        essential: true,
      }),
      count("ways", "Number of ways.", { typical: "12", essential: true }),
      phases,
      words("enclosure", ["metal", "insulating"], "What its enclosure is made of.", {
        typical: "metal",
        checked: "not-yet",
      }),
      flag("devices-of-board-maker", "Every device in it is one that the board's maker names for it.", {
        typical: "yes",
        onSite: true,
      }),
      flag("spare-ways-usable", "Its spare ways can take a further device of the board's maker.", {
        typical: "yes",
        onSite: true,
      }),
      existing,
      unread(earthConductor),
      ...terminalCapacity,
      location,
      place,
      enclosureRating,
      cableEntry,
      labels,
      maker,
      note,
    ],
  },
  {
    kind: "load",
    title: "load",
    help: "Something that takes power: `load OVEN { power: 7 kW }`, named by the way that `serves` it, or wired with a run.",
    declaredAs: "both",
    terminals: ["in"],
    properties: [
      quantity("power", "power", "Rated power.", { symbol: "P", typical: "2 kW", essential: true }),
      quantity("current", "current", "Rated current, where the sheet gives it instead.", {
        symbol: "I",
        typical: "9 A",
      }),
      quantity("demand", "ratio", "Share of it that is expected at the same time as the others.", {
        symbol: "kd",
        typical: "40 %",
      }),
      quantity("standing-leakage", "current", "Protective conductor current in normal use.", {
        symbol: "IPE",
        typical: "1 mA",
      }),
      phases,
      unread(phase),
      existing,
      location,
      place,
      note,
    ],
  },
  {
    kind: "ct",
    title: "current transformer",
    help: "A current transformer (CT) around a run: `ct CT1 { around: W12  arrow: towards-load  read-by: INV }`.",
    declaredAs: "both",
    terminals: [],
    properties: [
      mention("around", ["run"], "The run whose line conductor it is clipped on.", { typical: "W12", essential: true }),
      words("arrow", ["towards-load", "towards-supply"], "Which way the arrow on it points.", {
        typical: "towards-load",
        essential: true,
      }),
      words("wanted-arrow", ["towards-load", "towards-supply"], "Which way its reader's instructions want it.", {
        typical: "towards-load",
        essential: true,
      }),
      words("measures", ["supply", "generation", "load"], "What it is there to see.", {
        typical: "supply",
        assumed: { text: "supply", reason: "it is by the current of the whole supply that an inverter steers" },
      }),
      mention("read-by", ["inverter", "meter", "board"], "What reads it.", { typical: "INV" }),
      quantity("rated-current", "current", "Rated primary current.", { symbol: "Ipr", typical: "100 A" }),
      unread(phase),
      unread(existing),
      location,
      note,
    ],
  },
];
