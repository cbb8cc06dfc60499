import { wordOf } from "../design/facts.js";
import { formatApart } from "../physics/working.js";
import { highestOf } from "./array-figures.js";
import { liveRuns, type RunSubject, runOf } from "./array-runs.js";
import { strongerParts } from "./part-fixes.js";
import { stated } from "./phrases.js";
import { rule } from "./rule.js";
import { cableOf } from "./run-facts.js";

export const dcCableVoltage = rule<RunSubject>({
  id: "dc-cable-voltage",
  section: "D.c. cables, connectors, isolation",
  severity: "error",
  title: "Each cable of the array is rated for the array's voltage on the coldest morning.",
  what: "Holds the rated d.c. voltage of the cable of each run, leads of surge protective devices included, against the highest open-circuit voltage of the array that it is joined to.",
  why: "A cable for a.c. circuits is often rated far below what a string reaches in the cold. Its insulation then fails years later, as a fault to earth that no fuse clears.",
  sources: {
    gb: [
      { title: "BS 7671:2018, section 712", clause: "equipment selected for UOC MAX", basis: "memory" },
      { title: "EN 50618", clause: "rated d.c. voltage of PV cables", basis: "memory" },
    ],
    iec: [
      { title: "IEC 62548-1", clause: "cables selected for the maximum array voltage", basis: "memory" },
      { title: "IEC 62930", clause: "rated d.c. voltage of PV cables", basis: "memory" },
    ],
  },
  examples: {
    holds: `string S1 is 11 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 14 m of Solar4
`,
    breaks: `part Flex4 is cable {
    conductor-area: 4 mm2  conductor-class: class-5
    type: singles  insulation: thermoplastic-70  rated-dc-voltage: 450 V
}
string S1 is 11 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 14 m of Flex4
`,
  },
  subjects: liveRuns,
  thing: runOf,
  judge: ({ run, array }, judge) => {
    const cable = cableOf(run);
    const [rated] = judge.need([cable, "rated-dc-voltage"]);
    const { string, voltage } = highestOf(array, judge);
    if (voltage.value <= rated.value) return judge.pass(voltage, rated, cable.name);
    const [reached, stands] = formatApart(voltage, rated);
    return judge.finding({
      what: `${run.id} is laid in ${cable.name} for ${stands} d.c.; ${string.id} reaches ${reached} in the cold.`,
      why: "Above its rated voltage a cable's insulation is not proven, and what it fails to is earth.",
      todo: "Lay a cable that is rated for more, such as a PV cable.",
      spot: { thing: run, word: "cable" },
      value: voltage,
      limit: rated,
      related: [stated(cable, "rated-dc-voltage", rated)],
      fixes: (asked) =>
        strongerParts(asked, run, "rated-dc-voltage", voltage, ["conductor-area"]).filter(
          // A battery lead may be rated for the voltage and is still no cable for an array.
          (fix) => fix.does !== "set-cable" || wordOf(asked.parts.get(fix.cable) ?? cable, "type") !== "battery-lead",
        ),
    });
  },
});
