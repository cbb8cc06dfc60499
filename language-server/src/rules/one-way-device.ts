import type { Plant } from "../circuit/plant.js";
import { wordOf } from "../design/facts.js";
import { propertyRow } from "../design/schema/index.js";
import type { Item } from "../design/things.js";
import { devicesBetween } from "./between-sources.js";
import { deviceFixes } from "./device-parts.js";
import { unitNames } from "./feeding-units.js";
import { rule } from "./rule.js";

/** A device with what can feed it from its one side and from its other. */
interface Subject {
  readonly device: Item;
  readonly oneSide: string;
  readonly otherSide: string;
}

function* subjects(plant: Plant): Generator<Subject> {
  for (const { device, tree, units } of devicesBetween(plant, isMarked)) {
    const root = tree.root.item;
    yield {
      device,
      oneSide: root.kind === "backup" ? (root.parent?.id ?? root.id) : root.id,
      otherSide: unitNames(units),
    };
  }
  for (const { battery, port, path } of plant.batteries) {
    const devices = new Set(path?.hops.flatMap(({ by }) => (by.is === "item" && isMarked(by) ? [by] : [])));
    for (const device of devices) yield { device, oneSide: battery.id, otherSide: port?.parent?.id ?? "the inverter" };
  }
}

/** Kinds whose makers mark a line and a load side, where power may pass one way only. */
function isMarked({ row }: Item): boolean {
  return row !== undefined && propertyRow(row, "power-flow") !== undefined;
}

/** What a device does when it is needed. */
const protects = new Set(["rcd", "rcbo", "breaker"]);

export const oneWayDevice = rule<Subject>({
  id: "one-way-device",
  section: "A.c. side and the existing board",
  severity: "error",
  title: "A device that a source can feed from either side is declared for it.",
  what: "Finds the devices that lie between two sources: between the supply and an inverter or generating unit, and between a battery and its inverter. Each of them has to be declared by its maker for power from either side. Marks such as in and out, line and load, or arrows mean that it is not. What is not stated is not checked.",
  why: "When a one-way device opens with its load side still live, its own electronics or its arc chamber are fed from the wrong end. It may be damaged unseen and not open the next time.",
  sources: {
    gb: [
      { title: "BS 7671:2018+A3:2024", clause: "530.3.201, direction of power flow", basis: "memory" },
      { title: "marks of makers: in and out, line and load, arrows", basis: "practice" },
    ],
    iec: [{ title: "marks of makers: in and out, line and load, arrows", basis: "practice" }],
  },
  examples: {
    holds: `supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S }
board CU is SplitBoard { way 9: rcbo K9 is Rcbo25A serves INV }
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
    breaks: `part Rcbo25OneWay is rcbo {
    rated-current: 25 A  curve: B  breaking-capacity: 6 kA  residual-current: 30 mA  type: A  poles: 2
    power-flow: one-way  supply-terminal: in
}
supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S }
board CU is SplitBoard { way 9: rcbo K9 is Rcbo25OneWay serves INV }
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
  },
  over: "plant",
  subjects,
  thing: ({ device }) => device,
  judge: ({ device, oneSide, otherSide }, judge) => {
    if (judge.needWord(device, "power-flow") === "both-ways") return judge.holds("declared for power from either side");
    const isProtection = protects.has(device.kind);
    return judge.finding({
      severity: isProtection ? "error" : "warning",
      what: `${device.id} is made for power from one side; ${oneSide} feeds it from one and ${otherSide} from the other.`,
      why: isProtection
        ? "Opening with both sides live may damage it unseen, and then it does not open in a fault."
        : "Opening with both sides live may damage it.",
      todo: "Use a device that its maker declares for power from either side, and keep that declaration with the papers.",
      spot: { thing: device, word: "part" },
      related: [{ spot: { thing: device, property: "power-flow" }, message: `${device.id}, power-flow: one-way` }],
      fixes: (asked) =>
        deviceFixes(asked, {
          device,
          changes: ["power-flow", "supply-terminal"],
          preview: (part) => (wordOf(part, "power-flow") === "both-ways" ? "declared for either side" : undefined),
        }),
    });
  },
});
