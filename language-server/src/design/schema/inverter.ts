import {
  cableEntry,
  earthConductor,
  enclosureRating,
  existing,
  labels,
  location,
  maker,
  note,
  place,
  terminalCapacity,
} from "./common.js";
import { count, flag, type KindRow, list, quantity, range, text, unread, words } from "./row.js";

/** The inverter and its tracker inputs; its other ports are in ports.ts. */
export const inverterKinds: readonly KindRow[] = [
  {
    kind: "inverter",
    title: "inverter",
    help: "Power conversion equipment. Its trackers, grid, battery and backup ports are nested blocks and are wired as `INV.pv1`, `INV.ac`, `INV.battery`.",
    declaredAs: "both",
    terminals: [],
    properties: [
      quantity("max-dc-voltage", "voltage", "Highest voltage its array input stands, ever.", {
        symbol: "Udc,max",
        sheet: "maximum input voltage",
        typical: "600 V",
        essential: true,
      }),
      quantity("max-dc-power", "power", "Largest array it may be connected to.", {
        symbol: "Pdc,max",
        sheet: "maximum PV power",
        typical: "8 kW",
      }),
      flag("galvanic-separation", "At least simple separation between its d.c. and a.c. sides.", {
        typical: "no",
        essential: true,
      }),
      flag(
        "dc-residual-current-declared",
        "Its maker declares that it cannot feed d.c. residual current that calls for a type B RCD.",
        { typical: "yes" },
      ),
      quantity("impulse-withstand", "voltage", "Impulse voltage its d.c. input withstands.", {
        symbol: "Uw",
        typical: "4 kV",
      }),
      flag("built-in-surge-protection", "Has SPDs of its own at the d.c. input.", { typical: "no" }),
      flag("built-in-dc-isolator", "Has a d.c. switch-disconnector of its own.", { typical: "yes" }),
      text("connector", "Make and type of its d.c. input connectors."),
      quantity("standing-leakage", "current", "Protective conductor current in normal use.", {
        symbol: "IPE",
        sheet: "leakage or residual current in operation",
        typical: "5 mA",
      }),
      quantity("discharge-wait", "time", "How long to wait after opening everything before its capacitors are safe.", {
        sheet: "discharge time, on the warning label",
        typical: "5 min",
      }),
      list(
        "shutdown-order",
        { is: "words", words: ["ac", "backup", "dc", "battery"] },
        "The order in which its maker's sheet wants its sides opened. Never assumed.",
        { typical: "[ac, backup, dc, battery]", checked: "never" },
      ),
      words("protection-class", ["class-1", "class-2"], "Protective class of the enclosure.", { typical: "class-1" }),
      earthConductor,
      text("type-test-reference", "Reference of its type test for the grid connection, as the distributor asks.", {
        checked: "never",
      }),
      existing,
      // Its terminals are those of its ports, which say themselves what they are made for.
      ...terminalCapacity.map(unread),
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
    kind: "tracker",
    title: "MPP tracker input",
    help: "One independent maximum power point (MPP) tracker of an inverter.",
    within: ["inverter"],
    declaredAs: "item",
    terminals: [""],
    properties: [
      range("voltage-range", "voltage", "Voltage window in which it tracks.", {
        symbol: "Umpp",
        sheet: "MPPT voltage range",
        typical: "80..550 V",
        essential: true,
      }),
      quantity("start-voltage", "voltage", "Voltage it needs to start.", { symbol: "Ustart", typical: "120 V" }),
      quantity("max-current", "current", "Highest operating current; above it the inverter clips.", {
        symbol: "Imax",
        sheet: "maximum input current",
        typical: "16 A",
        essential: true,
      }),
      quantity(
        "max-short-circuit-current",
        "current",
        "Highest short-circuit current of the array on it; above it the input may be damaged.",
        { symbol: "Isc,max", sheet: "maximum short-circuit current", typical: "20 A", essential: true },
      ),
      count("inputs", "Number of string inputs (connector pairs).", { typical: "1", essential: true }),
      words("connection", ["plugs", "terminals"], "How conductors land on it: plug-and-socket connectors, or clamps.", {
        typical: "plugs",
      }),
      note,
    ],
  },
];
