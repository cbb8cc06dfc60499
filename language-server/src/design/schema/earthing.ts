import { labels, location, note, terminalCapacity } from "./common.js";
import { flag, type KindRow, mention, quantity, text, unread, words } from "./row.js";

/** What joins the installation to earth, and neutral to it. */
export const earthingKinds: readonly KindRow[] = [
  {
    kind: "electrode",
    title: "earth electrode",
    help: "The installation's own connection to the mass of earth.",
    declaredAs: "both",
    terminals: ["in"],
    properties: [
      words("electrode-type", ["rod", "plate", "tape", "foundation", "other"], "What it is made of.", {
        typical: "rod",
        checked: "not-yet",
      }),
      quantity("resistance", "resistance", "Resistance to earth.", {
        symbol: "RA",
        typical: "20 ohm",
        essential: true,
      }),
      quantity("conductor", "area", "Earthing conductor to it.", { symbol: "S", typical: "16 mm2", essential: true }),
      words("used-in", ["grid", "island", "both"], "In which mode the installation relies on it.", {
        typical: "island",
        assumed: { text: "both", reason: "an electrode that is connected is connected in every mode" },
      }),
      flag("test-point", "Can be disconnected and measured by itself.", { typical: "yes" }),
      labels,
      location,
      note,
    ],
  },
  {
    kind: "link",
    title: "neutral–earth link",
    help: "A joint of neutral and earth inside the installation: `link K1 { closed-in: island  at: INV.backup }`. The supplier's own link needs no line.",
    declaredAs: "item",
    terminals: [],
    properties: [
      words("closed-in", ["grid", "island", "both"], "In which mode it is closed.", {
        typical: "island",
        essential: true,
      }),
      mention("at", ["board", "inverter", "backup", "changeover", "terminal-block"], "Where it joins the neutral.", {
        typical: "INV.backup",
        essential: true,
      }),
      mention("electrode", ["electrode"], "The electrode that its earth relies on.", {
        typical: "E2",
        checked: "not-yet",
      }),
      flag("interlocked", "Cannot be closed while the grid is connected, whatever fails.", { typical: "yes" }),
      quantity("conductor", "area", "Conductor of the link.", {
        symbol: "S",
        typical: "10 mm2",
        checked: "not-yet",
      }),
      location,
      note,
    ],
  },
  {
    kind: "earthing",
    title: "earthing",
    help: "Earthing and bonding conductors of the installation.",
    declaredAs: "block",
    terminals: ["in"],
    properties: [
      words(
        "electrode",
        ["none", "rod", "plate", "tape", "other"],
        "The installation's own earth electrode, as found.",
      ),
      quantity("main-conductor", "area", "Main earthing conductor.", {
        symbol: "S",
        typical: "16 mm2",
        essential: true,
      }),
      quantity("main-bonding", "area", "Main protective bonding conductors.", {
        symbol: "S",
        typical: "10 mm2",
        essential: true,
      }),
      quantity("supply-neutral", "area", "Neutral of the supply, which sizes bonding on TN-C-S.", {
        symbol: "SN",
        typical: "25 mm2",
      }),
      words("frame-bonding", ["bonded", "not-bonded"], "What was decided for the array's frame.", {
        typical: "not-bonded",
        essential: true,
      }),
      text("frame-bonding-reason", "Why the frame is bonded, or is not.", {
        typical: '"class II array, out of reach, no lightning protection"',
      }),
      quantity("frame-conductor", "area", "Bonding conductor of the frame.", { symbol: "S", typical: "6 mm2" }),
      flag("frame-within-reach", "Somebody standing on the ground can touch the frame.", { typical: "no" }),
      flag("array-double-insulated", "Modules, cables and connectors are class II throughout.", { typical: "yes" }),
      ...terminalCapacity.map(unread),
      labels,
      note,
    ],
  },
];
