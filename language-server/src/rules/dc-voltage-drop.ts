import type { Item, Run, Thing } from "../design/things.js";
import type { Derived, Given } from "../physics/figure.js";
import { standardMaxPowerVoltage } from "../physics/string-voltage.js";
import { pathDrop, relativeDrop } from "../physics/voltage-drop.js";
import { moduleOf, modulesInSeries } from "./array-figures.js";
import { tooMuchDrop, type WayDrop } from "./drop-finding.js";
import { type Judge, NotKnown } from "./judge.js";
import { dropSteps, heaviestRun } from "./path-drop.js";
import { type Missing, type Outcome, rule } from "./rule.js";
import { type StringSubject, stringsOf } from "./strings-of.js";

/** The strings whose way loses most in the same run: one cable, one finding. */
interface DropSubject {
  /** Undefined for a string that is wired to nothing. */
  readonly run?: Run;
  readonly ways: readonly StringSubject[];
}

export const dcVoltageDrop = rule<DropSubject>({
  id: "dc-voltage-drop",
  section: "D.c. cables, connectors, isolation",
  severity: "warning",
  title: "Little is lost between string and inverter.",
  what: "Adds up the voltage lost in every run from a string to its tracker, both conductors, at the current of maximum power and with conductors as hot as the rule set takes them. Runs that several strings share carry the sum of their currents. The sum, as a share of the string's voltage at maximum power, is held against the design limit; above the ceiling the message says so. It is reported on the run that loses most, for the string that loses most.",
  why: "What a cable loses is lost for as long as the array stands, and it warms the cable. The published ceiling is 3 %; designers aim at 1 %.",
  sources: {
    gb: [
      {
        title: "DTI and MCS guides to PV installation",
        clause: "drop from array to inverter below 3 %",
        basis: "read",
      },
      { title: "aim of UK designers for the d.c. side", basis: "practice" },
      { title: "IEC 60228:2004", clause: "resistance of conductors", basis: "read" },
    ],
    iec: [
      { title: "UTE C 15-712-1", clause: "voltage drop at most 3 %, 1 % recommended", basis: "read" },
      { title: "IEC 60228:2004", clause: "resistance of conductors", basis: "read" },
    ],
  },
  examples: {
    holds: `string S1 is 11 x Hollin430
isolator Q1 is RotaryDc32
inverter INV is Brook4
run W1 from S1 to Q1: 18 m of Solar4
run W2 from Q1 to INV.pv1: 1.2 m of Solar4
`,
    breaks: `string S1 is 6 x Hollin430
isolator Q1 is RotaryDc32
inverter INV is Brook4
run W1 from S1 to Q1: 24 m of Solar4
run W2 from Q1 to INV.pv1: 1.2 m of Solar4
`,
  },
  *subjects(zone) {
    const byRun = new Map<Run, StringSubject[]>();
    for (const subject of stringsOf(zone)) {
      const run = heaviestRun(subject.path.steps, subject.array);
      const together = run && byRun.get(run);
      if (together) together.push(subject);
      else if (run) byRun.set(run, [subject]);
      else yield { ways: [subject] };
    }
    for (const [run, ways] of byRun) yield { run, ways };
  },
  thing: ({ run, ways }): Thing => run ?? ways[0]!.path.string,
  judge: ({ run, ways }, judge) => {
    const design = judge.limit("dc-voltage-drop-design");
    const outcomes: Outcome[] = [];
    const exceeding: WayDrop[] = [];
    const missing = new Map<string, Missing>();
    const reasons = new Set<string>();
    for (const way of ways) {
      const found = dropOf(way, judge);
      if (found instanceof NotKnown) {
        for (const lack of found.missing) missing.set(`${nameOf(lack.thing)}.${lack.property}`, lack);
        if (found.reason) reasons.add(found.reason);
      } else if (found.share.value <= design.value) outcomes.push(passed(found, design, judge));
      else exceeding.push(found);
    }
    if (run && exceeding.length > 0) outcomes.push(tooMuchDrop(run, exceeding, design, judge));
    if (missing.size > 0 || reasons.size > 0)
      outcomes.push({
        outcome: "not-checked",
        missing: [...missing.values()],
        reason: reasons.size > 0 ? [...reasons].join("; ") : undefined,
      });
    return outcomes;
  },
});

/** What is lost on the way of one string; a NotKnown in the place of it where that cannot be worked out. */
function dropOf({ path, array }: StringSubject, judge: Judge): WayDrop | NotKnown {
  const { string } = path;
  try {
    if (!array.tracker) throw new NotKnown([], `${string.id} is wired to no inverter`);
    const steps = dropSteps(path.steps, array, judge);
    const voltage = stringVoltage(string, judge);
    const drop = pathDrop(steps.map((step) => step.drop));
    return { string, array, steps, voltage, drop, share: relativeDrop(drop, voltage) };
  } catch (error) {
    if (error instanceof NotKnown) return error;
    throw error;
  }
}

function stringVoltage(string: Item, judge: Judge): Derived {
  const [voltage] = judge.need([moduleOf(string), "voltage-at-max-power"]);
  return standardMaxPowerVoltage({ modules: modulesInSeries(string), voltage });
}

function passed({ share, string }: WayDrop, design: Given, judge: Judge): Outcome {
  return judge.pass(share, design, string.id);
}

function nameOf(thing: Thing): string {
  return thing.is === "part" ? thing.name : thing.id;
}
