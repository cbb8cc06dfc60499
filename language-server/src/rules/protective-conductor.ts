import type { Line, Plant } from "../circuit/plant.js";
import { given } from "../design/facts.js";
import type { Part } from "../design/things.js";
import { adiabaticSize } from "../physics/fault-energy.js";
import type { Derived, Figure, Given } from "../physics/figure.js";
import { protectiveSize } from "../physics/protective-size.js";
import { formatFigure } from "../physics/working.js";
import { largerCables } from "./ac-cables.js";
import { type GridCircuit, gridCircuits } from "./disconnection-grid.js";
import { type ProtectiveConductor, protectiveConductor } from "./earth-path.js";
import { heatFactor, letThroughOf } from "./fault-heat.js";
import type { Judge } from "./judge.js";
import { MissingFacts } from "./missing-facts.js";
import { percent } from "./part-fixes.js";
import { isSurgeLead } from "./passed-devices.js";
import { stated } from "./phrases.js";
import { type Fix, type Outcome, rule } from "./rule.js";
import { cableOf } from "./run-facts.js";

/** A run with the circuit that it belongs to. */
interface Subject {
  readonly circuit: GridCircuit;
  readonly line: Line;
}

function* subjects(plant: Plant): Generator<Subject> {
  for (const circuit of gridCircuits(plant))
    for (const line of circuit.lines) if (!isSurgeLead(line)) yield { circuit, line };
}

export const protectiveConductors = rule<Subject>({
  id: "protective-conductor",
  section: "A.c. side and the existing board",
  severity: "error",
  title: "Each protective conductor stands the fault until it is disconnected.",
  what: "Compares the protective conductor of each run behind a protective device (laid with it, in its cable, or the armour) with the table by line conductor. A smaller one is allowed where it stands the energy that the device lets through: computed from the largest earth fault current, the time that the device takes, and for circuit-breakers no more than their energy limiting class allows.",
  why: "In a fault the protective conductor carries hundreds of amperes. If it melts before the device opens, everything earthed behind it stays live.",
  sources: {
    gb: [
      { title: "BS 7671:2018", clause: "543.1.3, S = √(I² · t) / k; Tables 54.2 to 54.4", basis: "read" },
      { title: "BS 7671:2018", clause: "543.1.4 and Table 54.7", basis: "read" },
    ],
    iec: [{ title: "IEC 60364-5-54", clause: "543.1, Table 54.2 and Annex A", basis: "memory" }],
  },
  examples: {
    holds: `supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S  external-loop-impedance: 0.24 ohm }
board CU is SplitBoard { way 9: breaker K9 is Breaker25B serves INV }
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
    breaks: `part Thin6 is cable {
    conductor-area: 6 mm2  protective-conductor-area: 1 mm2  conductor-class: class-2
    type: multicore  insulation: thermoplastic-70
}
supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S  external-loop-impedance: 0.24 ohm }
board CU is SplitBoard { way 9: breaker K9 is Breaker32B serves INV }
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Thin6
`,
  },
  over: "plant",
  subjects,
  thing: ({ line }) => line.run,
  judge: (subject, judge) => {
    const { circuit, line } = subject;
    const cable = cableOf(line.run);
    const missing = new MissingFacts();
    const area = missing.orElse(() => judge.need([cable, "conductor-area"])[0]);
    const protective = missing.orElse(() => protectiveConductor(line.run, cable, circuit.plant));
    missing.stop();
    const byTable = protectiveSize(area!, judge.ruleSet.ac.protectiveSizes);
    const own = protective!;
    // The table holds for copper: what armour of steel stands is computed.
    if (own.kind === "core" && reaches(own.area, byTable)) return judge.passAtLeast(own.area, byTable, "the table");
    const energy = letThroughOf(circuit, line, judge);
    const needed = adiabaticSize(energy, heatFactor(own.kind, cable, judge));
    if (reaches(own.area, needed)) return judge.passAtLeast(own.area, needed, `what ${circuit.device.id} lets through`);
    return tooThin({ subject, cable, own, byTable, needed }, judge);
  },
});

interface Thin {
  readonly subject: Subject;
  readonly cable: Part;
  readonly own: ProtectiveConductor;
  readonly byTable: Derived;
  readonly needed: Derived;
}

function tooThin(found: Thin, judge: Judge): Outcome {
  const { subject, cable, own, byTable, needed } = found;
  const { run } = subject.line;
  const has = own.kind === "armour" ? "armour" : "a protective conductor";
  const table = own.kind === "armour" ? "" : `by the table it needs ${formatFigure(byTable)}, and `;
  return judge.finding({
    what: `${run.id} has ${has} of ${formatFigure(own.area)}; ${table}by what ${subject.circuit.device.id} lets through ${formatFigure(needed)}.`,
    why: "In a fault to earth it overheats before the device opens.",
    todo: "Use a cable with a larger protective conductor, or lay one beside it.",
    spot: { thing: run, word: "cable" },
    value: own.area,
    limit: needed,
    related: [stated(cable, own.kind === "armour" ? "armour-area" : "protective-conductor-area", own.area)],
    fixes: (asked) => thickerCables(found, asked),
  });
}

/** Cables whose own protective conductor is enough by the table, or by the energy. */
function thickerCables({ subject, needed }: Thin, judge: Judge): readonly Fix[] {
  const { run } = subject.line;
  if (given(run, "protective-conductor-area")) return [];
  return largerCables(run, judge, (part) => {
    const own = given(part, "protective-conductor-area");
    const line = given(part, "conductor-area");
    if (!own || !line) return undefined;
    const table = protectiveSize(line, judge.ruleSet.ac.protectiveSizes);
    const least = Math.min(table.value, needed.value);
    return reaches(own, { value: least }) ? `${formatFigure(own)}, ${percent(least / own.value)}` : undefined;
  });
}

/** Rid of the rounding error of the unit conversion. */
function reaches(area: Given, needed: Pick<Figure, "value">): boolean {
  return area.value * (1 + 1e-9) >= needed.value;
}
