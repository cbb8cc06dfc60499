import { formatApart, formatFigure } from "../physics/working.js";
import { candidates, insertFixes } from "./added-device.js";
import { batteryOf, voltagesOf, type WiredBattery, wiredBatteries } from "./battery-figures.js";
import {
  firstLead,
  type Guard,
  guardFixes,
  guardsOf,
  isForDc,
  type LeadCurrent,
  leadCurrents,
  leadFault,
  leadFixes,
  leadsOf,
} from "./battery-guards.js";
import { capacityOf } from "./cable-capacity.js";
import type { Judge } from "./judge.js";
import { stated } from "./phrases.js";
import { type Fix, type Outcome, rule } from "./rule.js";
import { cableOf } from "./run-facts.js";
import { eachOf } from "./several.js";

export const batteryProtection = rule<WiredBattery>({
  id: "battery-protection",
  section: "Battery and backup",
  severity: "error",
  title: "A d.c. fuse or breaker at each battery carries its current, protects its leads and breaks its fault current.",
  what: "Looks for a fuse or breaker on the way from the cells of each battery to the inverter, built in or in the line. Works out the current at the battery's lowest voltage and full power, and while it is charged with all that the port gives; holds it against the rating, the rating against what each lead carries as it is laid, the rated voltage against the battery's highest, and the breaking capacity against the fault current of its own units, or of all other batteries at the port where that is more. The efficiency of the inverter is assumed where its port does not state it.",
  why: "A battery drives thousands of amperes into a short circuit and is never switched off. What is made for a.c. only, or for less, burns instead of breaking it.",
  sources: {
    gb: [
      { title: "BS 7671:2018", clause: "433.1.1, Ib ≤ In ≤ Iz; 434.5.1, breaking capacity", basis: "memory" },
      { title: "IEC 62485-5", clause: "protection against short circuits of the battery", basis: "memory" },
    ],
    iec: [
      { title: "IEC 60364-4-43", clause: "433.1, Ib ≤ In ≤ Iz; 434.5.1, breaking capacity", basis: "memory" },
      { title: "IEC 62485-5", clause: "protection against short circuits of the battery", basis: "memory" },
    ],
  },
  examples: {
    holds: `inverter INV is Fell5
battery BAT is Stack51
fuse F1 is LinkBat125
run W1 from BAT to F1: 0.3 m of Lead35 { method: on-surface  ambient: 30 degC }
run W2 from F1 to INV.battery: 1.5 m of Lead35 { method: on-surface  ambient: 30 degC }
`,
    breaks: `part HouseFuse125 is fuse {
    rated-current: 125 A  rated-voltage: 400 V  breaking-capacity: 50 kA  category: gG  fused-poles: both  supply: ac
}
inverter INV is Fell5
battery BAT is Stack51
fuse F1 is HouseFuse125
run W1 from BAT to F1: 0.3 m of Lead35 { method: on-surface  ambient: 30 degC }
run W2 from F1 to INV.battery: 1.5 m of Lead35 { method: on-surface  ambient: 30 degC }
`,
  },
  over: "plant",
  subjects: wiredBatteries,
  thing: batteryOf,
  judge: (wired, judge) => {
    const guards = guardsOf(wired);
    if (guards.length === 0) return none(wired, judge);
    return eachOf(
      ...guards.flatMap((guard) => comparisons(guard, wired, judge)),
      ...leadsOf(wired).map((run) => () => lead(run, guards, wired, judge)),
    );
  },
});

function none(wired: WiredBattery, judge: Judge): Outcome {
  const { view, port } = wired;
  const { battery } = view;
  // What is written of one and cannot be read is not the same as none.
  judge.quantity(battery, "built-in-fuse");
  return judge.finding({
    what: `Nothing between the cells of ${battery.id} and ${port.id} acts on overcurrent, and ${battery.part?.name ?? battery.id} states no protection of its own.`,
    why: "A short circuit of the leads is fed with all that the cells give, and nothing ends it.",
    todo: "Put a d.c. fuse in at the battery; if its sheet names one inside, state its rating as built-in-fuse.",
    spot: { thing: battery, word: "name" },
    related: [{ spot: { thing: port, word: "name" }, message: "the port it is wired to" }],
    fixes: (asked) => addedFuses(wired, asked),
  });
}

/** Fuses in scope that would carry the battery's current, protect its leads and break its fault current. */
function addedFuses(wired: WiredBattery, judge: Judge): Fix[] {
  const some = candidates(judge, ["fuse"], (thing) => {
    const guard: Guard = { thing, rating: "rated-current", breaking: "breaking-capacity", isBuiltIn: false };
    return eachOf(
      ...comparisons(guard, wired, judge),
      ...leadsOf(wired).map((run) => () => lead(run, [guard], wired, judge)),
    );
  });
  return insertFixes(firstLead(wired), some);
}

type Comparison = () => Outcome | readonly Outcome[];

function comparisons(guard: Guard, wired: WiredBattery, judge: Judge): Comparison[] {
  const { thing, isBuiltIn } = guard;
  const rest = [() => load(guard, wired, judge), () => breakingCapacity(guard, wired, judge)];
  // What a maker builds into a battery is made for its voltage.
  if (isBuiltIn) return rest;
  const isDc = isForDc(thing);
  // A device for a.c. protects from nothing here whatever its figures are: one finding is enough.
  if (isDc === false) return [() => alternating(guard, wired, judge)];
  return [
    () => (isDc ? judge.holds(`${thing.id} is made for d.c.`) : judge.unknown(thing, "supply")),
    () => ratedVoltage(guard, wired, judge),
    ...rest,
  ];
}

