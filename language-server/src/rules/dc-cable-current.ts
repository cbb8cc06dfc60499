import type { PvArray, Step } from "../circuit/array.js";
import { given, wordOf } from "../design/facts.js";
import type { Item, Part, Run } from "../design/things.js";
import { smallestSizeForCurrent } from "../physics/ampacity.js";
import { backFeed } from "../physics/back-feed.js";
import { formatValue } from "../physics/display.js";
import type { Derived, Figure, Given } from "../physics/figure.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { arrayMaximumCurrent, sumOfMaximumCurrents } from "./array-figures.js";
import { type LoadedRunSubject, loadedRuns, runOf } from "./array-runs.js";
import { type Capacity, capacityOf } from "./cable-capacity.js";
import { type Judge, NotKnown } from "./judge.js";
import { partFixes, percent } from "./part-fixes.js";
import { idsOf, stated } from "./phrases.js";
import { type Fix, type Outcome, rule } from "./rule.js";
import { cableOf } from "./run-facts.js";
import { eachOf } from "./several.js";

const why = "Nothing switches off an overloaded array cable: it runs hotter than its insulation stands all day long.";

export const dcCableCurrent = rule<LoadedRunSubject>({
  id: "dc-cable-current",
  section: "D.c. cables, connectors, isolation",
  severity: "error",
  title: "Each array cable carries the highest current it can meet, as it is laid.",
  what: "Works out what each run of the array carries as it is laid, from the rule set's table for its cable and method, the air around it and the circuits beside it. Holds it against the highest short-circuit current of the strings that it serves; where no fuse stands between it and the other strings of its array, against what these can drive backwards through it; where a fuse does, against the fuse.",
  why: "A string cannot be switched off and hardly gives more in a fault than at work, so no fuse or breaker clears its own faults. The cable itself must carry whatever can flow.",
  sources: {
    gb: [
      { title: "BS 7671:2018, Appendix 4", clause: "current-carrying capacity and its factors", basis: "memory" },
      { title: "IEC 62548", clause: "cables carry 1.25 · Isc, or the current of all other strings", basis: "read" },
    ],
    iec: [
      { title: "IEC 62548", clause: "cables carry 1.25 · Isc, or the current of all other strings", basis: "read" },
      { title: "IEC 60364-5-52", clause: "current-carrying capacity, Annex B", basis: "memory" },
    ],
  },
  examples: {
    holds: `string S1 is 11 x Hollin430
isolator Q1 is RotaryDc32
inverter INV is Brook4
run W1 from S1 to Q1: 18 m of Solar4 { method: conduit-in-air  ambient: 45 degC }
run W2 from Q1 to INV.pv1: 1 m of Solar4 { method: on-surface  ambient: 30 degC }
`,
    breaks: `part Solar15 is cable {
    conductor-area: 1.5 mm2  conductor-class: class-5  conductor-coating: tinned
    type: pv  insulation: pv-120  rated-dc-voltage: 1500 V
}
string S1 is 11 x Hollin430
isolator Q1 is RotaryDc32
inverter INV is Brook4
run W1 from S1 to Q1: 18 m of Solar15 { method: conduit-in-air  ambient: 55 degC  grouped-circuits: 2 }
run W2 from Q1 to INV.pv1: 1 m of Solar4 { method: on-surface  ambient: 30 degC }
`,
  },
  subjects: loadedRuns,
  thing: runOf,
  judge: (subject, judge) => {
    const { run } = subject;
    const cable = cableOf(run);
    const capacity = capacityOf(run, cable, judge);
    const fuse = fuseBeyond(subject);
    return eachOf(
      () => againstStrings(subject, fuse, cable, capacity, judge),
      () => fuse && againstFuse(subject, fuse, cable, capacity, judge),
    );
  },
});

/**
 * The fuse that stands between a run and the other strings of its array, if any: one that carries the same strings and
 * lies further towards the inverter.
 */
function fuseBeyond({ strings, array, after }: LoadedRunSubject): Item | undefined {
  if (strings.length === array.strings.length) return undefined;
  return after.find((step): step is Item => isFuseOf(step, strings, array));
}

