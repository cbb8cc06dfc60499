import { formatValue } from "../physics/display.js";
import type { Figure } from "../physics/figure.js";
import { leadLength } from "../physics/lead-length.js";
import { formatApart } from "../physics/working.js";
import type { Judge } from "./judge.js";
import { stated } from "./phrases.js";
import { type Outcome, type Related, rule } from "./rule.js";
import { lengthOf } from "./run-facts.js";
import { eachOf } from "./several.js";
import { type AcSurgeSubject, acSurgeTaps } from "./surge-ac-taps.js";
import { type SurgeSubject, surgeTaps } from "./surge-taps.js";
import { isType1 } from "./surge-type-needed.js";

export const surgeLead = rule<AnySurge>({
  id: "surge-lead",
  section: "Surge",
  severity: "warning",
  title: "Leads of surge protective devices are short and their earth conductor is large enough.",
  what: "Takes the length of both leads of a device together, as stated, or as the run to it and its lead to the earth bar, and holds it against the rule set's limit. Holds the cross-section of its earth conductor against the least for its type.",
  why: "The voltage that a steep surge builds up along the leads adds to what the device itself lets through: about a kilovolt a metre, a figure from memory. Half a metre in all is the published limit.",
  sources: {
    gb: [
      { title: "BS 7671:2018, section 534", clause: "length of the connecting conductors", basis: "memory" },
      { title: "IEC 60364-5-53, section 534", clause: "total length of the connecting leads", basis: "read" },
      { title: "IEC 60364-5-53, section 534", clause: "cross-section of the earth conductor", basis: "memory" },
    ],
    iec: [
      { title: "IEC 60364-5-53, section 534", clause: "total length of the connecting leads", basis: "read" },
      { title: "IEC 60364-5-53, section 534", clause: "cross-section of the earth conductor", basis: "memory" },
    ],
  },
  examples: {
    holds: `string S1 is 11 x Hollin430
isolator Q1 is RotaryDc32
spd F1 is SurgeDc800 { lead-length: 0.4 m  earth-conductor: 6 mm2 }
inverter INV is Brook4
run W1 from S1 to Q1: 8 m of Solar4
run W2 from Q1 to INV.pv1: 1.2 m of Solar4
run W3 from Q1 to F1: 0.2 m of Solar4
`,
    breaks: `string S1 is 11 x Hollin430
isolator Q1 is RotaryDc32
spd F1 is SurgeDc800 { earth-lead-length: 0.3 m  earth-conductor: 2.5 mm2 }
inverter INV is Brook4
run W1 from S1 to Q1: 8 m of Solar4
run W2 from Q1 to INV.pv1: 1.2 m of Solar4
run W3 from Q1 to F1: 0.6 m of Solar4
`,
  },
  subjects: surgeTaps,
  alsoInPlants: acSurgeTaps,
  thing: ({ tap }) => tap.spd,
  judge: (subject, judge) =>
    eachOf(
      () => leads(subject, judge),
      () => earthConductor(subject, judge),
    ),
});

/** Leads and earth conductors are alike on both sides of an inverter. */
type AnySurge = SurgeSubject | AcSurgeSubject;

interface Leads {
  readonly length: Figure;
  readonly related: readonly Related[];
}

function leads(subject: AnySurge, judge: Judge): Outcome {
  const { spd, run } = subject.tap;
  const limit = judge.limit("surge-lead-length");
  const { length, related } = leadsOf(subject, limit.value, judge);
  if (length.value <= limit.value * (1 + 1e-9)) return judge.pass(length, limit, "leads");
  const [long, bound] = formatApart(length, limit);
  const statedHere = judge.knows(spd, "lead-length");
  return judge.finding({
    what: `The leads of ${spd.id} are ${long} long in all; ${bound} is the most.`,
    why: "The voltage along them adds to what the device lets through: its protection level no longer holds where it counts.",
    todo: "Move the device, or loop the conductors through its terminals.",
    spot: run && !statedHere ? { thing: run, word: "length" } : { thing: spd, property: "lead-length" },
    value: length,
    limit,
    related: [...related, ...judge.limitSet("surge-lead-length", "the site's own limit")],
  });
}

/** Both leads together. Half of them alone is enough to know where it is too long already. */
function leadsOf({ tap }: AnySurge, limit: number, judge: Judge): Leads {
  const { spd, run } = tap;
  const toLine = run && lengthOf(run);
  const both = judge.quantity(spd, "lead-length");
  if (both && !(toLine && toLine.value > both.value))
    return { length: both, related: [stated(spd, "lead-length", both)] };
  const toEarth = judge.quantity(spd, "earth-lead-length");
  const related: Related[] =
    run && toLine ? [{ spot: { thing: run, word: "length" }, message: `${run.id} is a lead of it` }] : [];
  if (toLine && toEarth)
    return { length: leadLength(toLine, toEarth), related: [...related, stated(spd, "earth-lead-length", toEarth)] };
  if (toLine && toLine.value > limit) return { length: toLine, related };
  return judge.unknown(spd, "lead-length");
}

function earthConductor({ tap }: AnySurge, judge: Judge): Outcome {
  const { spd } = tap;
  const [area] = judge.need([spd, "earth-conductor"]);
  const type = judge.needWord(spd, "type");
  const name = isType1(type) ? "surge-earth-conductor-type-1" : "surge-earth-conductor";
  const least = judge.limit(name);
  if (area.value >= least.value * (1 - 1e-9)) return judge.passAtLeast(area, least, "earth conductor");
  const [has, asks] = formatApart(area, least);
  const enough = formatValue(least.value, "area", "mm2");
  return judge.finding({
    what: `The earth conductor of ${spd.id} is ${has}; a ${type.replace("-", " ")} device asks for ${asks}.`,
    why: "It carries the whole surge: a thin one adds voltage and may melt.",
    todo: `Lay at least ${enough}.`,
    spot: { thing: spd, property: "earth-conductor" },
    value: area,
    limit: least,
    related: [
      { spot: { thing: spd, property: "type" }, message: `${spd.id}, type: ${type}` },
      ...judge.limitSet(name, "the site's own limit"),
    ],
    fixes: () => [
      {
        title: `Lay ${enough} of earth conductor to ${spd.id}`,
        preview: `earth conductor ${enough}`,
        does: "set-property",
        thing: spd,
        property: "earth-conductor",
        value: enough.replace("mm²", "mm2"),
      },
    ],
  });
}