function alternating(guard: Guard, wired: WiredBattery, judge: Judge): Outcome {
  const { thing } = guard;
  return judge.finding({
    what: `${thing.id} is made for a.c. and protects ${wired.view.battery.id}.`,
    why: "A d.c. arc passes no zero: a device that counts on one burns on, and the battery feeds it.",
    todo: "Use a fuse or breaker for the battery's d.c. voltage; where the sheet rates this one for d.c., say supply: dc.",
    spot: { thing, word: "part" },
    related: [{ spot: { thing, property: "supply" }, message: `${thing.id}, made for a.c.` }],
    fixes: (asked) => guardFixes(guard, wired, asked),
  });
}

function load(guard: Guard, wired: WiredBattery, judge: Judge): Outcome[] {
  const { thing, rating: property } = guard;
  const [rating] = judge.need([thing, property]);
  const currents = leadCurrents(wired, judge);
  const exceeding = currents.filter(({ current }) => current.value > rating.value);
  const passing = currents.filter(({ current }) => current.value <= rating.value);
  const outcomes: Outcome[] = passing.map(({ when, current }) => judge.pass(current, rating, `${thing.id}, ${when}`));
  const worst = exceeding.reduce<LeadCurrent | undefined>(
    (most, each) => (most && most.current.value >= each.current.value ? most : each),
    undefined,
  );
  if (!worst) return outcomes;
  const [flows, rated] = formatApart(worst.current, rating);
  const { battery } = wired.view;
  outcomes.push(
    judge.finding({
      what:
        worst.when === "charging"
          ? `${wired.port.id} charges ${battery.id} with up to ${flows}; ${nameOf(guard)} is rated ${rated}.`
          : `At full power and its lowest voltage ${battery.id} delivers ${flows}; ${nameOf(guard)} is rated ${rated}.`,
      why: "It opens at full load, or ages until it does.",
      todo: "Use the next rating, with leads that it protects; or lock the port's current at less and state that.",
      spot: guard.isBuiltIn ? { thing, property } : { thing, word: "part" },
      value: worst.current,
      limit: rating,
      related: [stated(thing, property, rating), { spot: { thing: wired.port, word: "name" }, message: "the port" }],
      fixes: (asked) => guardFixes(guard, wired, asked),
    }),
  );
  return outcomes;
}

function nameOf({ thing, isBuiltIn }: Guard): string {
  return isBuiltIn ? `the protection inside ${thing.id}` : thing.id;
}

function ratedVoltage(guard: Guard, wired: WiredBattery, judge: Judge): Outcome {
  const { thing } = guard;
  const [rated] = judge.need([thing, "rated-voltage"]);
  const { battery } = wired.view;
  const { highest } = voltagesOf(battery, judge);
  if (highest.value <= rated.value) return judge.pass(highest, rated, `${thing.id}, voltage`);
  const [reaches, stands] = formatApart(highest, rated);
  return judge.finding({
    what: `${thing.id} is rated ${stands} d.c.; ${battery.id} reaches ${reaches}.`,
    why: "Above its voltage it may not put out the arc when it acts.",
    todo: `Use a device for at least ${reaches} d.c.`,
    spot: { thing, word: "part" },
    value: highest,
    limit: rated,
    related: [stated(thing, "rated-voltage", rated)],
    fixes: (asked) => guardFixes(guard, wired, asked),
  });
}

function breakingCapacity(guard: Guard, wired: WiredBattery, judge: Judge): Outcome {
  const { thing, breaking: property } = guard;
  const [breaks] = judge.need([thing, property]);
  const fault = leadFault(wired, judge);
  if (fault.value <= breaks.value) return judge.pass(fault, breaks, `${nameOf(guard)}, breaking capacity`);
  const [flows, capacity] = formatApart(fault, breaks);
  return judge.finding({
    what: `${nameOf(guard)} breaks ${capacity}; a short circuit there carries ${flows}.`,
    why: "It cannot end such a fault and may burst trying.",
    todo: "Use a device of higher breaking capacity at the battery.",
    spot: guard.isBuiltIn ? { thing, property } : { thing, word: "part" },
    value: fault,
    limit: breaks,
    related: [
      stated(thing, property, breaks),
      { spot: { thing: wired.view.battery, word: "name" }, message: "feeds it" },
    ],
    fixes: (asked) => guardFixes(guard, wired, asked),
  });
}

function lead(
  run: Parameters<typeof leadFixes>[0],
  guards: readonly Guard[],
  wired: WiredBattery,
  judge: Judge,
): Outcome {
  const ratings = judge.need(...guards.map(({ thing, rating }) => [thing, rating] as const));
  // The smallest of several protects the whole way.
  const rating = ratings.reduce((least, each) => (each.value < least.value ? each : least));
  const guard = guards[ratings.indexOf(rating)]!;
  const { current: carries } = capacityOf(run, cableOf(run), judge);
  if (rating.value <= carries.value) return judge.pass(rating, carries, run.id);
  const [lets, stands] = formatApart(rating, carries);
  return judge.finding({
    what: `${run.id} carries ${stands} as it is laid; ${nameOf(guard)} lets ${lets} through.`,
    why: "The lead overheats before anything acts.",
    todo: `Lay a lead for at least ${formatFigure(rating)}, or lock the port's current at less and use a smaller fuse.`,
    spot: { thing: run, word: "cable" },
    value: rating,
    limit: carries,
    related: [
      stated(guard.thing, guard.rating, rating),
      { spot: { thing: wired.view.battery, word: "name" }, message: "feeds it" },
    ],
    fixes: (asked) => leadFixes(run, rating, asked),
  });
}
