import type { Terminal } from "../circuit/circuit.js";
import type { FeedTree } from "../circuit/feed.js";
import type { Plant } from "../circuit/plant.js";
import { cableRise } from "./ac-rise.js";
import { voltagesAtWork } from "./ac-voltage-margin.js";
import { isUnit, unitName, unitsThrough } from "./feeding-units.js";
import { rule } from "./rule.js";
import { eachOf } from "./several.js";

/** A unit with the supply that it feeds into; without a tree where it is wired to none. */
export interface FeedingUnit {
  readonly unit: Terminal;
  readonly tree?: FeedTree;
}

function* subjects({ trees }: Plant): Generator<FeedingUnit> {
  for (const tree of trees) {
    const isSupply = tree.root.item.kind === "supply";
    if (isUnit(tree.root) && tree.order.length > 1) yield { unit: tree.root };
    for (const unit of unitsThrough(tree, tree.root)) yield isSupply ? { unit, tree } : { unit };
  }
}

export const acVoltage = rule<FeedingUnit>({
  id: "ac-voltage",
  section: "A.c. side and the existing board",
  severity: "warning",
  title: "Feeding in raises the voltage only a little on its way to the supply.",
  what: "Adds up the rise of voltage in every run between the supply and the inverter when it feeds in all it can, with conductors as hot as they may become; runs that several units share carry the sum of their currents. Where the voltage of the supply was measured, adds the rise over the supply's own loop: for the supply terminals, against the highest voltage allowed there, and for the inverter's terminals, against the voltage at which it disconnects.",
  why: "Current flows towards the higher voltage only in one direction: to feed in, an inverter must lift its own voltage above the supply's by what the conductors take. Where the supply is high already it reaches its limit and disconnects, on just the days that it was bought for.",
  sources: {
    gb: [
      { title: "aim of UK designers for the generator's circuit, 1 %", basis: "practice" },
      { title: "AS/NZS 4777.1", clause: "2 % between inverter and point of supply", basis: "read" },
      { title: "BS 7671:2018, Appendix 4", clause: "tables of voltage drop", basis: "memory" },
      { title: "ESQCR 2002", clause: "regulation 27, 230 V +10/−6 %", basis: "memory" },
      { title: "EREC G98", clause: "interface protection, first over-voltage stage", basis: "memory" },
    ],
    iec: [
      { title: "UTE C 15-712-1", clause: "between inverter and supply at most 3 %, 1 % recommended", basis: "read" },
      { title: "EN 50160", clause: "230 V ± 10 %", basis: "memory" },
      { title: "EN 50549-1", clause: "over-voltage protection", basis: "memory" },
    ],
  },
  examples: {
    holds: `supply GRID {
    voltage: 230 V  measured-voltage: 241 V  phases: 1  earthing: TN-C-S
    external-loop-impedance: 0.24 ohm  line-neutral-impedance: 0.24 ohm
}
board CU is SplitBoard { way 9: rcbo K9 is Rcbo25A serves INV }
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
    breaks: `supply GRID {
    voltage: 230 V  measured-voltage: 241 V  phases: 1  earthing: TN-C-S
    external-loop-impedance: 0.24 ohm  line-neutral-impedance: 0.24 ohm
}
board CU is SplitBoard { way 9: rcbo K9 is Rcbo25A serves INV }
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 30 m of Twin4
`,
  },
  over: "plant",
  subjects,
  thing: ({ unit }) => unitName(unit),
  judge: ({ unit, tree }, judge) => {
    if (!tree) return judge.notChecked(`${unitName(unit).id} is wired to no supply`);
    return eachOf(
      () => cableRise(unit, tree, judge),
      () => voltagesAtWork(unit, tree, judge),
    );
  },
});
