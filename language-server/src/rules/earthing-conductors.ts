import { fromSi } from "@sunwright/grammar";
import type { Plant } from "../circuit/plant.js";
import { label } from "../design/facts.js";
import type { Item, Run } from "../design/things.js";
import { earthingSystem } from "../physics/disconnection.js";
import { formatNumber } from "../physics/display.js";
import type { Figure, Given } from "../physics/figure.js";
import { bondingByEarthing, bondingByNeutral, protectiveSize } from "../physics/protective-size.js";
import { formatApart } from "../physics/working.js";
import { type Judge, NotKnown } from "./judge.js";
import { stated } from "./phrases.js";
import type { Fix, Outcome, Related } from "./rule.js";
import { cableOf } from "./run-facts.js";

/** Conductors of the earthing block and to electrodes, held against what the rule set's tables ask for. */

export interface SizeQuestion {
  readonly thing: Item;
  readonly property: string;
  /** As a sentence calls it: "the main earthing conductor". */
  readonly name: string;
  readonly why: string;
  /** Whether the sum of fault current, time and k may show that less than the table is enough. */
  readonly adiabatic?: boolean;
}

/** A cross-section of a thing against the least; the fix writes the next size of copper that holds. */
export function judgeSize(question: SizeQuestion, least: Figure, related: readonly Related[], judge: Judge): Outcome {
  const { thing, property, name, why, adiabatic } = question;
  const [area] = judge.need([thing, property]);
  if (area.value >= least.value * (1 - 1e-9)) return judge.passAtLeast(area, least, name);
  const [has, asks] = formatApart(area, least);
  return judge.finding({
    what: `${sentence(name)} is ${area.value > 0 ? has : "missing"}; ${asks} is the least here.`,
    why,
    todo: todoFor(area, adiabatic === true),
    spot: { thing, property },
    value: area,
    limit: least,
    related,
    fixes: () => nextSize(thing, property, least),
  });
}

function todoFor({ value }: Figure, adiabatic: boolean): string {
  if (value === 0) return "Lay one.";
  return adiabatic
    ? "Lay a larger one, or show by the adiabatic sum that less is enough and record it."
    : "Lay a larger one.";
}

/** Standard sizes of copper conductors, mm² (IEC 60228). */
const sizes = [1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95];

function nextSize(thing: Item, property: string, least: Figure): Fix[] {
  const needed = fromSi(least.value, "mm2");
  const size = sizes.find((candidate) => candidate >= needed * (1 - 1e-9));
  if (size === undefined) return [];
  const value = `${formatNumber(size)} mm2`;
  return [
    {
      title: `Lay ${value.replace("mm2", "mm²")} for ${property} of ${label(thing)}`,
      preview: `${formatNumber(size)} mm² where ${formatNumber(needed)} mm² is needed`,
      does: "set-property",
      thing,
      property,
      value,
    },
  ];
}

function sentence(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** Line conductors that a supply feeds first: its tails. The largest decides. Throws NotKnown where none is described. */
function tailsOf(plant: Plant, supply: Item, judge: Judge): { readonly run: Run; readonly area: Given } {
  const runs = plant.lines.filter(({ near }) => near.item === supply).map(({ run }) => run);
  const areas = judge.need(...runs.map((run) => [cableOf(run), "conductor-area"] as const));
  let found: { run: Run; area: Given } | undefined;
  for (const [index, area] of areas.entries())
    if (!found || area.value > found.area.value) found = { run: runs[index]!, area };
  if (!found) throw new NotKnown([], `no run from ${supply.id} says how large the line conductors are`);
  return found;
}

/** Least main earthing conductor: by the tails; towards an electrode that limits the fault current itself, far less. */
export function leastMainEarthing(
  plant: Plant,
  supply: Item,
  judge: Judge,
): { readonly least: Figure; readonly related: readonly Related[] } {
  const { protectiveSizes } = judge.ruleSet.ac;
  const earthing = judge.needWord(supply, "earthing");
  const related = [{ spot: { thing: supply, property: "earthing" }, message: `${supply.id}, earthing: ${earthing}` }];
  if (earthingSystem(earthing) !== "TN") return { least: protectiveSizes.toElectrode, related };
  const { run, area } = tailsOf(plant, supply, judge);
  const least = protectiveSize(area, protectiveSizes);
  return { least, related: [...related, stated(cableOf(run), "conductor-area", area)] };
}

/** Least main bonding conductor: by the supply's neutral where PME conditions hold, else by the earthing conductor. */
export function leastMainBonding(
  plant: Plant,
  earthing: Item,
  supply: Item,
  judge: Judge,
): { readonly least: Figure; readonly related: readonly Related[] } {
  const { bonding } = judge.ruleSet.ac.protectiveSizes;
  if (judge.needWord(supply, "earthing") === "TN-C-S" && bonding.byNeutral) {
    const [neutral] = judge.need([earthing, "supply-neutral"]);
    const least = bondingByNeutral(neutral, bonding);
    if (least) return { least, related: [stated(earthing, "supply-neutral", neutral)] };
  }
  const { least, related } = leastMainEarthing(plant, supply, judge);
  return { least: bondingByEarthing(least, bonding), related };
}
