import { location, maker, note, place, poles, terminalCapacity } from "./common.js";
import { count, flag, type KindRow, quantity, range, words } from "./row.js";

const ratedCurrent = quantity("rated-current", "current", "Rated current.", {
  symbol: "In",
  typical: "20 A",
  essential: true,
});
const curve = words("curve", ["B", "C", "D"], "Tripping curve.", { typical: "B", essential: true });
const breakingCapacity = quantity("breaking-capacity", "current", "Rated breaking capacity.", {
  symbol: "Icn",
  typical: "6 kA",
});
const residualCurrent = quantity("residual-current", "current", "Rated residual operating current.", {
  symbol: "IΔn",
  typical: "30 mA",
  essential: true,
});
const rcdType = words("type", ["AC", "A", "F", "B"], "What wave shapes of residual current it detects.", {
  essential: true,
});
const oneWay = words(
  "power-flow",
  ["one-way", "both-ways"],
  "Whether its maker declares it for power from either side.",
  { typical: "both-ways" },
);
const onBoard = ["board", "rcd", "section"] as const;

/** From the inverter to the supply: read and wired so far; the array side is what is checked. */
export const mainsKinds: readonly KindRow[] = [
  {
    kind: "ac",
    title: "grid port",
    help: "The inverter's connection to the installation's a.c. side.",
    within: ["inverter"],
    declaredAs: "block",
    terminals: [""],
    properties: [
      quantity("rated-power", "power", "Rated (registered) a.c. power.", {
        symbol: "Pac",
        typical: "4.2 kW",
        essential: true,
      }),
      quantity("max-current", "current", "Highest continuous a.c. current.", {
        symbol: "Iac",
        typical: "19.1 A",
        essential: true,
      }),
      count("phases", "1 or 3.", { typical: "1", essential: true }),
      note,
    ],
  },
  {
    kind: "backup",
    title: "backup port",
    help: "The inverter's outlet that keeps running without the grid.",
    within: ["inverter"],
    declaredAs: "block",
    terminals: [""],
    properties: [
      quantity("rated-power", "power", "Rated backup power.", { symbol: "Pbu", typical: "5 kW" }),
      quantity("max-current", "current", "Highest continuous current.", { symbol: "Ibu", typical: "21.7 A" }),
      quantity("fault-current", "current", "Current it can feed into a fault in island mode.", {
        symbol: "If",
        typical: "45 A",
      }),
      note,
    ],
  },
  {
    kind: "battery",
    title: "battery port",
    help: "The inverter's battery connection.",
    within: ["inverter"],
    declaredAs: "block",
    terminals: [""],
    properties: [
      range("voltage-range", "voltage", "Voltage it accepts.", {
        symbol: "Ubat",
        typical: "80..480 V",
        essential: true,
      }),
      quantity("max-current", "current", "Highest charge or discharge current.", {
        symbol: "Ibat",
        typical: "30 A",
        essential: true,
      }),
      note,
    ],
  },
  {
    kind: "battery",
    title: "battery",
    help: "A battery with its terminals. They are live whatever is opened.",
    declaredAs: "both",
    terminals: ["out"],
    source: "battery",
    properties: [
      quantity("nominal-voltage", "voltage", "Nominal voltage of one unit.", {
        symbol: "Ubat",
        typical: "51.2 V",
        essential: true,
      }),
      range("voltage-range", "voltage", "Lowest to highest voltage of one unit.", {
        symbol: "Ubat",
        typical: "44.8..57.6 V",
      }),
      quantity("energy", "energy", "Usable energy of one unit.", { symbol: "E", typical: "5.1 kWh", essential: true }),
      quantity("max-current", "current", "Highest continuous current of one unit.", {
        symbol: "Imax",
        typical: "100 A",
        essential: true,
      }),
      quantity("fault-current", "current", "Prospective short-circuit current of one unit.", {
        symbol: "Ik",
        typical: "4 kA",
      }),
      words("joined", ["in-series", "in-parallel"], "How several units are joined.", { typical: "in-series" }),
      location,
      place,
      maker,
      note,
    ],
  },
  {
    kind: "meter",
    title: "meter",
    help: "A meter in the line.",
    declaredAs: "both",
    terminals: ["in", "out"],
    through: "fixed",
    properties: [ratedCurrent, count("phases", "1 or 3.", { typical: "1" }), location, maker, note],
  },
  {
    kind: "board",
    title: "distribution board",
    help: "A board with its bar. What is nested in it sits on the bar; nesting is feeding.",
    declaredAs: "both",
    terminals: ["in"],
    through: "fixed",
    properties: [
      quantity("rated-current", "current", "Rated current of the assembly.", {
        symbol: "InA",
        typical: "100 A",
        essential: true,
      }),
      count("ways", "Number of ways.", { typical: "12" }),
      flag("existing", "Was there before this work.", { typical: "yes" }),
      location,
      place,
      maker,
      note,
    ],
  },
  {
    kind: "rcd",
    title: "residual current device",
    help: "A residual current device (RCD) without overcurrent protection; what is nested in it is fed through it.",
    within: onBoard,
    declaredAs: "both",
    terminals: ["out"],
    through: "opens",
    properties: [ratedCurrent, residualCurrent, rcdType, poles, oneWay, maker, note],
  },
  {
    kind: "breaker",
    title: "circuit-breaker",
    help: "A circuit-breaker on a way of a board.",
    within: onBoard,
    declaredAs: "both",
    terminals: ["out"],
    through: "opens",
    properties: [ratedCurrent, curve, breakingCapacity, poles, oneWay, maker, note],
  },
  {
    kind: "rcbo",
    title: "RCBO",
    help: "A residual current operated circuit-breaker with overcurrent protection (RCBO).",
    within: onBoard,
    declaredAs: "both",
    terminals: ["out"],
    through: "opens",
    properties: [ratedCurrent, curve, breakingCapacity, residualCurrent, rcdType, poles, oneWay, maker, note],
  },
  {
    kind: "load",
    title: "load",
    help: "Something that takes power.",
    declaredAs: "both",
    terminals: ["in"],
    properties: [quantity("power", "power", "Rated power.", { symbol: "P", typical: "2 kW" }), location, note],
  },
  {
    kind: "electrode",
    title: "earth electrode",
    help: "A connection to the mass of earth.",
    declaredAs: "both",
    terminals: ["in"],
    properties: [
      quantity("resistance", "resistance", "Resistance to earth.", { symbol: "RA", typical: "20 ohm" }),
      location,
      note,
    ],
  },
  {
    kind: "earthing",
    title: "earthing",
    help: "Earthing and bonding conductors of the installation.",
    declaredAs: "block",
    terminals: [],
    properties: [
      words("electrode", ["none", "rod", "plate", "tape", "other"], "The installation's own earth electrode."),
      quantity("main-conductor", "area", "Main earthing conductor.", { symbol: "S", typical: "16 mm2" }),
      quantity("main-bonding", "area", "Main protective bonding conductors.", { symbol: "S", typical: "10 mm2" }),
      ...terminalCapacity,
      note,
    ],
  },
];
