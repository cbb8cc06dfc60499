import type { Item, Run } from "../design/things.js";
import type { PvArray, Step, StringPath, SurgeTap } from "./array.js";
import { type Link, otherEnd, type Terminal } from "./circuit.js";

/** How a terminal is reached from the tracker: the link towards it. */
type Towards = Map<Terminal, { readonly link: Link; readonly next: Terminal }>;

/**
 * Follows one connected piece of the array side from its tracker outwards (shortest way first), and reads off each
 * string's way in, what feeds each run and device, and where surge protection is tapped.
 */
export function traceArray(region: readonly Terminal[], tracker: Terminal | undefined): PvArray {
  const stringTerminals = region.filter(({ item }) => item.kind === "string");
  const root = tracker ?? meetingPoint(region, stringTerminals);
  const towards = reachFrom(root);
  const strings: StringPath[] = [];
  const runs = new Map<Run, Item[]>();
  const devices = new Map<Item, Item[]>();

  for (const terminal of stringTerminals) {
    const steps = stepsTo(terminal, towards);
    strings.push({ string: terminal.item, steps });
    for (const step of steps) {
      if (step.is === "run") push(runs, step, terminal.item);
      else push(devices, step, terminal.item);
    }
  }
  const landing: Run[] = [];
  for (const link of root.links) if (link.by.is === "run") landing.push(link.by);

  return {
    id: tracker?.id ?? strings[0]?.string.id ?? root.id,
    inverter: tracker?.item.parent,
    tracker: tracker?.item,
    strings,
    surge: region
      .filter(({ item }) => item.kind === "spd")
      .map((tap) => surgeTap(tap, towards, devices, stringTerminals, tracker)),
    runs,
    devices,
    landing: tracker ? landing : [],
    terminals: region,
  };
}

/**
 * Where strings that reach no tracker yet will be wired on from: the point that lies furthest from all of them. A lead
 * to a surge protective device leads nowhere further.
 */
function meetingPoint(region: readonly Terminal[], strings: readonly Terminal[]): Terminal {
  let last = strings[0] ?? region[0]!;
  const queue = [...strings];
  const seen = new Set(queue);
  for (let index = 0; index < queue.length; index++) {
    const terminal = queue[index]!;
    const { kind } = terminal.item;
    if (kind !== "string" && kind !== "spd") last = terminal;
    for (const link of terminal.links) {
      const next = otherEnd(link, terminal);
      if (seen.has(next)) continue;
      seen.add(next);
      queue.push(next);
    }
  }
  return last;
}

function reachFrom(root: Terminal): Towards {
  const towards: Towards = new Map();
  const queue = [root];
  const seen = new Set(queue);
  for (let index = 0; index < queue.length; index++) {
    const terminal = queue[index]!;
    for (const link of terminal.links) {
      const next = otherEnd(link, terminal);
      if (seen.has(next)) continue;
      seen.add(next);
      towards.set(next, { link, next: terminal });
      queue.push(next);
    }
  }
  return towards;
}

/** Runs and devices from a terminal to the root, each once, in order. */
function stepsTo(start: Terminal, towards: Towards): Step[] {
  const steps: Step[] = [];
  for (let hop = towards.get(start); hop; hop = towards.get(hop.next)) {
    if (steps[steps.length - 1] !== hop.link.by) steps.push(hop.link.by);
  }
  return steps;
}

function surgeTap(
  terminal: Terminal,
  towards: Towards,
  devices: ReadonlyMap<Item, unknown>,
  strings: readonly Terminal[],
  tracker: Terminal | undefined,
): SurgeTap {
  const lead = towards.get(terminal)?.link.by;
  const run = lead?.is === "run" ? lead : undefined;
  const at = joint(terminal, towards, devices);
  const ways = strings.length > 0 ? waysToStrings(terminal, strings) : [];
  return {
    spd: terminal.item,
    run,
    at,
    toInverter: at && tracker ? metres(stepsTo(at, towards)) : undefined,
    toArray: at && metresToArray(at, strings),
    isolatedBy: onEveryWay(ways, (item) => item.row?.through === "opens"),
    fusedBy: onEveryWay(ways, (item) => item.kind === "fuse"),
  };
}

/** Where the lead of a surge protective device, with a fuse of its own or without, meets the way of the strings. */
function joint(terminal: Terminal, towards: Towards, devices: ReadonlyMap<Item, unknown>): Terminal | undefined {
  let hop = towards.get(terminal);
  while (hop && hop.next.item.kind !== "string" && hop.next.item.kind !== "tracker" && !devices.has(hop.next.item)) {
    const further = towards.get(hop.next);
    if (!further) break;
    hop = further;
  }
  return hop?.next;
}

/** What lies between a terminal and each string that it is joined to. */
function waysToStrings(terminal: Terminal, strings: readonly Terminal[]): Step[][] {
  const from = reachFrom(terminal);
  return strings.map((string) => stepsTo(string, from));
}

/** Devices of a sort that lie on the ways; empty when one of the ways has none. */
function onEveryWay(ways: readonly (readonly Step[])[], isSort: (item: Item) => boolean): Item[] {
  const found = new Set<Item>();
  for (const way of ways) {
    const devices = way.filter((step): step is Item => step.is === "item" && isSort(step));
    if (devices.length === 0) return [];
    for (const device of devices) found.add(device);
  }
  return [...found];
}

function metresToArray(at: Terminal, strings: readonly Terminal[]): number | undefined {
  const from = reachFrom(at);
  let furthest = 0;
  for (const string of strings) {
    const length = metres(stepsTo(string, from));
    if (length === undefined) return undefined;
    furthest = Math.max(furthest, length);
  }
  return furthest;
}

/** Metres of cable along some steps; undefined where a run has no length. */
function metres(steps: readonly Step[]): number | undefined {
  let sum = 0;
  for (const step of steps) {
    if (step.is !== "run") continue;
    const length = step.declaration.length?.value;
    if (length?.dimension !== "length") return undefined;
    sum += length.si;
  }
  return sum;
}

function push<Key, Value>(map: Map<Key, Value[]>, key: Key, value: Value): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}
