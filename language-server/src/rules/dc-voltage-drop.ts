import { wordOf } from "../design/facts.js";
import type { Item, Run, Thing } from "../design/things.js";
import { formatValue } from "../physics/display.js";
import type { Derived, Figure, Given } from "../physics/figure.js";
import { stated as figure } from "../physics/make.js";
import { standardMaxPowerVoltage } from "../physics/string-voltage.js";
import {
  longestRun,
  pathDrop,
  relativeDrop,
  runLoss,
  smallestSizeForDrop,
  totalLoss,
} from "../physics/voltage-drop.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { moduleOf, modulesInSeries } from "./array-figures.js";
import { type Judge, NotKnown } from "./judge.js";
import { partFixes, percent } from "./part-fixes.js";
import { type DropStep, dropStep, dropSteps, heaviestRun } from "./path-drop.js";
import { idsOf } from "./phrases.js";
import { type Finding, type Fix, rule } from "./rule.js";
import { type StringSubject, stringsOf } from "./strings-of.js";

interface DropSubject extends StringSubject {
  /** The run that loses most; undefined for a string that is wired to nothing. */
  readonly run?: Run;
}

export const dcVoltageDrop = rule<DropSubject>({
  id: "dc-voltage-drop",
  section: "D.c. cables, connectors, isolation",
  severity: "warning",
  title: "Little is lost between string and inverter.",
  what: "Adds up the voltage lost in every run from a string to its tracker, both conductors, at the current of maximum power and with conductors as hot as the rule set takes them. Runs that several strings share carry the sum of their currents. The sum, as a share of the string's voltage at maximum power, is held against the design limit; above the ceiling the message says so. It is reported on the run that loses most.",
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
    for (const subject of stringsOf(zone)) yield { ...subject, run: heaviestRun(subject.path.steps, subject.array) };
  },
  thing: ({ run, path }): Thing => run ?? path.string,
  judge: (subject, judge) => {
    const { path, array } = subject;
    if (!array.tracker) throw new NotKnown([], `${path.string.id} is wired to no inverter`);
    const steps = dropSteps(path.steps, array, judge);
    const voltage = stringVoltage(path.string, judge);
    const drop = pathDrop(steps.map((step) => step.drop));
    const share = relativeDrop(drop, voltage);
    const design = judge.limit("dc-voltage-drop-design");
    if (share.value <= design.value) return judge.pass(share, design);
    return tooMuch(subject, steps, voltage, drop, share, design, judge);
  },
});

function stringVoltage(string: Item, judge: Judge): Derived {
  const [voltage] = judge.need([moduleOf(string), "voltage-at-max-power"]);
  return standardMaxPowerVoltage({ modules: modulesInSeries(string), voltage });
}

function tooMuch(
  subject: DropSubject,
  steps: readonly DropStep[],
  voltage: Derived,
  drop: Derived,
  share: Derived,
  design: Given,
  judge: Judge,
): Finding {
  const { path, array } = subject;
  const ceiling = judge.limit("dc-voltage-drop-ceiling");
  const isAboveCeiling = share.value > ceiling.value;
  const limit = isAboveCeiling ? ceiling : design;
  const [lost, allowed] = formatApart(share, limit);
  const worst = steps.find((step) => step.run === subject.run) ?? steps[0]!;
  const loss = totalLoss(steps.map((step) => runLoss(step.loaded)));
  const others = array.strings.filter(
    ({ string, steps: way }) => string !== path.string && steps.some(({ run }) => way.includes(run)),
  );
  const shared = others.length > 0 ? `, shared with ${idsOf(others.map(({ string }) => string))}` : "";
  return judge.finding({
    what: `From ${path.string.id} to ${array.tracker?.id} ${lost} is lost (${formatFigure(drop)} of ${formatFigure(voltage)}, ${formatFigure(loss)}${shared}); ${isAboveCeiling ? "the ceiling" : "the design limit"} is ${allowed}.`,
    why: "It warms the cable instead of reaching the inverter, whenever the sun shines.",
    todo: advice(worst, allowedIn(worst, drop, voltage, design), judge),
    spot: { thing: worst.run, word: "cable" },
    value: share,
    limit,
    related: steps
      .filter((step) => step !== worst)
      .map(({ run, drop: own }) => ({
        spot: { thing: run, word: "length" },
        message: `${run.id} loses ${formatFigure(own)}`,
      })),
    fixes: (asked) => largerCables(subject, worst, drop, voltage, design, asked),
  });
}

/** What the worst run may lose if the others stay as they are, V. */
function allowedIn(worst: DropStep, drop: Derived, voltage: Derived, design: Given): Figure {
  const allowed = design.value * voltage.value - (drop.value - worst.drop.value);
  return figure("ΔUmax", allowed, "voltage", "V", "what the limit leaves for this run");
}

function advice(worst: DropStep, allowed: Figure, judge: Judge): string {
  const { run, kind, loaded } = worst;
  if (allowed.value <= 0) return "Shorten the way, or lay larger cable along all of it.";
  const conductorTemperature = judge.limit("hot-conductor-temperature");
  const size = smallestSizeForDrop({ ...loaded, kind, conductorTemperature, allowed });
  const larger = size === undefined ? "" : `lay ${run.id} in ${formatValue(size, "area", "mm2")}, `;
  const longest = formatFigure(longestRun(loaded, allowed));
  return `Within ${formatFigure(judge.limit("dc-voltage-drop-design"))}: ${larger}or shorten it to ${longest}.`;
}

function largerCables(
  { array }: DropSubject,
  worst: DropStep,
  drop: Derived,
  voltage: Derived,
  design: Given,
  judge: Judge,
): readonly Fix[] {
  const type = wordOf(worst.cable, "type");
  return partFixes(judge, {
    thing: worst.run,
    properties: [],
    preview: (part) => {
      if (wordOf(part, "type") !== type) return undefined;
      const own = dropIn(worst.run, part, array, judge);
      if (own === undefined) return undefined;
      const share = (drop.value - worst.drop.value + own) / voltage.value;
      return share <= design.value ? `${percent(share)} lost` : undefined;
    },
    order: (part) => judge.quantity(part, "conductor-area")?.value ?? 0,
  });
}

function dropIn(run: Run, cable: DropStep["cable"], array: DropSubject["array"], judge: Judge): number | undefined {
  try {
    return dropStep(run, cable, array, judge).drop.value;
  } catch (error) {
    if (error instanceof NotKnown) return undefined;
    throw error;
  }
}
