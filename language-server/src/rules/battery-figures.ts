import type { BatteryView, Plant } from "../circuit/plant.js";
import type { Item } from "../design/things.js";
import { bankCurrent, bankVoltage, batteryCurrent, type Joined, limitedBatteryCurrent } from "../physics/battery.js";
import type { Derived, Figure, Given } from "../physics/figure.js";
import { type Judge, NotKnown } from "./judge.js";
import { needFacts } from "./run-facts.js";

/** Figures of batteries with their units together, which several rules ask for. */

/** A battery that is wired to a battery port, with all batteries of that port. */
export interface WiredBattery {
  readonly view: BatteryView;
  readonly port: Item;
  /** Itself among them; several are joined in parallel at the port. */
  readonly together: readonly Item[];
}

/** Batteries that reach a battery port. */
export function* wiredBatteries({ batteries, inverters }: Plant): Generator<WiredBattery> {
  const byPort = new Map(inverters.flatMap(({ storage }) => (storage ? [[storage.port, storage.batteries]] : [])));
  for (const view of batteries)
    if (view.port) yield { view, port: view.port, together: byPort.get(view.port) ?? [view.battery] };
}

export const batteryOf = ({ view }: WiredBattery): Item => view.battery;

/** Units of a battery. Throws NotKnown for a count that no battery can have. */
export function unitsOf(battery: Item, count = battery.count): Given {
  if (!Number.isInteger(count) || count < 1) throw new NotKnown([], "the number of units is no whole number from 1 up");
  const place = battery.declaration.count?.place;
  return {
    kind: "given",
    symbol: "n",
    value: count,
    dimension: "number",
    unit: "",
    origin: { kind: "stated", text: `${battery.id}, units`, place },
  };
}

/** How the units are joined; of a single unit either word is true. Throws NotKnown where several do not say. */
export function joinedOf(battery: Item, judge: Judge, units = unitsOf(battery)): Joined {
  if (units.value === 1) return "in-parallel";
  return judge.needWord(battery, "joined") as Joined;
}

export interface BankVoltages {
  readonly lowest: Derived;
  readonly highest: Derived;
}

/** Lowest and highest voltage of all units of a battery, V. */
export function voltagesOf(battery: Item, judge: Judge, units = unitsOf(battery)): BankVoltages {
  if (units.value > 1) needFacts(judge, [battery, "voltage-range"], [battery, "joined"]);
  const { low, high } = judge.needRange(battery, "voltage-range");
  const joined = joinedOf(battery, judge, units);
  return { lowest: bankVoltage(low, units, joined), highest: bankVoltage(high, units, joined) };
}

/** What all units of a battery deliver, or feed into a fault, A. */
export function currentOf(battery: Item, property: "max-current" | "fault-current", judge: Judge): Derived {
  const units = unitsOf(battery);
  if (units.value > 1) needFacts(judge, [battery, property], [battery, "joined"]);
  const [current] = judge.need([battery, property]);
  return bankCurrent(current, units, joinedOf(battery, judge, units));
}

/** Current (A) in the leads of a port while it draws its full power from a battery at its lowest voltage. */
export function dischargeCurrent(port: Item, lowestVoltage: Figure, judge: Judge): Derived {
  const stated = judge.quantity(port, "max-power");
  const power = stated ?? acPowerBeside(port, judge);
  const efficiency = judge.quantity(port, "efficiency") ?? judge.ruleSet.ac.batteryEfficiency;
  const byPower = batteryCurrent({ power, lowestVoltage, efficiency });
  const limit = judge.quantity(port, "max-current");
  return limit ? limitedBatteryCurrent(byPower, limit) : byPower;
}

/** Rated power of the inverter that a battery port belongs to, W. */
function acPowerBeside(port: Item, judge: Judge): Given {
  const grid = port.parent?.children.find(({ kind }) => kind === "ac");
  if (!grid) return judge.unknown(port, "max-power");
  return judge.need([grid, "rated-power"])[0];
}
