import type { Installation } from "../circuit/installation.js";
import type { Item, Reading, Run } from "../design/things.js";
import type { Source } from "../physics/figure.js";
import { formatFigure } from "../physics/working.js";
import type { Judge } from "./judge.js";
import { latestReadings } from "./readings.js";
import { type Outcome, rule } from "./rule.js";

const order: Source = {
  title: "IEC 62446-1",
  clause: "polarity is verified before strings are joined",
  basis: "memory",
};
const british: Source = { title: "BS 7671:2018", clause: "643.6, polarity", basis: "memory" };
const international: Source = { title: "IEC 60364-6", clause: "6.4.3.6, polarity", basis: "memory" };

/** A thing with the latest readings that tell its polarity. */
interface Subject {
  readonly target: Item | Run;
  readonly polarity?: Reading;
  readonly voltage?: Reading;
}

/** Polarity as measured is right. */
export const readingPolarity = rule<Subject>({
  id: "reading-polarity",
  section: "Earthing, grid, papers",
  severity: "error",
  title: "Measured polarity is correct.",
  what: "Reads the polarity that was noted, and the sign of a measured open-circuit voltage: a negative one means that plus and minus are exchanged somewhere between the modules and the meter. A voltage without a word on polarity is not taken for one. The latest reading counts.",
  why: "A string that is connected the wrong way round to an inverter, or in parallel to others, destroys what it is connected to at once.",
  sources: { gb: [order, british], iec: [order, international] },
  examples: {
    holds: `string S1 is 11 x Hollin430
measured S1 on 2026-06-12 { open-circuit-voltage: 425 V  polarity: correct }
`,
    breaks: `string S1 is 11 x Hollin430
measured S1 on 2026-06-12 { open-circuit-voltage: -425 V  polarity: correct }
`,
  },
  over: "installation",
  subjects: subjectsOf,
  thing: ({ target }) => target,
  judge: judgePolarity,
});

function subjectsOf(installation: Installation): Iterable<Subject> {
  const found = new Map<string, Subject>();
  for (const { reading, target } of latestReadings(installation, "polarity"))
    found.set(target.id, { target, polarity: newer(found.get(target.id)?.polarity, reading) });
  for (const { reading, target } of latestReadings(installation, "open-circuit-voltage")) {
    const known = found.get(target.id);
    found.set(target.id, { ...known, target, voltage: newer(known?.voltage, reading) });
  }
  return found.values();
}

function newer(one: Reading | undefined, other: Reading): Reading {
  return one && dayOf(one) > dayOf(other) ? one : other;
}

function dayOf({ declaration }: Reading): string {
  return declaration.day ?? "";
}

function judgePolarity({ target, polarity, voltage }: Subject, judge: Judge): Outcome {
  const read = voltage && judge.quantity(voltage, "open-circuit-voltage");
  const isNoted = polarity && (!voltage || dayOf(polarity) > dayOf(voltage));
  if (voltage && read && read.value < 0 && !isNoted)
    return reversed(target, `${formatFigure(read)} was read`, voltage, "open-circuit-voltage", judge);
  if (!polarity) return judge.unknown(voltage!, "polarity");
  if (judge.needWord(polarity, "polarity") === "correct") return judge.holds("correct");
  return reversed(target, "polarity was found reversed", polarity, "polarity", judge);
}

function reversed(target: Item | Run, what: string, reading: Reading, property: string, judge: Judge): Outcome {
  return judge.finding({
    what: `${target.id}: ${what}.`,
    why: "Connected like this it destroys the inverter's input, or drives the other strings backwards, at once.",
    todo: "Leave everything open. Find where plus and minus are exchanged, mend it, and measure again.",
    spot: { thing: reading, property },
  });
}
