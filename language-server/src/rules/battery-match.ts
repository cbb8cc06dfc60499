import type { BatteryView, Plant } from "../circuit/plant.js";
import { batteriesTogether } from "../physics/batteries-together.js";
import type { Figure, Given } from "../physics/figure.js";
import { counted } from "../physics/make.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { fewerUnits, moreUnits, otherBatteries, otherCount } from "./battery-choice.js";
import { currentOf, joinedOf, unitsOf, voltagesOf, type WiredBattery, wiredBatteries } from "./battery-figures.js";
import type { Judge } from "./judge.js";
import { idsOf, stated } from "./phrases.js";
import { type Finding, type Outcome, rule } from "./rule.js";
import { eachOf } from "./several.js";

interface MatchSubject {
  readonly view: BatteryView;
  /** Undefined where the battery reaches no port. */
  readonly wired?: WiredBattery;
}

function* subjects(plant: Plant): Generator<MatchSubject> {
  const wired = new Map([...wiredBatteries(plant)].map((each) => [each.view, each] as const));
  for (const view of plant.batteries) yield { view, wired: wired.get(view) };
}

export const batteryMatch = rule<MatchSubject>({
  id: "battery-match",
  section: "Battery and backup",
  severity: "error",
  title: "Each battery fits the port it is wired to, in voltage and in current.",
  what: "Holds the lowest and highest voltage of the battery, its units in series counted, against the voltage range of the inverter's battery port; the highest current of the port against what the battery delivers and takes, batteries in parallel counted together; and the units in parallel against how many the maker allows.",
  why: "A battery above the port's range destroys the inverter, one below it never starts or is never emptied. A port that draws more than the battery is made for makes the battery switch itself off at full load, or wears it out.",
  sources: {
    gb: [
      { title: "BS 7671:2018", clause: "512.1, equipment suited to the voltage and current it meets", basis: "memory" },
      { title: "IEC 62619", clause: "batteries are used within their maker's operating region", basis: "memory" },
    ],
    iec: [
      { title: "IEC 60364-5-51", clause: "512.1, operating conditions", basis: "memory" },
      { title: "IEC 62619", clause: "batteries are used within their maker's operating region", basis: "memory" },
    ],
  },
  examples: {
    holds: `inverter INV is Fell5
battery BAT is Stack51
run W1 from BAT to INV.battery: 1.8 m of Lead35
`,
    breaks: `part Tower200 is battery {
    nominal-voltage: 204.8 V  voltage-range: 179..230 V  energy: 10 kWh  max-current: 125 A  fault-current: 3 kA
}
inverter INV is Fell5
battery BAT is Tower200
run W1 from BAT to INV.battery: 1.8 m of Lead35
`,
  },
  over: "plant",
  subjects,
  thing: ({ view }) => view.battery,
  judge: ({ wired }, judge) => {
    if (!wired) return judge.notChecked("it is wired to no inverter");
    return eachOf(
      () => voltages(wired, judge),
      () => current(wired, judge),
      () => parallelUnits(wired, judge),
    );
  },
});

function voltages(wired: WiredBattery, judge: Judge): Outcome[] {
  const { view, port } = wired;
  const { battery } = view;
  const { low, high } = judge.needRange(port, "voltage-range");
  const { lowest, highest } = voltagesOf(battery, judge);
  const finding = (value: Figure, limit: Given, said: Pick<Finding, "what" | "why" | "todo" | "severity">): Finding =>
    judge.finding({
      ...said,
      spot: { thing: battery, word: battery.count > 1 ? "count" : "part" },
      value,
      limit,
      related: [stated(port, "voltage-range", limit)],
      fixes: (asked) => [...otherCount(wired, asked), ...otherBatteries(wired, asked)],
    });
  if (highest.value > high.value) {
    const [reaches, takes] = formatApart(highest, high);
    return [
      finding(highest, high, {
        what: `${battery.id} reaches ${reaches} when it is full; ${port.id} takes ${takes} at most.`,
        why: "Above its range the port may be destroyed, and the battery does not stop feeding it.",
        todo: "Use fewer units in series, or a battery for this port.",
      }),
    ];
  }
  const passes = [judge.pass(highest, high, "highest voltage")];
  if (lowest.value >= low.value) return [...passes, judge.passAtLeast(lowest, low, "lowest voltage")];
  if (highest.value < low.value) {
    const [reaches, starts] = formatApart(highest, low);
    return [
      finding(highest, low, {
        what: `${battery.id} reaches ${reaches} when it is full; ${port.id} asks for at least ${starts}.`,
        why: "The port never starts with it.",
        todo: "Use more units in series, or a battery for this port.",
      }),
    ];
  }
  const [falls, stops] = formatApart(lowest, low);
  return [
    ...passes,
    finding(lowest, low, {
      severity: "warning",
      what: `${battery.id} goes down to ${falls}; ${port.id} stops at ${stops}.`,
      why: "The rest of its energy is paid for and cannot be used.",
      todo: "Use more units in series, or a battery for this port.",
    }),
  ];
}

function current({ view, port, together }: WiredBattery, judge: Judge): Outcome | undefined {
  const { battery } = view;
  if (together[0] !== battery) return undefined;
  const [asked] = judge.need([port, "max-current"]);
  const each = together.map((one) => currentOf(one, "max-current", judge));
  const made = each.length === 1 ? each[0]! : batteriesTogether(each);
  if (asked.value <= made.value) return judge.pass(asked, made, "current");
  const [draws, stands] = formatApart(asked, made);
  return judge.finding({
    what: `${port.id} charges and discharges with up to ${draws}; ${idsOf(together)} ${together.length > 1 ? "are" : "is"} made for ${stands}.`,
    why: "At full load the battery protects itself by switching off, or is worn out before its time.",
    todo: "Add units in parallel where the maker allows it, or lock the port's current at less and state that as its max-current.",
    spot: { thing: battery, word: "part" },
    value: asked,
    limit: made,
    related: [stated(port, "max-current", asked)],
    fixes: (later) => (together.length > 1 ? [] : moreUnits(battery, asked, later)),
  });
}

function parallelUnits({ view, port, together }: WiredBattery, judge: Judge): Outcome | undefined {
  const { battery } = view;
  if (together[0] !== battery) return undefined;
  let number = 0;
  for (const one of together) number += joinedOf(one, judge) === "in-parallel" ? unitsOf(one).value : 1;
  if (number < 2) return undefined;
  const [most] = judge.need([battery, "max-units-in-parallel"]);
  const units = counted("Np", number, idsOf(together));
  if (units.value <= most.value) return judge.pass(units, most, "units in parallel");
  return judge.finding({
    what: `${number} units are in parallel at ${idsOf(together)}; the maker allows ${formatFigure(most)}.`,
    why: "Units share their current by their resistances: with more than the maker tried, one of them carries too much.",
    todo: "Use fewer units, or larger ones.",
    spot: { thing: battery, word: "count" },
    value: units,
    limit: most,
    related: [stated(battery, "max-units-in-parallel", most)],
    fixes: (later) => (together.length > 1 ? [] : fewerUnits(battery, port, most.value, later)),
  });
}
