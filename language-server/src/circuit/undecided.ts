import { flagOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { changeoversOf, type StaysLive } from "./always-live.js";
import { type Circuit, otherEnd, type Source, type Terminal } from "./circuit.js";
import { openingDevices } from "./cut-graph.js";
import { allPositions, type Situation } from "./modes.js";
import { isStanding, Pieces } from "./pieces.js";
import type { Ineffective } from "./poles.js";
import { whyIneffective } from "./systems.js";

/**
 * Whether a fact that nobody states decides about a source that no set of devices keeps off: were each such fact the best
 * that it can be, there would be a set.
 */
export function isUndecided(circuit: Circuit, { terminal, arrival }: StaysLive): boolean {
  return !doubtsOf(circuit).reaches(arrival.source, terminal);
}

/** Devices on the way of such a source that are not relied upon, from the source, and why. */
export function uselessOnTheWay(circuit: Circuit, { terminal, arrival }: StaysLive): Ineffective[] {
  const { doubtful } = doubtsOf(circuit);
  return devicesBetween(circuit, arrival.source, terminal).flatMap(
    (device) => doubtful.get(device) ?? whyNot(circuit, device),
  );
}

function whyNot(circuit: Circuit, device: Item): Ineffective | [] {
  return (device.row?.through === "opens" && whyIneffective(circuit, device)) || [];
}

interface Doubts {
  /** Devices that might open if a missing fact were the best that it can be. */
  readonly doubtful: ReadonlyMap<Item, Ineffective>;
  /** Whether a source reaches a terminal even then. */
  reaches(source: Source, terminal: Terminal): boolean;
}

const memory = new WeakMap<Circuit, Doubts>();

function doubtsOf(circuit: Circuit): Doubts {
  let known = memory.get(circuit);
  if (!known) {
    known = doubts(circuit);
    memory.set(circuit, known);
  }
  return known;
}

function doubts(circuit: Circuit): Doubts {
  const doubtful = new Map<Item, Ineffective>();
  for (const { by, opens } of circuit.links) {
    const why = opens && by.is === "item" && !doubtful.has(by) ? whyIneffective(circuit, by) : undefined;
    if (why?.missing !== undefined) doubtful.set(why.device, why);
  }
  for (const { inverter } of circuit.converters)
    if (flagOf(inverter, "built-in-dc-isolator") === undefined)
      doubtful.set(inverter, unsaid(inverter, "built-in-dc-isolator"));
  for (const { item, kind } of circuit.sources)
    if (kind === "battery" && flagOf(item, "built-in-isolator") === undefined)
      doubtful.set(item, unsaid(item, "built-in-isolator"));

  const open = new Set([...openingDevices(circuit), ...doubtful.keys()]);
  const changeovers = changeoversOf(circuit).filter((changeover) => !open.has(changeover));
  const situations = allPositions(changeovers).map(
    (positions) => ({ light: "day", supply: "grid", open, positions }) as const,
  );
  const all = situations.map((situation) => ({
    pieces: new Pieces(circuit, situation),
    reached: new Map<Source, Set<number>>(),
  }));
  return {
    doubtful,
    reaches(source, terminal) {
      if (doubtful.has(source.item)) return false;
      return all.some(({ pieces, reached }) => {
        let own = reached.get(source);
        if (!own) {
          own = spread(pieces, pieces.of(source.terminal));
          reached.set(source, own);
        }
        return own.has(pieces.of(terminal));
      });
    },
  };
}

function unsaid(device: Item, missing: string): Ineffective {
  return { device, why: `its ${missing} is not stated`, missing };
}

/** Pieces that a piece feeds for good: over inverters into every port but the grid's, which they end by themselves. */
function spread(pieces: Pieces, start: number): Set<number> {
  const reached = new Set([start]);
  for (const piece of reached)
    for (const { inverter, ports } of pieces.convertersAt(piece))
      for (const { kind, terminal } of ports)
        if (kind !== "ac" && pieces.passes(inverter, kind)) reached.add(pieces.of(terminal));
  return reached;
}

/** Devices on one of the shortest ways from a source to a terminal that no reliable device parts, from the source. */
function devicesBetween(circuit: Circuit, { terminal: start, item }: Source, end: Terminal): Item[] {
  const opening = openingDevices(circuit);
  // A changeover that stays closed joins one side or the other: a way leads over it in one position, never over both.
  const changeovers = changeoversOf(circuit).filter((changeover) => !opening.has(changeover));
  for (const positions of allPositions(changeovers)) {
    const found = wayBetween(circuit, start, end, { light: "day", supply: "grid", open: opening, positions });
    if (found) return [...new Set([item, ...found])];
  }
  return [item];
}

function wayBetween(circuit: Circuit, start: Terminal, end: Terminal, situation: Situation): Item[] | undefined {
  const { open } = situation;
  const converters = new Map(circuit.converters.map((converter) => [converter.inverter, converter]));
  const before = new Map<Terminal, { readonly from: Terminal; readonly by?: Item }>();
  const seen = new Set([start]);
  for (const terminal of seen) {
    if (terminal === end) break;
    const enter = (to: Terminal, by?: Item): void => {
      if (seen.has(to)) return;
      seen.add(to);
      before.set(to, { from: terminal, by });
    };
    for (const link of terminal.links) {
      if (!isStanding(link, situation)) continue;
      if (link.by.is === "run" || !link.opens) enter(otherEnd(link, terminal));
      else if (!open.has(link.by)) enter(otherEnd(link, terminal), link.by);
    }
    const inverter = terminal.item.parent?.kind === "inverter" ? terminal.item.parent : undefined;
    const isShut = (kind: string): boolean => kind === "tracker" && inverter !== undefined && open.has(inverter);
    if (inverter && !isShut(terminal.item.kind))
      for (const { kind, terminal: port } of converters.get(inverter)?.ports ?? [])
        if (kind !== "ac" && !isShut(kind)) enter(port, inverter);
  }
  if (!seen.has(end)) return undefined;
  const found: Item[] = [];
  for (let step = before.get(end); step; step = before.get(step.from)) if (step.by) found.push(step.by);
  return found.reverse();
}
