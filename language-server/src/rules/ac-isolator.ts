import type { Plant } from "../circuit/plant.js";
import { flagOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { comparisonsOf, withinReach } from "./ac-isolator-device.js";
import { type FeedingUnit, feedingUnits } from "./ac-units.js";
import { type Candidate, candidates, insertFixes } from "./added-device.js";
import { bestOf } from "./best-of.js";
import type { Judge } from "./judge.js";
import { type Fix, type Outcome, rule } from "./rule.js";
import { eachOf } from "./several.js";

export const acIsolator = rule<FeedingUnit>({
  id: "ac-isolator",
  section: "A.c. side and the existing board",
  severity: "error",
  title: "A lockable a.c. isolator between each inverter and its board opens every live conductor.",
  what: "Looks for a device that opens between the grid port of each inverter, or a generating unit, and the board that it lands on; the way of the board itself does not count. One of them must hold in every respect: made for a.c., every live conductor with its neutral in one movement, marked as suitable for isolation, lockable, and rated for the current both ways. A warning says where it cannot be reached from the inverter.",
  why: "Whoever works at the inverter must be able to part it from the supply and to keep it parted, without walking to a board where somebody may switch it on again. The distributor's form asks where this switch is.",
  sources: {
    gb: [
      {
        title: "BS 7671:2018",
        clause: "712.537.2.101, means of isolating the inverter from its a.c. side",
        basis: "read",
      },
      { title: "BS 7671:2018", clause: "537.2, devices for isolation; 551.7.6", basis: "memory" },
      { title: "EREC G98, form B", clause: "place of the lockable isolation", basis: "read" },
    ],
    iec: [
      { title: "IEC 60364-7-712", clause: "712.537, isolation from the a.c. side", basis: "memory" },
      { title: "IEC 60364-5-53", clause: "537.2, devices for isolation", basis: "memory" },
    ],
  },
  examples: {
    holds: `supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S  service-fuse: 80 A }
board CU is SplitBoard {
    isolator MS is MainSwitch100
    way 9: rcbo K9 is Rcbo25A serves INV
}
inverter INV is Brook4
isolator Q1 is Switch63 { within-reach: yes }
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to Q1: 10 m of Twin6
run W3 from Q1 to INV.ac: 0.6 m of Twin6
`,
    breaks: `supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S  service-fuse: 80 A }
board CU is SplitBoard {
    isolator MS is MainSwitch100
    way 9: rcbo K9 is Rcbo25A serves INV
}
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
  },
  over: "plant",
  subjects: (plant: Plant) => feedingUnits(plant),
  thing: ({ thing }) => thing,
  judge: (unit, judge) => {
    if (flagOf(unit.thing, "existing") === true) return judge.notApplicable("it was there before this work");
    if (!unit.toSupply) return judge.notChecked(`no supply is wired to ${unit.item.id}`);
    const { isolators } = unit;
    if (isolators.length === 0) return none(unit, judge);
    const outcomesOf = (device: Item): Outcome[] => eachOf(...comparisonsOf(device, unit, judge));
    const best = bestOf(isolators, outcomesOf);
    if (best.some(({ outcome }) => outcome === "finding")) return best;
    const fit = isolators.filter((device) => outcomesOf(device).every(({ outcome }) => outcome !== "finding"));
    return [...best, ...eachOf(() => withinReach(fit, unit, judge, (asked) => addedIsolators(unit, asked)))];
  },
});

function none(unit: FeedingUnit, judge: Judge): Outcome {
  const { thing, item, circuit, toSupply } = unit;
  const end = circuit ? circuit.board.id : (toSupply?.to.item.id ?? "the supply");
  return judge.finding({
    what: `No isolator lies between ${item.id} and ${end}${circuit ? `: only ${circuit.device.id} in the board itself opens its a.c. side` : ""}.`,
    why: "Whoever works at the inverter cannot part it from the supply where they stand, and keep it so.",
    todo: "Put a lockable a.c. isolator that opens every live conductor in beside the inverter.",
    spot: { thing, word: "name" },
    related: circuit ? [{ spot: { thing: circuit.device, word: "name" }, message: "the way it lands on" }] : [],
    fixes: (asked) => addedIsolators(unit, asked),
  });
}

/** Isolators in scope that would hold in the run that leaves the unit. */
function addedIsolators(unit: FeedingUnit, judge: Judge): Fix[] {
  const by = unit.toSupply?.hops.find((hop) => hop.by.is === "run")?.by;
  if (by?.is !== "run") return [];
  return insertFixes([{ run: by, source: "from" }], unitIsolators(unit, judge));
}

/** Isolators in scope that would part a unit from the supply as it is asked of them. */
export function unitIsolators(unit: FeedingUnit, judge: Judge): Candidate[] {
  return candidates(judge, ["isolator"], (device) => eachOf(...comparisonsOf(device, unit, judge)));
}
