import type { Plant } from "../circuit/plant.js";
import { type GridCircuit, gridCircuits, gridDisconnection } from "./disconnection-grid.js";
import { type IslandCircuit, islandCircuits, islandDisconnection } from "./disconnection-island.js";
import { rule } from "./rule.js";

/** A protective device with what it has to disconnect: fed by the supply, or by a backup port without it. */
type Subject = { readonly grid: GridCircuit } | { readonly island: IslandCircuit };

function* subjects(plant: Plant): Generator<Subject> {
  for (const grid of gridCircuits(plant)) yield { grid };
  for (const island of islandCircuits(plant)) yield { island };
}

export const disconnection = rule<Subject>({
  id: "disconnection",
  section: "A.c. side and the existing board",
  severity: "error",
  title: "A fault to earth is disconnected in time, with the grid and without it.",
  what: "Adds up the earth fault loop impedance Zs from the supply over every run, with conductors as hot as they may become, to the far end of each circuit whose cables are drawn. Holds it against what the device needs to operate within the time that the rule set asks for; where that does not hold, or no overcurrent device could do it, against what an RCD on the way needs. In an island the inverter alone feeds the fault: its fault current is held against the same devices.",
  why: "Until the fault is disconnected everything earthed is live. An inverter gives hardly more than its working current, so that in an island a breaker that trips at once on the grid may never trip.",
  sources: {
    gb: [
      { title: "BS 7671:2018", clause: "411.3.2 and Table 41.1, disconnection times", basis: "read" },
      { title: "BS 7671:2018", clause: "411.4.4, Zs ≤ U0 · Cmin / Ia; Tables 41.2 to 41.4", basis: "read" },
      { title: "BS 7671:2018", clause: "411.5.3, RA · IΔn ≤ 50 V", basis: "read" },
      { title: "BS 7671:2018", clause: "551.4, disconnection by generating sets", basis: "memory" },
    ],
    iec: [
      { title: "IEC 60364-4-41", clause: "411.3.2, Table 41.1; 411.4.4; 411.5.3", basis: "memory" },
      { title: "IEC 60364-5-55", clause: "551.4, protection by disconnection", basis: "memory" },
    ],
  },
  examples: {
    holds: `supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S  external-loop-impedance: 0.24 ohm }
board CU is SplitBoard { way 9: breaker K9 is Breaker25B serves INV }
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
    breaks: `part Breaker32D is breaker { rated-current: 32 A  curve: D  breaking-capacity: 6 kA  poles: 2 }
supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S  external-loop-impedance: 0.24 ohm }
board CU is SplitBoard { way 9: breaker K9 is Breaker32D serves INV }
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 30 m of Twin4
`,
  },
  over: "plant",
  subjects,
  thing: (subject) => ("grid" in subject ? subject.grid.device : subject.island.device),
  judge: (subject, judge) =>
    "grid" in subject ? gridDisconnection(subject.grid, judge) : islandDisconnection(subject.island, judge),
});
