import { fedThrough, isOnlyInWords } from "../circuit/beyond.js";
import type { Terminal } from "../circuit/circuit.js";
import type { Plant } from "../circuit/plant.js";
import type { Item } from "../design/things.js";
import type { Figure } from "../physics/figure.js";
import { leakageBudget as largestLeakage, nonOperatingCurrent, standingLeakage } from "../physics/residual-current.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { unitName, unitsThrough } from "./feeding-units.js";
import type { Judge } from "./judge.js";
import { islandsOf } from "./mains.js";
import { MissingFacts } from "./missing-facts.js";
import { type PassedDevice, passedDevices } from "./passed-devices.js";
import { idsOf, stated } from "./phrases.js";
import { type Outcome, rule } from "./rule.js";
import { takesPower } from "./through-current.js";

interface LeakageSubject {
  readonly plant: Plant;
  readonly passed: PassedDevice;
  readonly inverters: readonly Item[];
}

function* subjects(plant: Plant): Generator<LeakageSubject> {
  for (const passed of passedDevices(plant, ({ kind }) => kind === "rcd" || kind === "rcbo")) {
    const inverters = [...new Set(unitsThrough(passed.tree, passed.after).map(unitName))];
    if (inverters.length > 0) yield { plant, passed, inverters };
  }
}

export const leakageBudget = rule<LeakageSubject>({
  id: "leakage-budget",
  section: "A.c. side and the existing board",
  severity: "note",
  title: "What leaks without a fault stays well below what trips the RCD of an inverter.",
  what: "Adds the standing leakage of everything that an RCD or RCBO with an inverter behind it feeds, also through the inverter's backup port while the grid is there, and holds the sum against the share of IΔn that the rule set allows. From half of IΔn on the RCD may trip, which is a warning. Leakage is a fact of sheets and of measurements: what states none is named.",
  why: "Filters of inverters leak a few milliamperes all day long. With those of the loads they bring an RCD close to tripping, and then it trips on a wet morning with nothing wrong.",
  sources: {
    gb: [
      { title: "BS 7671:2018", clause: "531.3.2, unwanted tripping", basis: "read" },
      { title: "IEC 61008-1", clause: "residual non-operating current", basis: "memory" },
    ],
    iec: [
      { title: "IEC 60364-5-53", clause: "531.3.2, unwanted tripping", basis: "memory" },
      { title: "IEC 61008-1", clause: "residual non-operating current", basis: "memory" },
    ],
  },
  examples: {
    holds: `supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S  service-fuse: 80 A }
board CU is SplitBoard {
    way 9: rcbo K9 is Rcbo25A serves INV
}
inverter INV is Brook4 { standing-leakage: 5 mA }
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
    breaks: `supply GRID { voltage: 230 V  phases: 1  earthing: TN-C-S  service-fuse: 80 A }
load FREEZERS { power: 1 kW  standing-leakage: 6 mA }
board CU is SplitBoard {
    rcd R1 is Rcd63A {
        way 8: breaker K8 is Breaker16B serves FREEZERS
        way 9: breaker K9 is Breaker25B serves INV
    }
}
inverter INV is Brook4 { standing-leakage: 5 mA }
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to INV.ac: 10 m of Twin6
`,
  },
  over: "plant",
  subjects,
  thing: ({ passed }) => passed.device,
  judge: (subject, judge) => {
    const { device } = subject.passed;
    const [rated] = judge.need([device, "residual-current"]);
    const budget = largestLeakage(rated, judge.limit("leakage-share"));
    const missing = new MissingFacts();
    const known = leaks(subject)
      .map((thing) => missing.orElse(() => ({ thing, current: judge.need([thing, "standing-leakage"])[0] })))
      .filter((each) => each !== undefined);
    const unnamed = unnamedWays(subject);
    const sum = standingLeakage(known.map(({ current }) => current));
    // What is known may be too much already.
    if (sum.value > budget.value) return tooMuch(subject, sum, budget, rated, judge);
    const unknown = missing.outcomes();
    if (unnamed.length > 0)
      unknown.push(
        judge.notChecked(
          `what leaks behind ${idsOf(unnamed)} is not known: name what it serves as a load with its standing-leakage`,
        ),
      );
    return unknown.length > 0 ? unknown : judge.pass(sum, budget, "standing leakage");
  },
});

/** Things whose leakage passes an RCD: what it feeds, and what an inverter behind it passes the grid on to. */
function leaks(subject: LeakageSubject): Item[] {
  const found = new Set<Item>(subject.inverters);
  for (const { item } of fed(subject)) if (item.kind === "load") found.add(item);
  return [...found];
}

/** Ways of which only words say what they serve. */
function unnamedWays(subject: LeakageSubject): Item[] {
  return [
    ...new Set(
      fed(subject)
        .filter(isOnlyInWords)
        .map(({ item }) => item),
    ),
  ];
}

function fed({ plant, passed, inverters }: LeakageSubject): Terminal[] {
  const found = fedThrough(passed.tree, passed.after);
  for (const { inverter, tree } of islandsOf(plant))
    if (inverters.includes(inverter)) found.push(...fedThrough(tree, tree.root));
  return found;
}

function tooMuch(
  { passed, inverters }: LeakageSubject,
  sum: Figure,
  budget: Figure,
  rated: Figure,
  judge: Judge,
): Outcome {
  const { device } = passed;
  const mayTrip = nonOperatingCurrent(rated, judge.limit("residual-non-operating-share"));
  const trips = sum.value >= mayTrip.value;
  const [leak, allowed] = formatApart(sum, budget);
  const isItsOwn = !takesPower(passed.tree, passed.after);
  return judge.finding({
    severity: trips ? "warning" : "note",
    what: `${leak} leak through ${device.id} without a fault; of its ${formatFigure(rated)} it should carry ${allowed} at most.`,
    why: trips
      ? `From ${formatFigure(mayTrip)} on it may trip with nothing wrong.`
      : `From ${formatFigure(mayTrip)} on it may trip, and rain or another filter may add what is left.`,
    todo: isItsOwn
      ? "Ask whether an RCD is required there at all, and measure what really leaks."
      : `Give ${idsOf(inverters)} an RCD of its own, if one is required there at all, and measure what leaks.`,
    spot: { thing: device, word: "part" },
    value: sum,
    limit: budget,
    related: [
      stated(device, "residual-current", rated),
      ...judge.limitSet("leakage-share", "the share that the site allows"),
    ],
  });
}
