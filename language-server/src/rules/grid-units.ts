import type { Terminal } from "../circuit/circuit.js";
import type { Path } from "../circuit/feed.js";
import type { Plant } from "../circuit/plant.js";
import type { Item } from "../design/things.js";
import { acCurrent, type LineCount } from "../physics/ac-current.js";
import { type LineCurrents, type LineLoad, lineCurrents } from "../physics/phase-currents.js";
import { lineOf, linesOf, unitName } from "./feeding-units.js";
import { type Judge, NotKnown } from "./judge.js";
import { MissingFacts } from "./missing-facts.js";
import type { NotChecked } from "./rule.js";
import { treeAt } from "./supply-way.js";

/** What a distributor counts: every unit that feeds into a supply, those that were there before included. */
export interface GridUnit {
  /** The grid port of an inverter, or the generating unit: it states power and phases. */
  readonly item: Item;
  readonly terminal: Terminal;
  readonly toSupply: Path;
}

/** Units that can feed into a supply. */
export function gridUnits(plant: Plant, supply: Item): GridUnit[] {
  const connections = [
    ...plant.inverters.flatMap(({ grid }) => (grid ? [{ item: grid.port, toSupply: grid.toSupply }] : [])),
    ...plant.generators.map(({ generator, toSupply }) => ({ item: generator, toSupply })),
  ];
  return connections.flatMap(({ item, toSupply }) =>
    toSupply?.to.item === supply ? [{ item, terminal: toSupply.from, toSupply }] : [],
  );
}

/** What people call a unit by. */
export function nameOfUnit({ terminal }: GridUnit): string {
  return unitName(terminal).id;
}

/**
 * Registered current of all units on each line of their supply, A: rated powers at its nominal voltage. Throws NotKnown
 * naming all that is missing.
 */
export function registeredCurrents(plant: Plant, supply: Item, units: readonly GridUnit[], judge: Judge): LineCurrents {
  const missing = new MissingFacts();
  const voltage = missing.orElse(() => judge.need([supply, "voltage"])[0]);
  const lines = missing.orElse(() => linesOf(supply, judge));
  const loads: LineLoad[] = [];
  for (const unit of units) {
    const load = missing.orElse(() => {
      needAll(judge, unit.item);
      return voltage && lines ? lineLoads(plant, unit, voltage, lines, judge) : [];
    });
    if (load) loads.push(...load);
  }
  const [unknown] = missing.outcomes();
  if (unknown) throw unknownOf(unknown);
  const currents = lines && lineCurrents(loads, lines);
  if (!currents) throw new NotKnown([], `a three-phase unit is wired to ${supply.id}, which has one phase`);
  return currents;
}

function needAll(judge: Judge, item: Item): void {
  judge.need([item, "rated-power"], [item, "phases"]);
}

function lineLoads(
  plant: Plant,
  { item, terminal, toSupply }: GridUnit,
  voltage: LineLoad["current"],
  supplyLines: LineCount,
  judge: Judge,
): LineLoad[] {
  const lines = linesOf(item, judge);
  const [power] = judge.need([item, "rated-power"]);
  const load: LineLoad = { current: acCurrent(power, voltage, lines), lines };
  const own = lines === 3 || supplyLines === 1 ? load : { ...load, line: lineOfUnit() };
  return Array.from({ length: unitsOf(item) }, () => own);

  function lineOfUnit() {
    return lineOf(treeAt(plant, toSupply.to), terminal) ?? judge.unknown(item, "phase");
  }
}

/** `inverter INV is 2 x Brook4` registers twice. Throws NotKnown for a count that nothing can have. */
function unitsOf(item: Item): number {
  const count = item.kind === "ac" ? (item.parent?.count ?? 1) : item.count;
  if (Number.isInteger(count) && count >= 1 && count <= 1000) return count;
  throw new NotKnown([], `the number of units that ${item.id} stands for is not known`);
}

function unknownOf({ missing, reason }: NotChecked): NotKnown {
  return new NotKnown(missing, reason);
}