function isFuseOf(step: Step, strings: readonly Item[], array: PvArray): boolean {
  return step.is === "item" && step.kind === "fuse" && array.devices.get(step)?.length === strings.length;
}

/** The highest current that the run can meet without a fuse of its own limiting it. */
function designCurrent({ strings, array }: LoadedRunSubject, fuse: Item | undefined, judge: Judge): Derived {
  const own = sumOfMaximumCurrents(strings, judge);
  if (fuse || strings.length === array.strings.length) return own;
  const back = backFeed(arrayMaximumCurrent(array, judge), own);
  return back.value > own.value ? back : own;
}

function againstStrings(
  subject: LoadedRunSubject,
  fuse: Item | undefined,
  cable: Part,
  capacity: Capacity,
  judge: Judge,
): Outcome {
  const { run, strings } = subject;
  const current = designCurrent(subject, fuse, judge);
  if (current.value <= capacity.current.value) return judge.pass(current, capacity.current, "the strings on it");
  const [meets, carries] = formatApart(current, capacity.current);
  const isBackFeed = current.symbol === "Irev";
  return judge.finding({
    what: isBackFeed
      ? `The other strings can drive ${meets} backwards through ${run.id}; ${cable.name} as it is laid carries ${carries}.`
      : `${run.id} meets up to ${meets} from ${idsOf(strings)}; ${cable.name} as it is laid carries ${carries}.`,
    why,
    todo: isBackFeed
      ? `${enough(capacity, current)} Or fit a fuse in both poles of each string.`
      : enough(capacity, current),
    spot: { thing: run, word: "cable" },
    value: current,
    limit: capacity.current,
    related: [...areaOf(cable, judge)],
    fixes: (asked) => largerCables(subject, cable, current, asked),
  });
}

function againstFuse(subject: LoadedRunSubject, fuse: Item, cable: Part, capacity: Capacity, judge: Judge): Outcome {
  const [rating] = judge.need([fuse, "rated-current"]);
  if (rating.value <= capacity.current.value) return judge.pass(rating, capacity.current, "its fuse");
  const { run } = subject;
  return judge.finding({
    what: `${fuse.id} lets ${formatFigure(rating)} through ${run.id} before it acts; ${cable.name} as it is laid carries ${formatFigure(capacity.current)}.`,
    why: "A fuse above what the cable carries does not protect it from the other strings.",
    todo: enough(capacity, rating),
    spot: { thing: run, word: "cable" },
    value: rating,
    limit: capacity.current,
    related: [stated(fuse, "rated-current", rating), ...areaOf(cable, judge)],
    fixes: (asked) => largerCables(subject, cable, rating, asked),
  });
}

function areaOf(cable: Part, judge: Judge) {
  const area = judge.quantity(cable, "conductor-area");
  return area ? [stated(cable, "conductor-area", area)] : [];
}

/** What size would do, as the run is laid. */
function enough({ column, factors }: Capacity, current: Figure): string {
  const size = smallestSizeForCurrent(column, factors, current.value);
  if (size === undefined) return "Lay it where the air is cooler, or apart from other circuits.";
  return `Laid like this it takes ${formatValue(size, "area", "mm2")}; cooler air or fewer circuits beside it help too.`;
}

function largerCables(subject: LoadedRunSubject, cable: Part, current: Figure, judge: Judge): readonly Fix[] {
  const type = wordOf(cable, "type");
  return partFixes(judge, {
    thing: subject.run,
    properties: [],
    preview: (part) => {
      if (wordOf(part, "type") !== type) return undefined;
      const iz = capacityIn(subject.run, part, judge);
      if (!iz || iz.value < current.value) return undefined;
      return `carries ${formatFigure(iz)}, ${percent(current.value / iz.value)}`;
    },
    order: (part) => areaFigure(part)?.value ?? 0,
  });
}

function areaFigure(part: Part): Given | undefined {
  return given(part, "conductor-area");
}

function capacityIn(run: Run, cable: Part, judge: Judge): Derived | undefined {
  try {
    return capacityOf(run, cable, judge).current;
  } catch (error) {
    if (error instanceof NotKnown) return undefined;
    throw error;
  }
}
