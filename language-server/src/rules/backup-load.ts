import type { BoardCircuit, Plant } from "../circuit/plant.js";
import type { Source } from "../physics/figure.js";
import { judgeDemand } from "./backup-demand.js";
import { judgeFault } from "./backup-fault.js";
import { type Island, islandsOf } from "./mains.js";
import { rule } from "./rule.js";

const demand: Source = { title: "sum of the loads that are backed up against the port's rating", basis: "arithmetic" };
const british: Source = {
  title: "BS 7671:2018",
  clause: "411.3.2 and 551.4, disconnection in every mode",
  basis: "memory",
};
const international: Source = {
  title: "IEC 60364-4-41 and IEC 60364-5-55",
  clause: "411.3.2 and 551.4, disconnection in every mode",
  basis: "memory",
};
const breakers: Source = { title: "IEC 60898-1", clause: "instantaneous ranges", basis: "read" };

/** All that one backup port feeds, or one way of it. */
interface Subject {
  readonly island: Island;
  readonly circuit?: BoardCircuit;
}

/** An inverter without the grid carries what it backs up, and its faults open a device. */
export const backupLoad = rule<Subject>({
  id: "backup-load",
  section: "Battery and backup",
  severity: "warning",
  title: "A backup port carries what is declared for it, and can operate the devices of its circuits.",
  what: "Adds the declared demand of the loads that go on without the grid and holds it against the port's power. For each of their ways it asks whether the current that the inverter feeds into a fault, for as long as it feeds it, operates the device there. Behind an RCD an earth fault is cleared however little the inverter feeds. The length of the way to the fault is left to `disconnection`.",
  why: "An overloaded port shuts down, and nothing runs that was meant to. An inverter feeds little more into a fault than into a load: a breaker that is right with the grid may never open without it.",
  sources: { gb: [demand, british, breakers], iec: [demand, international, breakers] },
  examples: {
    holds: `supply GRID { voltage: 230 V }
inverter INV is Fell5 { backup { fault-time: 200 ms } }
board NEW { way 1: rcbo K1 is Rcbo25A serves OVEN }
load OVEN { power: 3 kW }
run W1 from INV.backup to NEW: 2 m of Twin6
run W2 from GRID to INV.ac: 8 m of Twin6
`,
    breaks: `supply GRID { voltage: 230 V }
inverter INV is Fell5 { backup { fault-time: 200 ms } }
board NEW { way 1: breaker K1 is Breaker32B serves SHOWER }
load SHOWER { power: 7.2 kW }
run W1 from INV.backup to NEW: 2 m of Twin6
run W2 from GRID to INV.ac: 8 m of Twin6
`,
  },
  over: "plant",
  subjects: subjectsOf,
  thing: ({ island, circuit }) => circuit?.device ?? island.inverter,
  judge: ({ island, circuit }, judge) => (circuit ? judgeFault(circuit, island, judge) : judgeDemand(island, judge)),
});

function* subjectsOf(plant: Plant): Generator<Subject> {
  for (const island of islandsOf(plant)) {
    yield { island };
    for (const circuit of island.backup.circuits) if (isLoaded(circuit)) yield { island, circuit };
  }
}

/** A way that protects something: spare ones, and switches, are not asked. */
function isLoaded({ device, serves, servesText, beyond }: BoardCircuit): boolean {
  if (device.kind !== "breaker" && device.kind !== "rcbo" && device.kind !== "fuse") return false;
  return serves !== undefined || servesText !== undefined || beyond.runs.length > 0;
}
