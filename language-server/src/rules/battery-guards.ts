import { runsOn } from "../circuit/feed.js";
import { given, wordOf } from "../design/facts.js";
import type { Item, Part, Run } from "../design/things.js";
import { faultCurrentOfLead } from "../physics/batteries-together.js";
import { limitedBatteryCurrent } from "../physics/battery.js";
import type { Derived, Figure } from "../physics/figure.js";
import { formatFigure } from "../physics/working.js";
import { ifKnown } from "./ac-cables.js";
import { sourceEnd } from "./added-device.js";
import { currentOf, dischargeCurrent, voltagesOf, type WiredBattery } from "./battery-figures.js";
import { capacityOf } from "./cable-capacity.js";
import type { Judge } from "./judge.js";
import { partFixes, percent } from "./part-fixes.js";
import type { CutRun, Fix } from "./rule.js";
import { cableOf } from "./run-facts.js";

/** What acts on overcurrent in the leads of a battery, and what it has to be fit for. */

/** A fuse or breaker in the line, or the protection built into a battery. Properties by name. */
export interface Guard {
  readonly thing: Item;
  readonly rating: "rated-current" | "built-in-fuse";
  readonly breaking: "breaking-capacity" | "built-in-breaking-capacity";
  readonly isBuiltIn: boolean;
}

/** From the cells outwards. */
export function guardsOf({ view }: WiredBattery): Guard[] {
  const { battery, protection } = view;
  const guards = protection.map(
    (thing): Guard => ({ thing, rating: "rated-current", breaking: "breaking-capacity", isBuiltIn: false }),
  );
  if (given(battery, "built-in-fuse"))
    guards.unshift({
      thing: battery,
      rating: "built-in-fuse",
      breaking: "built-in-breaking-capacity",
      isBuiltIn: true,
    });
  return guards;
}

/** The lead that leaves a battery: what protects it, or parts it, belongs there. */
export function firstLead({ view }: WiredBattery): CutRun[] {
  const hop = view.path?.hops.find(({ by }) => by.is === "run");
  if (hop?.by.is !== "run") return [];
  return [{ run: hop.by, source: sourceEnd(hop.by, hop.from.item) }];
}

/** Categories of fuse-links that are made for d.c. only. */
const dcCategories = new Set(["gPV", "gBat"]);

/** Whether a device or part is rated for d.c.; undefined where it does not say. */
export function isForDc(thing: Item | Part): boolean | undefined {
  if (thing.kind === "rcbo") return false;
  const supply = wordOf(thing, "supply");
  if (supply) return supply === "dc";
  return dcCategories.has(wordOf(thing, "category") ?? "") ? true : undefined;
}

/** A current that flows through the leads of a battery, and when. */
export interface LeadCurrent {
  readonly when: "discharging" | "charging";
  readonly current: Figure;
}

/**
 * Currents of a battery's leads, A: at full power and lowest voltage; and while it is charged with all that the port
 * gives, where that is more. Of several batteries at a port each may carry it all, up to its own limit.
 */
export function leadCurrents({ view, port, together }: WiredBattery, judge: Judge): LeadCurrent[] {
  const { battery } = view;
  const own =
    together.length > 1 && judge.knows(battery, "max-current") ? currentOf(battery, "max-current", judge) : undefined;
  const share = (current: Derived): Derived => (own ? limitedBatteryCurrent(current, own) : current);
  const discharging = share(dischargeCurrent(port, voltagesOf(battery, judge).lowest, judge));
  const currents: LeadCurrent[] = [{ when: "discharging", current: discharging }];
  const given = judge.quantity(port, "max-current");
  const charging = given && own && own.value < given.value ? own : given;
  if (charging && charging.value > discharging.value) currents.push({ when: "charging", current: charging });
  return currents;
}

/** Fault current that a device in the leads of a battery may have to break, A. */
export function leadFault({ view, together }: WiredBattery, judge: Judge): Derived {
  const { battery } = view;
  const others = together.filter((one) => one !== battery);
  return faultCurrentOfLead(
    currentOf(battery, "fault-current", judge),
    others.map((one) => currentOf(one, "fault-current", judge)),
  );
}

/** Runs between the cells of a battery and its port. */
export function leadsOf({ view }: WiredBattery): readonly Run[] {
  return view.path ? runsOn(view.path) : [];
}

/** Other devices in scope that hold in every respect. */
export function guardFixes({ thing, isBuiltIn }: Guard, wired: WiredBattery, judge: Judge): readonly Fix[] {
  if (isBuiltIn) return [];
  const needs = ifKnown(() => ({
    current: highest(leadCurrents(wired, judge).map(({ current }) => current)),
    voltage: voltagesOf(wired.view.battery, judge).highest,
    fault: leadFault(wired, judge),
    carries: Math.min(...leadsOf(wired).map((run) => capacityOf(run, cableOf(run), judge).current.value)),
  }));
  if (!needs) return [];
  return partFixes(judge, {
    thing,
    properties: ["rated-current", "rated-voltage", "breaking-capacity", "supply", "category"],
    preview: (part) => {
      const rating = given(part, "rated-current");
      const volts = given(part, "rated-voltage");
      const breaks = given(part, "breaking-capacity");
      if (!rating || !volts || !breaks || isForDc(part) !== true) return undefined;
      if (rating.value < needs.current.value || rating.value > needs.carries) return undefined;
      if (volts.value < needs.voltage.value || breaks.value < needs.fault.value) return undefined;
      return `${formatFigure(rating)}, ${percent(needs.current.value / rating.value)}; breaks ${formatFigure(breaks)}`;
    },
    order: (part) => given(part, "rated-current")?.value ?? 0,
  });
}

/** Other leads in scope that carry at least a rating, as the run is laid. */
export function leadFixes(run: Run, rating: Figure, judge: Judge): readonly Fix[] {
  const type = run.cable && wordOf(run.cable, "type");
  return partFixes(judge, {
    thing: run,
    properties: [],
    preview: (part) => {
      if (wordOf(part, "type") !== type) return undefined;
      const carries = ifKnown(() => capacityOf(run, part, judge).current);
      if (!carries || carries.value < rating.value) return undefined;
      return `carries ${formatFigure(carries)}, ${percent(rating.value / carries.value)}`;
    },
    order: (part) => given(part, "conductor-area")?.value ?? 0,
  });
}

export function highest(figures: readonly Figure[]): Figure {
  return figures.reduce((most, each) => (each.value > most.value ? each : most));
}
