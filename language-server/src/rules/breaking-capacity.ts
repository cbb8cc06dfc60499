import { isProtective } from "../circuit/feed.js";
import type { Plant } from "../circuit/plant.js";
import { given } from "../design/facts.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { deviceFixes } from "./device-parts.js";
import { faultCurrentAt } from "./fault-current.js";
import type { Judge } from "./judge.js";
import { percent } from "./part-fixes.js";
import { type PassedDevice, passedDevices } from "./passed-devices.js";
import { stated } from "./phrases.js";
import { type Outcome, rule } from "./rule.js";
import { type SupplyWay, supplyWay } from "./supply-way.js";

/** A protective device with the way on which the supply reaches it. */
export interface BreakingSubject {
  readonly plant: Plant;
  readonly passed: PassedDevice;
  readonly way: SupplyWay;
}

function* subjects(plant: Plant): Generator<BreakingSubject> {
  for (const passed of passedDevices(plant, isProtective)) {
    const way = supplyWay(plant, passed.before);
    if (way) yield { plant, passed, way };
  }
}

export const breakingCapacity = rule<BreakingSubject>({
  id: "breaking-capacity",
  section: "A.c. side and the existing board",
  severity: "error",
  title: "Every protective device can break the largest fault current that may flow where it stands.",
  what: "Takes the prospective fault current at the origin, less what the cables up to the device leave of it while they are cold, and adds what inverters and generating units feed into the same fault. Holds it against the breaking capacity of each breaker, RCBO and fuse. A cable of which too little is stated is left out, which only raises the current.",
  why: "A device that is asked to break more than it can does not clear the fault: it may burst, weld or burn.",
  sources: {
    gb: [{ title: "BS 7671:2018", clause: "434.5.1, rated short-circuit breaking capacity", basis: "memory" }],
    iec: [{ title: "IEC 60364-4-43", clause: "434.5.1, rated short-circuit breaking capacity", basis: "memory" }],
  },
  examples: {
    holds: `supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S  prospective-fault-current: 1.9 kA }
board CU is SplitBoard { way 9: rcbo K9 is Rcbo25A serves INV }
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
    breaks: `part Rcbo25Weak is rcbo {
    rated-current: 25 A  curve: B  breaking-capacity: 4.5 kA  residual-current: 30 mA  type: A  poles: 2
}
supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S  prospective-fault-current: 5.6 kA }
board CU is SplitBoard { way 9: rcbo K9 is Rcbo25Weak serves INV }
inverter INV is Brook4
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
  },
  over: "plant",
  subjects,
  thing: ({ passed }) => passed.device,
  judge: judgeBreaking,
});

/** Also asked of a device that is only thought of. */
export function judgeBreaking({ plant, passed, way }: BreakingSubject, judge: Judge): Outcome {
  const { device } = passed;
  const current = faultCurrentAt(plant, passed, way, judge);
  const [capacity] = judge.need([device, "breaking-capacity"]);
  if (current.value <= capacity.value) return judge.pass(current, capacity);
  const [flows, breaks] = formatApart(current, capacity);
  return judge.finding({
    what: `A fault behind ${device.id} may draw ${flows}; ${device.id} breaks ${breaks} at most.`,
    why: "Above its breaking capacity it does not clear the fault, and it may burst or burn.",
    todo: `Fit a device that breaks at least ${flows}, or one that its maker declares for this with a fuse ahead of it (and say so in a departure).`,
    spot: { thing: device, word: "part" },
    value: current,
    limit: capacity,
    related: [
      stated(device, "breaking-capacity", capacity),
      stated(way.supply, "prospective-fault-current", judge.need([way.supply, "prospective-fault-current"])[0]),
    ],
    fixes: (asked) =>
      deviceFixes(asked, {
        device,
        changes: ["breaking-capacity"],
        preview: (part) => {
          const rating = given(part, "breaking-capacity");
          if (!rating || rating.value < current.value) return undefined;
          return `${formatFigure(rating)}, ${percent(current.value / rating.value)}`;
        },
        order: (part) => given(part, "breaking-capacity")?.value ?? 0,
      }),
  });
}
