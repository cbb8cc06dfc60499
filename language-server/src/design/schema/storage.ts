import {
  earthConductor,
  enclosureRating,
  existing,
  labels,
  location,
  maker,
  note,
  place,
  placeWords,
  terminalCapacity,
} from "./common.js";
import { count, flag, type KindRow, quantity, range, unread, words } from "./row.js";

/** Sources other than the array and the supply. */
export const storageKinds: readonly KindRow[] = [
  {
    kind: "battery",
    title: "battery",
    help: "A battery with its terminals. They are live whatever is opened. An isolator, breaker or fuse built into it is nested in it.",
    declaredAs: "both",
    terminals: ["out"],
    source: "battery",
    properties: [
      quantity("nominal-voltage", "voltage", "Nominal voltage of one unit.", {
        symbol: "Ubat",
        typical: "51.2 V",
        essential: true,
        checked: "not-yet",
      }),
      range("voltage-range", "voltage", "Lowest to highest voltage of one unit.", {
        symbol: "Ubat",
        typical: "44.8..57.6 V",
        essential: true,
      }),
      quantity("energy", "energy", "Usable energy of one unit.", {
        symbol: "E",
        typical: "5.1 kWh",
        essential: true,
        checked: "not-yet",
      }),
      quantity("max-current", "current", "Highest continuous current of one unit.", {
        symbol: "Imax",
        typical: "100 A",
        essential: true,
      }),
      quantity("fault-current", "current", "Prospective short-circuit current of one unit.", {
        symbol: "Ik",
        sheet: "short-circuit current",
        typical: "4 kA",
        essential: true,
      }),
      words("joined", ["in-series", "in-parallel"], "How several units are joined.", { typical: "in-series" }),
      count("max-units-in-parallel", "How many units its maker allows in parallel.", { typical: "4" }),
      flag("built-in-isolator", "Has a switch of its own that opens both poles.", { typical: "yes" }),
      quantity("built-in-fuse", "current", "Rating of its own overcurrent protection.", {
        symbol: "In",
        typical: "125 A",
      }),
      quantity("built-in-breaking-capacity", "current", "Breaking capacity of its own overcurrent protection.", {
        symbol: "Icn",
        typical: "20 kA",
      }),
      words("chemistry", ["lithium-iron-phosphate", "lithium-nickel", "lead-acid", "sodium-ion"], "Cell chemistry.", {
        typical: "lithium-iron-phosphate",
        checked: "not-yet",
      }),
      flag("fire-detection", "A fire or heat alarm is fitted where it stands.", {
        typical: "yes",
        onSite: true,
      }),
      earthConductor,
      ...terminalCapacity,
      unread(existing),
      location,
      words("place", placeWords, "What sort of place it stands in; some rules exclude some places.", { onSite: true }),
      enclosureRating,
      labels,
      maker,
      note,
    ],
  },
  {
    kind: "generator",
    title: "generating unit",
    help: "A generating unit of which only its a.c. connection is described: what was there already, or what is not solar.",
    declaredAs: "both",
    terminals: ["out"],
    source: "generator",
    properties: [
      quantity("rated-power", "power", "Rated (registered) a.c. power.", {
        symbol: "Pac",
        typical: "3.68 kW",
        essential: true,
      }),
      quantity("max-current", "current", "Highest continuous a.c. current, per line conductor.", {
        symbol: "Iac",
        typical: "16 A",
        essential: true,
      }),
      count("phases", "1 or 3.", { typical: "1", essential: true }),
      words("phase", ["L1", "L2", "L3"], "Which line conductor of a three-phase supply it is on.", {
        typical: "L1",
        onSite: true,
      }),
      words("energy-source", ["sun", "wind", "water", "fuel", "storage"], "What drives it.", { typical: "sun" }),
      flag("runs-without-grid", "Goes on when the grid is lost.", {
        assumed: { text: "no", reason: "a unit notified for running beside the grid stops without it" },
      }),
      flag("dc-residual-current-declared", "Its maker declares that it cannot feed d.c. residual current.", {
        typical: "yes",
      }),
      quantity("standing-leakage", "current", "Protective conductor current in normal use.", {
        symbol: "IPE",
        typical: "3 mA",
      }),
      existing,
      location,
      place,
      labels,
      maker,
      note,
    ],
  },
];
