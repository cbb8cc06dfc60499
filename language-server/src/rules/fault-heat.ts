import type { Line } from "../circuit/plant.js";
import { flagOf } from "../design/facts.js";
import type { Item, Part } from "../design/things.js";
import {
  adiabaticFactor,
  type ConductorPlace,
  earthFaultCurrent,
  energyLimit,
  letThrough,
  limitedLetThrough,
} from "../physics/fault-energy.js";
import type { Derived, Figure, Given } from "../physics/figure.js";
import { type GridCircuit, timeOf } from "./disconnection-grid.js";
import { loopBehind } from "./earth-path.js";
import { type Judge, NotKnown } from "./judge.js";
import { MissingFacts } from "./missing-facts.js";
import { largestLoopOf, operatingCurrentOf } from "./overcurrent-operation.js";
import { residualAlong, type SupplyWay, supplyWay } from "./supply-way.js";

/** How much a fault to earth heats a protective conductor before it is disconnected. */

interface Fault {
  readonly device: Item;
  readonly voltage: Given;
  readonly time: Given;
  /** With the fault right behind the device, where most current flows. */
  readonly current: Derived;
  /** The way to the far end, where least does. */
  readonly way: SupplyWay;
}

/** The most that is let through (A²s) by a fault anywhere along a run. Throws NotKnown where nothing disconnects it. */
export function letThroughOf(circuit: GridCircuit, line: Line, judge: Judge): Derived {
  const { plant, device } = circuit;
  const near = supplyWay(plant, line.near);
  const far = supplyWay(plant, line.far);
  if (!near || !far) throw new NotKnown([], `no supply reaches ${line.run.id}`);
  const missing = new MissingFacts();
  const timing = missing.orElse(() => timeOf(circuit, judge));
  const zs = missing.orElse(() => loopBehind(far, plant, judge));
  const least = missing.orElse(() => loopBehind(near, plant, judge));
  missing.stop();
  const current = earthFaultCurrent(timing!.voltage, least!);
  const fault: Fault = { device, ...timing!, current, way: far };
  const largest = largestLoopOf(device, fault.voltage, fault.time, judge);
  if (zs!.value <= largest.value) return byOvercurrent(fault, largest, judge);
  const residual = residualAlong(far);
  if (residual.length === 0)
    throw new NotKnown([], `${device.id} does not disconnect a fault at the end of ${line.run.id} in time`);
  return byResidual(fault, residual, judge);
}

/** A fuse lets most through where it only just operates in time; a circuit-breaker where most current flows. */
function byOvercurrent(fault: Fault, largest: Figure, judge: Judge): Derived {
  if (fault.device.kind === "fuse") return letThrough(earthFaultCurrent(fault.voltage, largest), fault.time);
  return instantaneous(fault, judge);
}

function instantaneous({ device, current }: Fault, judge: Judge): Derived {
  const { energyLimits, instantaneousTime } = judge.ruleSet.ac;
  const energy = letThrough(current, instantaneousTime);
  const curve = judge.word(device, "curve");
  const breakingCapacity = judge.quantity(device, "breaking-capacity");
  const rating = judge.quantity(device, "rated-current");
  if (!curve || !breakingCapacity || !rating) return energy;
  const breaker = { curve, breakingCapacity: breakingCapacity.value, rating: rating.value };
  const limit = energyLimit(energyLimits, breaker, current.value);
  return limit ? limitedLetThrough(energy, limit) : energy;
}

/** Up to what trips the device at once the RCD has to open; above, the device does. */
function byResidual(fault: Fault, residual: readonly Item[], judge: Judge): Derived {
  const isDelayed = residual.every((device) => flagOf(device, "time-delayed") === true);
  const time = judge.limit(isDelayed ? "residual-trip-time-delayed" : "residual-trip-time");
  const { device, current } = fault;
  if (device.kind === "fuse") return letThrough(current, time);
  const operating = operatingCurrentOf(device, fault.time, judge);
  if (current.value < operating.value) return letThrough(current, time);
  const slow = letThrough(operating, time);
  const quick = instantaneous(fault, judge);
  return quick.value > slow.value ? quick : slow;
}

/** k of the conductor that heats. */
export function heatFactor(place: ConductorPlace, cable: Part, judge: Judge): Given {
  const insulation = judge.needWord(cable, "insulation");
  const found = adiabaticFactor(judge.ruleSet.ac.adiabaticFactors, place, insulation);
  if (found) return found;
  throw new NotKnown([], `${judge.ruleSet.title} gives no k for ${insulation}`);
}
