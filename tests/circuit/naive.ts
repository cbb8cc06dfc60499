import type { Circuit } from "../../language-server/src/circuit/circuit.js";
import { flagOf, given } from "../../language-server/src/design/facts.js";
import type { Item } from "../../language-server/src/design/things.js";

/**
 * The same questions answered the slow way, from the statement of the rules and not from the code: repeat "what touches
 * something live is live" until nothing changes, for every set of open devices and every position.
 */
export interface Naive {
  readonly terminals: readonly string[];
  readonly sources: readonly { readonly id: string; readonly terminal: number }[];
  readonly devices: readonly Item[];
  readonly changeovers: readonly Item[];
  /** Terminals that a source reaches by day with the grid; `open` holds bits of devices, `position` of changeovers. */
  reached(source: number, open: number, position: number): ReadonlySet<number>;
}

interface Joint {
  readonly a: number;
  readonly b: number;
  /** Bit of the device that opens it; -1 for none. */
  readonly device: number;
  readonly changeover: number;
  readonly position: number;
}

export function naive(circuit: Circuit): Naive {
  const terminals = [...circuit.terminals.keys()];
  const numberOf = new Map(terminals.map((id, index) => [id, index]));
  const itemsWithOpening = new Set<Item>();
  for (const { by, opens } of circuit.links) if (opens && by.is === "item") itemsWithOpening.add(by);
  for (const { inverter } of circuit.converters)
    if (flagOf(inverter, "built-in-dc-isolator")) itemsWithOpening.add(inverter);
  const devices = [...itemsWithOpening].filter(isRelied);
  const changeovers = [...itemsWithOpening].filter(({ kind }) => kind === "changeover");

  const joints: Joint[] = circuit.links.map(({ a, b, by, position }) => ({
    a: numberOf.get(a.id)!,
    b: numberOf.get(b.id)!,
    device: by.is === "item" ? devices.indexOf(by) : -1,
    changeover: by.is === "item" ? changeovers.indexOf(by) : -1,
    position: position === "grid" ? 0 : 1,
  }));
  const insides = circuit.converters.map(({ inverter, ports }) => ({
    device: devices.indexOf(inverter),
    ports: ports.map(({ terminal, kind }) => ({ terminal: numberOf.get(terminal.id)!, isTracker: kind === "tracker" })),
  }));
  return {
    terminals,
    sources: circuit.sources.map(({ id, terminal }) => ({ id, terminal: numberOf.get(terminal.id)! })),
    devices,
    changeovers,
    reached(source, open, position) {
      const live = new Set([numberOf.get(circuit.sources[source]!.terminal.id)!]);
      for (let before = -1; before !== live.size; ) {
        before = live.size;
        for (const joint of joints) {
          if (joint.device >= 0 && open & (1 << joint.device)) continue;
          if (joint.changeover >= 0 && ((position >> joint.changeover) & 1) !== joint.position) continue;
          if (live.has(joint.a)) live.add(joint.b);
          else if (live.has(joint.b)) live.add(joint.a);
        }
        for (const { device, ports } of insides) {
          const isOpen = device >= 0 && (open & (1 << device)) !== 0;
          const joined = ports.filter(({ isTracker }) => !(isTracker && isOpen));
          if (joined.some(({ terminal }) => live.has(terminal))) for (const { terminal } of joined) live.add(terminal);
        }
      }
      return live;
    },
  };
}

function isRelied(item: Item): boolean {
  if (item.kind === "changeover") return flagOf(item, "off-position") === true;
  return item.kind === "inverter" || (given(item, "poles")?.value ?? 0) >= 2;
}

/** Every inclusion-minimal set of devices that makes some terminals dead, by trying all sets. */
export function allMinimalSets(circuit: Naive, targets: readonly number[]): string[][] {
  const { devices, changeovers, sources } = circuit;
  const isDead = (open: number): boolean => {
    for (let position = 0; position < 1 << changeovers.length; position++)
      for (let source = 0; source < sources.length; source++) {
        const live = circuit.reached(source, open, position);
        if (targets.some((target) => live.has(target))) return false;
      }
    return true;
  };
  const minimal: number[] = [];
  const bySize = Array.from({ length: 1 << devices.length }, (_, open) => open).sort((a, b) => bits(a) - bits(b));
  for (const open of bySize)
    if (!minimal.some((smaller) => (smaller & open) === smaller) && isDead(open)) minimal.push(open);
  return minimal.map((open) => devices.filter((_, bit) => open & (1 << bit)).map(({ id }) => id));
}

function bits(value: number): number {
  let count = 0;
  for (let rest = value; rest; rest &= rest - 1) count++;
  return count;
}
