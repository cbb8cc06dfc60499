import type { Installation } from "../circuit/installation.js";
import type { Source } from "../physics/figure.js";
import type { Judge } from "./judge.js";
import { judgeLoop } from "./reading-loop-impedance.js";
import { judgeElectrode, judgeFaultCurrent, judgeTripTime } from "./reading-loop-others.js";
import { latestReadings, type ReadingSubject } from "./readings.js";
import { type Outcome, rule } from "./rule.js";

const british: readonly Source[] = [
  { title: "BS 7671:2018", clause: "411.4.4, and Appendix 3 for readings with cold conductors", basis: "read" },
  { title: "BS 7671:2018", clause: "411.5.3, RA · IΔn ≤ 50 V", basis: "read" },
];
const international: readonly Source[] = [
  { title: "IEC 60364-6", clause: "Annex D, readings of loop impedance", basis: "memory" },
  { title: "IEC 60364-4-41", clause: "411.4.4 and 411.5.3", basis: "memory" },
];
const residual: Source = { title: "IEC 61008-1", clause: "tripping times at IΔn", basis: "read" };

/** What is read of earth faults, with how it is judged. */
const judges = {
  "loop-impedance": judgeLoop,
  "fault-current": judgeFaultCurrent,
  "residual-trip-time": judgeTripTime,
  "electrode-resistance": judgeElectrode,
} satisfies Record<string, (subject: ReadingSubject, judge: Judge) => Outcome | readonly Outcome[]>;

interface Subject extends ReadingSubject {
  readonly property: keyof typeof judges;
}

/** What was read of fault loops, fault currents, RCDs and electrodes is good enough. */
export const readingLoop = rule<Subject>({
  id: "reading-loop",
  section: "Earthing, grid, papers",
  severity: "error",
  title: "Measured loop impedances, fault currents, trip times and electrodes are within their limits.",
  what: "Holds a loop impedance against what the next protective device, or an RCD, needs to disconnect in time, with the share that allows for cold conductors, and against the loop that the design has while cold; at the supply against what the survey says. Holds a fault current against the survey and against breaking capacities, an RCD's trip time against its standard, and an electrode against what lasts. Of several readings of one thing in one mode the latest counts.",
  why: "Protection is worked out on paper from lengths that were guessed. The reading shows the bad joint, the thin conductor that was already there, and the RCD that sticks.",
  sources: { gb: [...british, residual], iec: [...international, residual] },
  examples: {
    holds: `supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S  external-loop-impedance: 0.24 ohm }
board CU is SplitBoard { way 9: breaker K9 is Breaker16B serves "boiler" }
run W1 from GRID to CU: 3 m of Tails25
measured CU.K9 on 2026-06-12 { loop-impedance: 0.27 ohm }
`,
    breaks: `supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S  external-loop-impedance: 0.24 ohm }
board CU is SplitBoard { way 9: breaker K9 is Breaker16B serves "boiler" }
run W1 from GRID to CU: 3 m of Tails25
measured CU.K9 on 2026-06-12 { loop-impedance: 2.5 ohm }
`,
  },
  over: "installation",
  subjects: subjectsOf,
  thing: ({ target }) => target,
  judge: (subject, judge) => judges[subject.property](subject, judge),
});

function* subjectsOf(installation: Installation): Generator<Subject> {
  for (const property of Object.keys(judges) as Subject["property"][])
    for (const subject of latestReadings(installation, property)) yield { ...subject, property };
}
