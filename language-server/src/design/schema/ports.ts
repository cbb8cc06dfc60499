import { note, phase, phases, terminalCapacity } from "./common.js";
import { flag, type KindRow, quantity, range, unread } from "./row.js";

/** What an inverter is wired by, apart from its trackers: nested in it, and wired as `INV.ac`, `INV.battery`. */
export const portKinds: readonly KindRow[] = [
  {
    kind: "ac",
    title: "grid port",
    help: "The inverter's connection to the installation's a.c. side: `INV.ac`. It stops when the grid is lost.",
    within: ["inverter"],
    declaredAs: "block",
    terminals: [""],
    properties: [
      quantity("rated-power", "power", "Rated (registered) a.c. power.", {
        symbol: "Pac",
        typical: "4.2 kW",
        essential: true,
      }),
      quantity("max-current", "current", "Highest continuous current it delivers, per line conductor.", {
        symbol: "Iac",
        typical: "19.1 A",
        essential: true,
      }),
      { ...phases, essential: true },
      phase,
      quantity(
        "max-import-current",
        "current",
        "Highest current it draws from the grid: charging and what it passes on to its backup port.",
        { symbol: "Iimp", sheet: "maximum a.c. input current", typical: "40 A", essential: true },
      ),
      quantity("over-voltage-trip", "voltage", "Voltage at its terminals at which it disconnects (first stage).", {
        symbol: "U>",
        typical: "262.2 V",
      }),
      quantity("max-upstream-device", "current", "Largest overcurrent device its maker allows before it.", {
        symbol: "In,max",
        typical: "50 A",
      }),
      quantity("impulse-withstand", "voltage", "Impulse voltage the port withstands.", {
        symbol: "Uw",
        typical: "4 kV",
      }),
      flag(
        "disconnects-all-poles",
        "Its own loss-of-mains switch opens the neutral as well as the lines, so that an island is apart from the supply.",
        { typical: "yes" },
      ),
      ...terminalCapacity,
      note,
    ],
  },
  {
    kind: "backup",
    title: "backup port",
    help: "The inverter's outlet that keeps running without the grid: `INV.backup`.",
    within: ["inverter"],
    declaredAs: "block",
    terminals: [""],
    properties: [
      quantity("rated-power", "power", "Power it delivers without the grid.", {
        symbol: "Pbu",
        typical: "5 kW",
        essential: true,
      }),
      quantity("max-current", "current", "Highest continuous current without the grid, per line conductor.", {
        symbol: "Ibu",
        typical: "21.7 A",
        essential: true,
      }),
      quantity("pass-through-current", "current", "Highest current it passes on from the grid port.", {
        symbol: "Ipass",
        sheet: "maximum pass-through (bypass) current",
        typical: "40 A",
        essential: true,
      }),
      quantity("fault-current", "current", "Current it can feed into a fault without the grid.", {
        symbol: "If",
        sheet: "short-circuit or overload current of the backup output",
        typical: "45 A",
        essential: true,
      }),
      quantity("fault-time", "time", "How long it feeds that current.", { symbol: "tf", typical: "100 ms" }),
      quantity("changeover-time", "time", "Gap when it goes from grid to island.", {
        typical: "20 ms",
        checked: "not-yet",
      }),
      phases,
      unread(phase),
      ...terminalCapacity,
      note,
    ],
  },
  {
    kind: "battery",
    title: "battery port",
    help: "The inverter's battery connection: `INV.battery`.",
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
      quantity(
        "max-power",
        "power",
        "Highest power it draws from the battery; without it, the inverter's a.c. power.",
        {
          symbol: "Pbat",
          typical: "5 kW",
        },
      ),
      quantity("efficiency", "ratio", "Efficiency from battery to a.c. at that power.", {
        symbol: "η",
        typical: "95 %",
      }),
      ...terminalCapacity,
      note,
    ],
  },
];
