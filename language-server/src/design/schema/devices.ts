import {
  existing,
  labels,
  location,
  lockable,
  maker,
  note,
  opensTogether,
  phase,
  phases,
  place,
  poles,
  powerFlow,
  suitableForIsolation,
  supplyTerminal,
  switchedNeutral,
  terminalCapacity,
  withinReach,
} from "./common.js";
import { count, flag, type KindRow, type PropertyRow, quantity, unread, words } from "./row.js";

export const ratedCurrent = quantity("rated-current", "current", "Rated current.", {
  symbol: "In",
  typical: "20 A",
  essential: true,
});
const ratedVoltage = quantity(
  "rated-voltage",
  "voltage",
  "Rated operational voltage; for d.c. at its number of poles.",
  {
    symbol: "Ue",
    typical: "230 V",
  },
);
const supply = words("supply", ["ac", "dc"], "Whether its rating is for a.c. or d.c.", {
  typical: "ac",
  assumed: { text: "ac", reason: "breakers on a board are a.c. devices unless their sheet says otherwise" },
});
const curve = words("curve", ["B", "C", "D"], "Tripping curve.", { typical: "B", essential: true });
const breakingCapacity = quantity("breaking-capacity", "current", "Rated breaking capacity.", {
  symbol: "Icn",
  typical: "6 kA",
  essential: true,
});
const maxLoop = quantity("max-loop-impedance", "resistance", "Largest Zs its sheet allows, where no table has it.", {
  symbol: "Zs,max",
  typical: "1.37 ohm",
});
const residualCurrent = quantity("residual-current", "current", "Rated residual operating current.", {
  symbol: "IΔn",
  typical: "30 mA",
  essential: true,
});
const rcdType = words("type", ["AC", "A", "F", "B"], "What wave shapes of residual current it detects.", {
  essential: true,
});
const timeDelayed = flag("time-delayed", "Selective (type S) or otherwise delayed.", { typical: "no" });

/** What every switching and protective device on a board may say of itself. */
const common: readonly PropertyRow[] = [
  { ...poles, essential: true },
  switchedNeutral,
  opensTogether,
  suitableForIsolation,
  lockable,
  withinReach,
  powerFlow,
  unread(supplyTerminal),
  phase,
  phases,
  ...terminalCapacity,
  existing,
  location,
  place,
  labels,
  maker,
  note,
];

/** Protective devices: on a way of a board, or in an enclosure of their own between two runs. */
export const deviceKinds: readonly KindRow[] = [
  {
    kind: "rcd",
    title: "residual current device",
    help: "A residual current device (RCD) without overcurrent protection; what is nested in it is fed through it.",
    declaredAs: "both",
    terminals: ["in", "out"],
    through: "opens",
    properties: [unread(ratedCurrent), residualCurrent, rcdType, timeDelayed, unread(ratedVoltage), ...common],
  },
  {
    kind: "breaker",
    title: "circuit-breaker",
    help: "A circuit-breaker: on a way of a board (`way 8: breaker K8 is B20 serves F3`), or by itself in a run.",
    declaredAs: "both",
    terminals: ["in", "out"],
    through: "opens",
    properties: [ratedCurrent, curve, breakingCapacity, maxLoop, supply, ratedVoltage, ...common],
  },
  {
    kind: "rcbo",
    title: "RCBO",
    help: "A residual current operated circuit-breaker with overcurrent protection (RCBO).",
    declaredAs: "both",
    terminals: ["in", "out"],
    through: "opens",
    properties: [
      ratedCurrent,
      curve,
      breakingCapacity,
      residualCurrent,
      rcdType,
      timeDelayed,
      maxLoop,
      unread(ratedVoltage),
      ...common,
    ],
  },
  {
    kind: "changeover",
    title: "changeover switch",
    help: "Feeds `out` from `grid` or from `backup`, never from both. Wire it as `CHG.grid`, `CHG.backup`, `CHG.out`.",
    declaredAs: "both",
    terminals: ["grid", "backup", "out"],
    through: "opens",
    properties: [
      ratedCurrent,
      words("operation", ["manual", "automatic"], "Thrown by hand, or by itself when the grid is lost.", {
        typical: "manual",
        essential: true,
        checked: "not-yet",
      }),
      flag("off-position", "Has a position in which nothing is joined, so that it isolates.", {
        typical: "yes",
        essential: true,
      }),
      unread(ratedVoltage),
      quantity("conditional-short-circuit-current", "current", "Fault current it stands behind its fuse.", {
        symbol: "Iq",
        typical: "10 kA",
        checked: "not-yet",
      }),
      ...common.map((row) => (row === existing ? unread(row) : row)),
    ],
  },
  {
    kind: "meter",
    title: "meter",
    help: "A meter in the line.",
    declaredAs: "both",
    terminals: ["in", "out"],
    through: "fixed",
    properties: [
      ratedCurrent,
      words("measures", ["import", "export", "import-and-export", "generation"], "What it is there to count.", {
        typical: "generation",
      }),
      count("phases", "1 or 3.", { typical: "1", checked: "not-yet" }),
      phase,
      ...terminalCapacity,
      existing,
      location,
      place,
      labels,
      maker,
      note,
    ],
  },
  {
    kind: "terminal-block",
    title: "terminal block",
    help: "Joins conductors, such as tails that feed two boards.",
    declaredAs: "both",
    terminals: ["in", "out"],
    through: "fixed",
    properties: [unread(ratedCurrent), ...terminalCapacity, unread(existing), location, place, maker, note],
  },
];
