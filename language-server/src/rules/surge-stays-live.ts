import type { SurgeTap } from "../circuit/array.js";
import { formatFigure } from "../physics/working.js";
import { stringColdVoltage } from "./array-figures.js";
import { type Judge, NotKnown } from "./judge.js";
import { idsOf } from "./phrases.js";
import { type Fix, rule } from "./rule.js";
import { type SurgeSubject, spdOf, surgeTaps } from "./surge-taps.js";

export const surgeStaysLive = rule<SurgeSubject>({
  id: "surge-stays-live",
  section: "D.c. cables, connectors, isolation",
  severity: "warning",
  title: "Each surge protective device can be made dead for changing it.",
  what: "Follows the circuit from each surge protective device of the array to every string that it is joined to, and looks for an isolator on each way that opens both conductors.",
  why: "A surge protective device wears out and is changed. One that is tapped off on the array side of the isolator stays at the array's voltage in daylight, whatever is switched off.",
  sources: {
    gb: [{ title: "practice of the trade: no published ruling on the side was found", basis: "practice" }],
    iec: [{ title: "practice of the trade: no published ruling on the side was found", basis: "practice" }],
  },
  examples: {
    holds: `string S1 is 11 x Hollin430
isolator Q1 is RotaryDc32
spd F1 is SurgeDc800
inverter INV is Brook4
run W1 from S1 to Q1: 9 m of Solar4
run W2 from Q1 to INV.pv1: 1.2 m of Solar4
run W3 from Q1 to F1: 0.3 m of Solar4
`,
    breaks: `string S1 is 11 x Hollin430
isolator Q1 is RotaryDc32
spd F1 is SurgeDc800
inverter INV is Brook4
run W1 from S1 to Q1: 9 m of Solar4
run W2 from Q1 to INV.pv1: 1.2 m of Solar4
run W3 from Q1.in to F1: 0.3 m of Solar4
`,
  },
  subjects: surgeTaps,
  thing: spdOf,
  judge: ({ tap, array }, judge) => {
    if (array.strings.length === 0) return judge.notApplicable("no string feeds it");
    const { spd, run, isolatedBy } = tap;
    const poles = isolatedBy.map((device) => [device, judge.need([device, "poles"])[0].value] as const);
    const half = poles.filter(([, number]) => number < 2).map(([device]) => device);
    if (isolatedBy.length > 0 && half.length === 0) return judge.holds("an isolator between it and every string");
    const live = array.strings.map(({ string }) => string);
    return judge.finding({
      what: `${spd.id} is joined to ${idsOf(live)} with ${half.length > 0 ? `one pole of ${idsOf(half)}` : "no isolator"} between: it stays live${upTo(live, judge)} whatever is switched off.`,
      why: "Its cartridge is changed one day, and then there is no way to make it dead in daylight.",
      todo:
        half.length > 0
          ? "Use an isolator that opens both conductors."
          : "Tap it off on the inverter side of the isolator; where it must stay at the array, give it an isolator, or keep it and put it on the live list and its label.",
      spot: run ? { thing: run, word: run.from?.item === spd ? "to" : "from" } : { thing: spd, word: "name" },
      related: [{ spot: { thing: spd, word: "name" }, message: "stays live" }],
      fixes: () => (half.length > 0 ? [] : deadSide(tap)),
    });
  },
});

function upTo(strings: readonly SurgeTap["spd"][], judge: Judge): string {
  try {
    const voltages = strings.map((string) => stringColdVoltage(string, judge));
    const highest = voltages.reduce((most, each) => (each.value > most.value ? each : most));
    return `, at up to ${formatFigure(highest)},`;
  } catch (error) {
    if (error instanceof NotKnown) return "";
    throw error;
  }
}

/** The tee moved to the other side of the isolator that it sits at. */
function deadSide({ spd, run, at }: SurgeTap): Fix[] {
  if (!run || at?.item.row?.through !== "opens") return [];
  if (run.from?.item !== at.item && run.to?.item !== at.item) return [];
  const other = at.name === "in" ? "out" : "in";
  const terminal = `${at.item.id}.${other}`;
  return [
    {
      title: `Tap ${spd.id} off at ${terminal}`,
      preview: `${spd.id} is dead once ${at.item.id} is open`,
      does: "set-end",
      thing: run,
      end: run.from?.item === spd ? "to" : "from",
      terminal,
    },
  ];
}
