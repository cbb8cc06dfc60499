import { wordOf } from "../design/facts.js";
import { formatFigure } from "../physics/working.js";
import { liveRuns, type RunSubject, runOf } from "./array-runs.js";
import { partFixes } from "./part-fixes.js";
import { rule } from "./rule.js";
import { cableOf } from "./run-facts.js";

export const dcCableType = rule<RunSubject>({
  id: "dc-cable-type",
  section: "D.c. cables, connectors, isolation",
  severity: "warning",
  title: "What runs on the array or out of doors is PV cable.",
  what: "Looks at the sort of cable of each run that leaves a string or is said to run outdoors. Indoors any cable will do whose other checks hold; a run that does not say where it lies passes with a PV cable only.",
  why: "Sun, frost and ozone crack an ordinary sheath within a few summers, and the array keeps feeding the fault. PV cable has two layers of insulation that stand all three, so that a short circuit between the conductors is very unlikely.",
  sources: {
    gb: [
      { title: "BS 7671:2018, section 712", clause: "cables on the d.c. side and their erection", basis: "memory" },
      { title: "EN 50618", clause: "scope: cables of the d.c. side of PV systems, outdoors", basis: "memory" },
    ],
    iec: [
      { title: "IEC 62548-1", clause: "cables exposed to sun and weather", basis: "memory" },
      { title: "IEC 62930", clause: "scope: cables of the d.c. side of PV systems", basis: "memory" },
    ],
  },
  examples: {
    holds: `string S1 is 11 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 14 m of Solar4
`,
    breaks: `part Flex4 is cable {
    conductor-area: 4 mm2  conductor-class: class-5
    type: singles  insulation: thermoplastic-70  rated-dc-voltage: 900 V
}
string S1 is 11 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 14 m of Flex4
`,
  },
  subjects: liveRuns,
  thing: runOf,
  judge: ({ run }, judge) => {
    const leaves = [run.from, run.to].find((end) => end?.item.kind === "string");
    const place = judge.word(run, "place");
    if (!leaves && place !== undefined && place !== "outdoors")
      return judge.notApplicable("it runs neither on the array nor out of doors");
    const cable = cableOf(run);
    const type = judge.needWord(cable, "type");
    if (type === "pv") return judge.holds("its cable is PV cable");
    if (!leaves && place === undefined) return judge.unknown(run, "place");
    const where = leaves ? `on the array, at ${leaves.item.id}` : "out of doors";
    return judge.finding({
      what: `${run.id} runs ${where}, in ${cable.name}, which is of type ${type}.`,
      why: "Sun, heat and frost crack the sheath of a cable that is not made for them, and light keeps feeding the fault.",
      todo: leaves
        ? "Lay PV cable on the array."
        : "Lay PV cable here, or protect the cable and say so with place: indoors.",
      spot: { thing: run, word: "cable" },
      related: [{ spot: { thing: cable, property: "type" }, message: `${cable.name} is of type ${type}` }],
      fixes: (asked) => {
        const area = asked.quantity(cable, "conductor-area");
        return partFixes(asked, {
          thing: run,
          properties: [],
          preview: (part) => {
            const other = asked.quantity(part, "conductor-area");
            if (wordOf(part, "type") !== "pv" || !other || (area && other.value < area.value)) return undefined;
            return `PV cable, ${formatFigure(other)}`;
          },
          order: (part) => asked.quantity(part, "conductor-area")?.value ?? 0,
        });
      },
    });
  },
});
