import { flagOf, given, wordOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { counted } from "../physics/make.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { ifKnown } from "./ac-cables.js";
import { type Candidate, candidates, insertFixes } from "./added-device.js";
import { batteryOf, voltagesOf, type WiredBattery, wiredBatteries } from "./battery-figures.js";
import { firstLead, highest, isForDc, leadCurrents } from "./battery-guards.js";
import { bestOf } from "./best-of.js";
import type { Judge } from "./judge.js";
import { partFixes, percent } from "./part-fixes.js";
import { stated } from "./phrases.js";
import { ratedAs } from "./pole-arrangement.js";
import { type Finding, type Fix, type Outcome, rule } from "./rule.js";
import { eachOf } from "./several.js";

export const batteryIsolator = rule<WiredBattery>({
  id: "battery-isolator",
  section: "Battery and backup",
  severity: "error",
  title: "A switch at each battery opens both of its poles, made for d.c. that flows either way.",
  what: "Looks for a device that opens the way from the cells of each battery to the inverter: an isolator or breaker in the line, a fuse whose carrier is drawn out, or a switch built into the battery. Of those that are in the line one must hold in every respect: made for d.c., both poles in one movement, indifferent to the direction of the current, and rated for the battery's highest voltage and current.",
  why: "The terminals of a battery are never dead. Without a switch for both poles nobody can work on its leads or on the inverter. A battery's current flows both ways, so a switch that breaks it one way round only is wrong half of the time.",
  sources: {
    gb: [
      { title: "BS 7671:2018", clause: "462.1 and 537.2, isolation of every source", basis: "memory" },
      { title: "IEC 62485-5", clause: "isolation of the battery from its installation", basis: "memory" },
    ],
    iec: [
      { title: "IEC 60364-4-46", clause: "462.1, isolation of every source", basis: "memory" },
      { title: "IEC 62485-5", clause: "isolation of the battery from its installation", basis: "memory" },
    ],
  },
  examples: {
    holds: `inverter INV is Fell5
battery BAT is Stack51
isolator Q1 is LeverDc200
run W1 from BAT to Q1: 0.3 m of Lead35
run W2 from Q1 to INV.battery: 1.5 m of Lead35
`,
    breaks: `inverter INV is Fell5
battery BAT is Stack51
run W1 from BAT to INV.battery: 1.8 m of Lead35
`,
  },
  over: "plant",
  subjects: wiredBatteries,
  thing: batteryOf,
  judge: (wired, judge) => {
    const { battery, isolators } = wired.view;
    if (isolators.length === 0) return none(wired, judge);
    if (isolators.includes(battery)) return judge.holds("a switch built into the battery");
    return bestOf(isolators, (device) => eachOf(...comparisons(device, wired, judge)));
  },
});

function none(wired: WiredBattery, judge: Judge): Outcome {
  const { view, port } = wired;
  const { battery } = view;
  const builtIn = judge.flag(battery, "built-in-isolator");
  const name = battery.part?.name ?? battery.id;
  return judge.finding({
    what: `Nothing between ${battery.id} and ${port.id} opens both poles, and ${name} ${builtIn === false ? "has no switch of its own" : "states no switch of its own"}.`,
    why: "The leads and the inverter stay live from the battery whatever is switched off.",
    todo:
      builtIn === false
        ? "Put a d.c. isolator in at the battery."
        : "Put a d.c. isolator in at the battery; if its sheet names one inside, say built-in-isolator: yes.",
    spot: { thing: battery, word: "name" },
    related: [{ spot: { thing: port, word: "name" }, message: "the port it is wired to" }],
    fixes: (asked) => insertFixes(firstLead(wired), batterySwitches(wired, asked)),
  });
}

/** Isolators in scope that would hold in the leads of a battery. */
export function batterySwitches(wired: WiredBattery, judge: Judge): Candidate[] {
  return candidates(judge, ["isolator"], (device) => eachOf(...comparisons(device, wired, judge)));
}

function comparisons(device: Item, wired: WiredBattery, judge: Judge): (() => Outcome | undefined)[] {
  // The carrier of a fuse is only declared as a means of isolation where it opens every live conductor.
  if (device.kind === "fuse") return [() => judge.holds(`the carrier of ${device.id} is drawn out`)];
  return [
    () => directCurrent(device, wired, judge),
    () => poles(device, wired, judge),
    () => eitherWay(device, wired, judge),
    () => ratedVoltage(device, wired, judge),
    () => ratedCurrent(device, wired, judge),
  ];
}

type Said = Pick<Finding, "what" | "why" | "todo"> & Partial<Finding>;

function finding(device: Item, wired: WiredBattery, said: Said, judge: Judge): Finding {
  return judge.finding({
    spot: { thing: device, word: "part" },
    fixes: (asked) => switchFixes(device, wired, asked),
    ...said,
  });
}

/** Other devices of its kind in scope that hold in every respect. */
function switchFixes(device: Item, wired: WiredBattery, judge: Judge): readonly Fix[] {
  const needs = ifKnown(() => ({
    voltage: voltagesOf(wired.view.battery, judge).highest,
    current: highest(leadCurrents(wired, judge).map((each) => each.current)),
  }));
  if (!needs || device.kind !== "isolator") return [];
  return partFixes(judge, {
    thing: device,
    properties: ["supply", "poles", "rated-voltage", "rated-current", "polarity-sensitive", "opens-all-poles-together"],
    preview: (part) => {
      const volts = given(part, "rated-voltage");
      const amperes = given(part, "rated-current");
      if (!volts || !amperes || wordOf(part, "supply") !== "dc" || (given(part, "poles")?.value ?? 0) < 2)
        return undefined;
      if (flagOf(part, "polarity-sensitive") !== false || flagOf(part, "opens-all-poles-together") === false)
        return undefined;
      if (volts.value < needs.voltage.value || amperes.value < needs.current.value) return undefined;
      const share = Math.max(needs.voltage.value / volts.value, needs.current.value / amperes.value);
      return `${formatFigure(volts)} and ${formatFigure(amperes)}, ${percent(share)}`;
    },
    order: (part) => given(part, "rated-current")?.value ?? 0,
  });
}

function directCurrent(device: Item, wired: WiredBattery, judge: Judge): Outcome {
  const { view } = wired;
  const isDc = isForDc(device);
  if (isDc === undefined) return judge.unknown(device, "supply");
  if (isDc) return judge.holds(`${device.id} is made for d.c.`);
  return finding(
    device,
    wired,
    {
      what: `${device.id} is made for a.c. and opens ${view.battery.id}.`,
      why: "A d.c. arc does not go out at the next zero crossing: there is none.",
      todo: "Use an isolator for the battery's d.c. voltage.",
      related: [{ spot: { thing: device, property: "supply" }, message: `${device.id}, made for a.c.` }],
    },
    judge,
  );
}

const both = counted("N", 2, "poles of a battery");

function poles(device: Item, wired: WiredBattery, judge: Judge): Outcome {
  const { view } = wired;
  const [number] = judge.need([device, "poles"]);
  if (judge.flag(device, "opens-all-poles-together") === false)
    return finding(
      device,
      wired,
      {
        what: `${device.id} does not open its poles in one movement.`,
        why: "Between the two movements one pole alone breaks the current, and the other keeps the far side live.",
        todo: "Use an isolator whose poles are coupled.",
        related: [{ spot: { thing: device, property: "opens-all-poles-together" }, message: `${device.id}: no` }],
      },
      judge,
    );
  if (number.value >= both.value) return judge.passAtLeast(number, both, `${device.id}, poles`);
  return finding(
    device,
    wired,
    {
      what: `${device.id} opens ${number.value} of the 2 poles of ${view.battery.id}.`,
      why: "The pole that stays joined keeps the far side live.",
      todo: "Use an isolator that opens both poles in one movement.",
      value: number,
      limit: both,
      related: [stated(device, "poles", number)],
    },
    judge,
  );
}

/** A switch that wants its supply on one side is on the wrong side while the battery is charged, or while it feeds. */
function eitherWay(device: Item, wired: WiredBattery, judge: Judge): Outcome {
  const { view } = wired;
  const property = device.kind === "isolator" ? "polarity-sensitive" : "power-flow";
  const isOneWay =
    device.kind === "isolator" ? judge.needFlag(device, property) : judge.needWord(device, property) === "one-way";
  if (!isOneWay) return judge.holds(`${device.id} breaks current either way`);
  return finding(
    device,
    wired,
    {
      what: `${device.id} breaks current one way round only; that of ${view.battery.id} flows both ways.`,
      why: "In the other direction it drives the arc away from its quenching chamber and may not break it.",
      todo: "Use a device that is indifferent to polarity.",
      related: [{ spot: { thing: device, property }, message: `${device.id}, ${property}` }],
    },
    judge,
  );
}

function ratedVoltage(device: Item, wired: WiredBattery, judge: Judge): Outcome {
  const { view } = wired;
  const [rated] = judge.need([ratedAs(device), "rated-voltage"]);
  const { highest: voltage } = voltagesOf(view.battery, judge);
  if (voltage.value <= rated.value) return judge.pass(voltage, rated, `${device.id}, voltage`);
  const [reaches, stands] = formatApart(voltage, rated);
  return finding(
    device,
    wired,
    {
      what: `${device.id} is rated ${stands} d.c.; ${view.battery.id} reaches ${reaches}.`,
      why: "Above its rated voltage a switch may not break the arc when it is opened.",
      todo: `Use a device for at least ${reaches} d.c.`,
      value: voltage,
      limit: rated,
      related: [stated(ratedAs(device), "rated-voltage", rated)],
    },
    judge,
  );
}

function ratedCurrent(device: Item, wired: WiredBattery, judge: Judge): Outcome {
  const [rated] = judge.need([ratedAs(device), "rated-current"]);
  const current = highest(leadCurrents(wired, judge).map((each) => each.current));
  if (current.value <= rated.value) return judge.pass(current, rated, `${device.id}, current`);
  const [flows, stands] = formatApart(current, rated);
  return finding(
    device,
    wired,
    {
      what: `${device.id} is rated ${stands}; ${wired.view.battery.id} carries up to ${flows}.`,
      why: "Above its rated current a switch overheats when closed and may not break the current when it is opened.",
      todo: "Use a device that is rated for more.",
      value: current,
      limit: rated,
      related: [stated(ratedAs(device), "rated-current", rated)],
    },
    judge,
  );
}
