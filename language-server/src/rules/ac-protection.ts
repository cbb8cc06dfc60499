import { isProtective } from "../circuit/feed.js";
import type { Plant } from "../circuit/plant.js";
import { againstCurrents, againstLargestAllowed, againstLoads, type ProtectedUnits } from "./ac-protection-device.js";
import { cableOutcomes, type ProtectedRun } from "./ac-protection-run.js";
import { unitsThrough } from "./feeding-units.js";
import { isAsFound, isSurgeLead, isTails, linesByDevice, newLoadsByDevice, passedDevices } from "./passed-devices.js";
import { rule } from "./rule.js";
import { eachOf } from "./several.js";
import { treeAt } from "./supply-way.js";

/** Either a protective device with what flows through it, or a run with what protects it. */
type Subject = { readonly device: ProtectedUnits } | { readonly line: ProtectedRun };

function* subjects(plant: Plant): Generator<Subject> {
  const lines = linesByDevice(plant);
  const loads = newLoadsByDevice(plant);
  for (const passed of passedDevices(plant, isProtective)) {
    const units = unitsThrough(passed.tree, passed.after);
    const taking = loads.get(passed.device) ?? [];
    if (units.length + taking.length === 0) continue;
    yield { device: { plant, passed, units, loads: taking, lines: lines.get(passed.device) ?? [] } };
  }
  for (const line of plant.lines)
    if (!isAsFound(line) && !isSurgeLead(line) && !isTails(line))
      yield { line: { plant, line, tree: treeAt(plant, line.root) } };
}

export const acProtection = rule<Subject>({
  id: "ac-protection",
  section: "A.c. side and the existing board",
  severity: "error",
  title:
    "Ib ≤ In ≤ Iz: each protective device lets the working current pass and protects its cable, whichever way energy flows.",
  what: "Takes the design current Ib of what an inverter or generating unit sends and of what it draws: charging, and what it passes on to its backup port. Holds it against the rating In of each breaker, RCBO and fuse on its way, and In against what each run carries as it is laid (Iz). Where a generator feeds in behind the same device, what it adds counts too. A port that names the largest device ahead of it is held against it.",
  why: "An inverter with a battery may draw twice what it feeds in. A device sized for the export trips when it charges or when the house runs through it; a device above the cable's capacity lets the cable burn.",
  sources: {
    gb: [
      { title: "BS 7671:2018", clause: "433.1.1, Ib ≤ In ≤ Iz; 551.7.2, Iz ≥ In + Ig", basis: "memory" },
      { title: "BS 7671:2018, Appendix 4", clause: "current-carrying capacity and its factors", basis: "memory" },
    ],
    iec: [
      { title: "IEC 60364-4-43", clause: "433.1, Ib ≤ In ≤ Iz", basis: "memory" },
      {
        title: "IEC 60364-5-55",
        clause: "551.7.2, generators that feed in behind a protective device",
        basis: "memory",
      },
      { title: "IEC 60364-5-52", clause: "current-carrying capacity, Annex B", basis: "memory" },
    ],
  },
  examples: {
    holds: `supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S  service-fuse: 80 A }
board CU is SplitBoard {
    isolator MS is MainSwitch100
    way 9: rcbo K9 is Rcbo25A serves INV
}
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin6 { method: clipped-direct  ambient: 30 degC }
`,
    breaks: `part Heron5 is inverter {
    ac { rated-power: 5 kW  max-current: 21.7 A  phases: 1  max-import-current: 40 A }
    backup { rated-power: 5 kW  max-current: 21.7 A  pass-through-current: 40 A }
}
supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S  service-fuse: 80 A }
board CU is SplitBoard {
    isolator MS is MainSwitch100
    way 9: rcbo K9 is Rcbo32A serves INV
}
inverter INV is Heron5
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin10 { method: clipped-direct  ambient: 30 degC }
`,
  },
  over: "plant",
  subjects,
  thing: (subject) => ("device" in subject ? subject.device.passed.device : subject.line.line.run),
  judge: (subject, judge) => {
    if ("line" in subject) return cableOutcomes(subject.line, judge);
    const { device } = subject;
    return eachOf(
      () => againstCurrents(device, judge),
      () => againstLoads(device, judge),
      () => againstLargestAllowed(device, judge),
    );
  },
});
