import type { Zone } from "../circuit/array.js";
import { itemsOn } from "../circuit/feed.js";
import type { Installation } from "../circuit/installation.js";
import type { BoardView, Plant } from "../circuit/plant.js";
import { given, wordOf } from "../design/facts.js";
import type { LabelWord } from "../design/schema/common.js";
import type { Item, Run } from "../design/things.js";
import { hasMains } from "./mains.js";
import { lengthOf } from "./run-facts.js";

/** One row of the label schedule: which label goes on what. Text and source are the rule set's. */
export interface LabelRow {
  readonly label: LabelWord;
  readonly thing: Item | Run;
  /** More than one along a cable. */
  readonly quantity: number;
}

/** Which labels everything needs, in the order in which a person walks: supply, board, inverter, roof. */
export function neededLabels({ plants, zones }: Pick<Installation, "plants" | "zones">): LabelsByThing {
  const needed = new Map<Item | Run, LabelWord[]>();
  const add: Add = (thing, ...labels) => {
    const own = needed.get(thing);
    if (!own) needed.set(thing, [...labels]);
    else for (const label of labels) if (!own.includes(label)) own.push(label);
  };
  for (const plant of plants) if (hasMains(plant)) addPlant(plant, add);
  for (const zone of zones) addZone(zone, add);
  return needed;
}

export type LabelsByThing = ReadonlyMap<Item | Run, readonly LabelWord[]>;

/** The same as the rows of a schedule, for papers. */
export function labelSchedule(installation: Pick<Installation, "plants" | "zones">): LabelRow[] {
  return [...neededLabels(installation)].flatMap(([thing, labels]) =>
    labels.map((label) => ({ label, thing, quantity: quantityOf(label, thing) })),
  );
}

type Add = (thing: Item | Run, ...labels: readonly LabelWord[]) => void;

function addPlant(plant: Plant, add: Add): void {
  const ways = [
    ...plant.inverters.flatMap(({ grid }) => grid?.toSupply ?? []),
    ...plant.generators.flatMap(({ toSupply }) => toSupply ?? []),
  ];
  if (ways.length > 0) addGeneration(plant, ways.flatMap(itemsOn), add);
  for (const { inverter } of plant.inverters) add(inverter, "isolate-both-sides");
  for (const { battery } of plant.batteries) add(battery, "battery");
  for (const board of plant.boards) {
    if (board.feeds.some(({ root }) => root.item.kind === "backup")) add(board.item, "backup-supply");
    if (hasResidual(board)) add(board.item, "rcd-test");
  }
  for (const { spd } of plant.surge) add(spd, "surge-protection");
  for (const electrode of plant.electrodes) add(electrode, "electrode");
  if (plant.earthing && given(plant.earthing, "main-bonding")) add(plant.earthing, "bonding");
}

/** Whoever opens something between the supply and a generating unit must learn of the other one. */
function addGeneration(plant: Plant, passed: readonly Item[], add: Add): void {
  for (const supply of plant.supplies) add(supply, "multiple-supplies", "solar-and-battery-sign");
  for (const item of passed) if (item.kind === "board") add(item, "multiple-supplies");
  for (const meter of plant.meters) if (isSuppliers(meter)) add(meter, "multiple-supplies");
  for (const { grid } of plant.inverters)
    for (const isolator of grid?.isolators ?? [])
      if (isolator.kind === "isolator" && !isolator.parent) add(isolator, "ac-isolator", "multiple-supplies");
  const origin = plant.boards.find(({ feeds }) => feeds.some(({ root }) => root.item.kind === "supply"))?.item;
  const place = origin ?? plant.supplies[0];
  if (place) add(place, "circuit-diagram", "shutdown-procedure");
}

function isSuppliers(meter: Item): boolean {
  const measures = wordOf(meter, "measures");
  return measures === "import" || measures === "import-and-export";
}

function hasResidual({ rcds, circuits }: BoardView): boolean {
  return rcds.length > 0 || circuits.some(({ device }) => device.kind === "rcbo");
}

function addZone({ inverter, arrays }: Zone, add: Add): void {
  for (const { strings, devices, runs, surge } of arrays) {
    if (strings.length === 0) continue;
    if (inverter) add(inverter, "isolate-both-sides");
    for (const device of devices.keys()) {
      if (device.kind === "isolator") add(device, "dc-isolator", "live-in-daylight");
      if (device.kind === "combiner") add(device, "live-in-daylight");
    }
    for (const run of runs.keys()) if ((lengthOf(run)?.value ?? 0) >= shortest) add(run, "dc-cable");
    for (const { spd } of surge) add(spd, "surge-protection");
  }
  if (inverter && hasPlugs(inverter)) add(inverter, "dc-connector");
}

function hasPlugs(inverter: Item): boolean {
  return inverter.children.some((child) => child.kind === "tracker" && wordOf(child, "connection") === "plugs");
}

/** Cables are marked every 5 m to 10 m of straight run (MCS guide, read): one from 5 m on, then one every 10 m. */
const shortest = 5;
const furthest = 10;

function quantityOf(label: LabelWord, thing: Item | Run): number {
  if (label !== "dc-cable" || thing.is !== "run") return 1;
  return Math.max(1, Math.ceil((lengthOf(thing)?.value ?? 0) / furthest));
}
