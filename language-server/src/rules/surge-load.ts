import type { PvArray } from "../circuit/array.js";
import type { Thing } from "../design/things.js";
import type { Derived, Given } from "../physics/figure.js";
import { highestProtectionLevel, impulseWithstand, type Protected } from "../physics/surge.js";
import { highestOf, moduleOf } from "./array-figures.js";
import { type Judge, NotKnown } from "./judge.js";
import type { SurgeSubject } from "./surge-taps.js";

/** What a surge protective device protects, and the highest protection level that does so. */
export interface ProtectedThing {
  readonly thing: Thing;
  readonly name: string;
  /** Impulse withstand voltage, V. */
  readonly withstand: Given;
  /** Up must not be above it, V. */
  readonly highest: Derived;
}

/**
 * What lies close enough to a device to be protected by it: the inverter, the modules, or both. Where neither is, or
 * a length is missing, the inverter counts: it is what the device was fitted for.
 */
export function protectedBy({ tap, array }: SurgeSubject, judge: Judge): ProtectedThing[] {
  const near = judge.limit("surge-second-distance").value;
  const { toInverter, toArray } = tap;
  const isAtArray = toArray !== undefined && toArray <= near;
  const isAtInverter = toInverter === undefined || toInverter <= near || !isAtArray;
  const things: ProtectedThing[] = [];
  if (array.inverter && isAtInverter) things.push(protect(array.inverter, array.inverter.id, "inverter", array, judge));
  if (isAtArray) {
    const module = moduleOf(highestOf(array, judge).string);
    things.push(protect(module, module.name, "moduleReinforced", array, judge));
  }
  return things;
}

function protect(thing: Thing, name: string, sort: Protected, array: PvArray, judge: Judge): ProtectedThing {
  const withstand = judge.quantity(thing, "impulse-withstand") ?? byTable(name, sort, array, judge);
  const highest = highestProtectionLevel(withstand, judge.limit("surge-protection-factor"));
  return { thing, name, withstand, highest };
}

/** What equipment for such an array must withstand; taken where its sheet does not say, and listed as assumed. */
function byTable(name: string, sort: Protected, array: PvArray, judge: Judge): Given {
  const { voltage } = highestOf(array, judge);
  const tabulated = impulseWithstand(judge.ruleSet.impulseWithstand, voltage.value, sort);
  if (!tabulated) throw new NotKnown([], `no impulse withstand voltage is tabulated for ${name} at this voltage`);
  const text = `${name}, impulse-withstand not stated: ${tabulated.origin.text}`;
  return { ...tabulated, origin: { kind: "assumed", text, source: tabulated.origin.source } };
}
