import { formatApart, formatFigure } from "../physics/working.js";
import { arrayMaximumCurrent, highestOf } from "./array-figures.js";
import type { Judge } from "./judge.js";
import { idsOf, stated } from "./phrases.js";
import { type Outcome, rule } from "./rule.js";
import { eachOf } from "./several.js";
import { acRating } from "./surge-ac-rating.js";
import { type AcSurgeSubject, acSurgeTaps } from "./surge-ac-taps.js";
import { surgeFixes } from "./surge-choice.js";
import { protectedBy } from "./surge-load.js";
import { type SurgeSubject, spdOf, surgeTaps } from "./surge-taps.js";

export const surgeRating = rule<SurgeSubject | AcSurgeSubject>({
  id: "surge-rating",
  section: "Surge",
  severity: "error",
  title:
    "Each surge protective device stands the array or the supply, and lets through less than what it protects withstands.",
  what: "Holds the highest continuous voltage UCPV of the device against the array's open-circuit voltage in the cold, its short-circuit rating against what all strings can give together, and its protection level against 80 % of the impulse withstand voltage of what lies within its reach: the inverter, the modules, or both. Where a sheet does not state an impulse withstand voltage, the least that the standard asks of such equipment is taken, and listed as assumed. On the a.c. side the same three figures are held against the voltage of the supply, the fault current where the device stands, and the grid port that withstands least.",
  why: "A device whose continuous voltage is exceeded heats up and burns, with the array feeding the fire. One that lets through more than the inverter withstands does not protect it.",
  sources: {
    gb: [
      { title: "CLC/TS 50539-12", clause: "UCPV at least UOC MAX, ISCPV at least ISC MAX", basis: "read" },
      {
        title: "IEC 61643-12",
        clause: "protection level at most 80 % of the impulse withstand voltage",
        basis: "read",
      },
      { title: "IEC 60364-7-712", clause: "impulse withstand voltages", basis: "memory" },
      { title: "IEC 60364-5-53", clause: "534.4.4, Uc, Up and short-circuit rating of a.c. devices", basis: "memory" },
    ],
    iec: [
      { title: "CLC/TS 50539-12", clause: "UCPV at least UOC MAX, ISCPV at least ISC MAX", basis: "read" },
      {
        title: "IEC 61643-12",
        clause: "protection level at most 80 % of the impulse withstand voltage",
        basis: "read",
      },
      { title: "IEC 60364-7-712", clause: "impulse withstand voltages", basis: "memory" },
      { title: "IEC 60364-5-53", clause: "534.4.4, Uc, Up and short-circuit rating of a.c. devices", basis: "memory" },
    ],
  },
  examples: {
    holds: `string S1 is 11 x Hollin430
isolator Q1 is RotaryDc32
spd F1 is SurgeDc800
inverter INV is Brook4
run W1 from S1 to Q1: 8 m of Solar4
run W2 from Q1 to INV.pv1: 1.2 m of Solar4
run W3 from Q1 to F1: 0.3 m of Solar4
`,
    breaks: `part SurgeDc450 is spd {
    supply: dc  type: type-2  backup-fuse-needed: no
    max-continuous-voltage: 450 V  protection-level: 1.8 kV  short-circuit-rating: 10 kA
}
string S1 is 11 x Hollin430
isolator Q1 is RotaryDc32
spd F1 is SurgeDc450
inverter INV is Brook4
run W1 from S1 to Q1: 8 m of Solar4
run W2 from Q1 to INV.pv1: 1.2 m of Solar4
run W3 from Q1 to F1: 0.3 m of Solar4
`,
  },
  subjects: surgeTaps,
  alsoInPlants: acSurgeTaps,
  thing: spdOf,
  judge: (subject, judge) =>
    "plant" in subject
      ? acRating(subject, judge)
      : eachOf(
          () => continuousVoltage(subject, judge),
          () => shortCircuit(subject, judge),
          () => protectionLevel(subject, judge),
        ),
});

function continuousVoltage(subject: SurgeSubject, judge: Judge): Outcome {
  const { spd } = subject.tap;
  const [rated] = judge.need([spd, "max-continuous-voltage"]);
  const { string, voltage } = highestOf(subject.array, judge);
  if (voltage.value <= rated.value) return judge.pass(voltage, rated, "continuous voltage");
  const [reached, stands] = formatApart(voltage, rated);
  return judge.finding({
    what: `${spd.id} stands ${stands} continuously; ${string.id} reaches ${reached} in the cold.`,
    why: "Above that it conducts without any surge, heats up and burns, and the array feeds the fire.",
    todo: `Use a device for at least ${reached}.`,
    spot: { thing: spd, word: "part" },
    value: voltage,
    limit: rated,
    related: [stated(spd, "max-continuous-voltage", rated)],
    fixes: (asked) => surgeFixes(subject, asked),
  });
}

function shortCircuit(subject: SurgeSubject, judge: Judge): Outcome {
  const { tap, array } = subject;
  const [rated] = judge.need([tap.spd, "short-circuit-rating"]);
  const current = arrayMaximumCurrent(array, judge);
  if (current.value <= rated.value) return judge.pass(current, rated, "short-circuit rating");
  const [reached, stands] = formatApart(current, rated);
  return judge.finding({
    what: `${tap.spd.id} is rated for ${stands} of short-circuit current; ${idsOf(array.strings.map(({ string }) => string))} may give ${reached}.`,
    why: "When it fails at the end of its life, its own disconnector could not part from the array.",
    todo: "Use a device with a higher short-circuit rating.",
    spot: { thing: tap.spd, word: "part" },
    value: current,
    limit: rated,
    related: [stated(tap.spd, "short-circuit-rating", rated)],
    fixes: (asked) => surgeFixes(subject, asked),
  });
}

function protectionLevel(subject: SurgeSubject, judge: Judge): Outcome[] {
  const { spd } = subject.tap;
  const [level] = judge.need([spd, "protection-level"]);
  return protectedBy(subject, judge).map(({ thing, name, withstand, highest }) => {
    if (level.value <= highest.value) return judge.pass(level, highest, name);
    const [lets, bound] = formatApart(level, highest);
    const isStated = withstand.origin.kind === "stated";
    return judge.finding({
      severity: "warning",
      what: `${spd.id} lets through ${lets}; for ${name}, ${isStated ? `which withstands ${formatFigure(withstand)}` : `of which at least ${formatFigure(withstand)} is asked`}, ${bound} is the most.`,
      why: "Its leads and reflections add to what it lets through, and what it should protect fails first.",
      todo: "Use a device with a lower protection level.",
      spot: { thing: spd, word: "part" },
      value: level,
      limit: highest,
      related: [
        stated(spd, "protection-level", level),
        ...(isStated ? [stated(thing, "impulse-withstand", withstand)] : []),
        ...judge.limitSet("surge-protection-factor", "the share of it that the site allows"),
      ],
      fixes: (asked) => surgeFixes(subject, asked),
    });
  });
}
