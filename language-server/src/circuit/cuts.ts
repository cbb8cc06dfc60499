import type { Item, Run } from "../design/things.js";
import type { Given } from "../physics/figure.js";
import { changeoversOf, liveWhateverIsOpened, type StaysLive } from "./always-live.js";
import { boundaryOf, type Parting } from "./boundary.js";
import { type Circuit, type Source, type Terminal, terminalOf, terminalsOf } from "./circuit.js";
import { isolationGraph } from "./cut-graph.js";
import { type Arrival, traceStored } from "./live.js";
import { allPositions, type Situation } from "./modes.js";
import type { Ineffective } from "./poles.js";
import { whyIneffective } from "./systems.js";
import { minimalCuts, smallestCut } from "./vertex-cuts.js";

/** How to make an item dead, in every mode and with the changeovers in every position. */
export interface Isolation {
  readonly of: Item | Run;
  readonly terminals: readonly Terminal[];
  /**
   * Sets of devices, each of which makes every terminal dead that `staysLive` does not name, and none of which can spare
   * a device. Where it names all (a battery, a string), each keeps every other source off. Smallest first, then nearest
   * to the item. Empty: no set does; one empty set: nothing feeds it anyway.
   */
  readonly cuts: readonly (readonly Item[])[];
  /** False where there are more sets than were looked for. Without changeovers the first is a smallest one all the same. */
  readonly complete: boolean;
  /** Terminals of the item that sources reach whatever is opened, and those sources. */
  readonly staysLive: readonly StaysLive[];
  /** The nearest devices all round: opened together they part the item from everything, sources or not. */
  readonly boundary: readonly Parting[];
  /** Inverters whose charge reaches the item with the first set open. No `wait`: not declared, never zero. */
  readonly waits: readonly { readonly inverter: Item; readonly wait?: Given }[];
  /** Devices of the circuit that were not counted on, and why. */
  readonly notCounted: readonly Ineffective[];
}

export interface Bounds {
  /** Sets to hand back at most. */
  readonly sets?: number;
  /** Sets to look at before giving up on finding all. */
  readonly looked?: number;
}

/**
 * What to open so that an item is dead.
 *
 * Modelled: every source that the text names; conductors as one line each; devices that open all live conductors where
 * they are wired (others count as closed); inverters, whose ports all feed each other; changeovers in any position.
 * A set holds by day and by night, with the grid and without.
 * Not modelled: the order of opening, which only a maker's sheet can give; neutral or earth by themselves; a portable
 * generator plugged in somewhere; equipment that is wired otherwise than written. Dead is proved on site, not here.
 */
export function isolate(circuit: Circuit, of: Item | Run, { sets = 24, looked = 400 }: Bounds = {}): Isolation {
  const terminals = of.is === "run" ? endsOf(circuit, of) : terminalsOf(circuit, of);
  const always = liveWhateverIsOpened(circuit);
  const reached = terminals.flatMap((terminal) => arrivalsAt(always, terminal));
  const staysLive = [...reached, ...cellsOf(circuit, of, always, reached)];
  const canBeDead = terminals.filter((terminal) => !always.has(terminal));
  const own = new Set(staysLive.map(({ arrival }) => arrival.source));
  const found =
    canBeDead.length > 0
      ? cutsFor(circuit, circuit.sources, canBeDead, looked)
      : cutsFor(
          circuit,
          circuit.sources.filter((source) => !own.has(source)),
          terminals,
          looked,
        );
  const cuts = found.cuts.slice(0, sets);
  return {
    of,
    terminals,
    cuts,
    complete: found.complete && cuts.length === found.cuts.length,
    staysLive,
    boundary: boundaryOf(circuit, terminals),
    waits: waitsOf(circuit, terminals, cuts[0] ?? []),
    notCounted: notCounted(circuit),
  };
}

function arrivalsAt(always: ReadonlyMap<Terminal, readonly Arrival[]>, terminal: Terminal): StaysLive[] {
  return (always.get(terminal) ?? []).map((arrival) => ({ terminal, arrival }));
}

/** Behind a battery's own isolator its terminals can be dead; what is in its casing never is. */
function cellsOf(
  circuit: Circuit,
  of: Item | Run,
  always: ReadonlyMap<Terminal, readonly Arrival[]>,
  reached: readonly StaysLive[],
): StaysLive[] {
  const cells = of.is === "item" ? terminalOf(circuit, of, "cells") : undefined;
  const named = new Set(reached.map(({ arrival }) => arrival.source));
  return cells ? arrivalsAt(always, cells).filter(({ arrival }) => !named.has(arrival.source)) : [];
}

function endsOf(circuit: Circuit, run: Run): Terminal[] {
  return [run.from, run.to].flatMap((end) => (end ? (terminalOf(circuit, end.item, end.terminal) ?? []) : []));
}

interface Found {
  readonly cuts: readonly (readonly Item[])[];
  readonly complete: boolean;
}

/** Sets that hold in every position of the changeovers: of each position one set, together, without what is spare. */
function cutsFor(circuit: Circuit, sources: readonly Source[], targets: readonly Terminal[], looked: number): Found {
  let all: Found | undefined;
  for (const positions of allPositions(changeoversOf(circuit))) {
    const own = cutsInPosition(circuit, sources, targets, positions, looked);
    all = all ? together(all, own, looked) : own;
  }
  return all ?? { cuts: [], complete: true };
}

function cutsInPosition(
  circuit: Circuit,
  sources: readonly Source[],
  targets: readonly Terminal[],
  positions: NonNullable<Situation["positions"]>,
  looked: number,
): Found {
  const graph = isolationGraph(circuit, sources, targets, positions);
  const { cuts, complete } = minimalCuts(graph, looked);
  const ordered = [...cuts].sort((a, b) => a.length - b.length);
  if (!complete) {
    const smallest = smallestCut(graph);
    if (smallest && smallest.length < (ordered[0]?.length ?? Number.POSITIVE_INFINITY)) ordered.unshift(smallest);
  }
  return { cuts: ordered.map((cut) => cut.map((vertex) => graph.devices[vertex]!)), complete };
}

function together(a: Found, b: Found, looked: number): Found {
  if (sameSets(a.cuts, b.cuts)) return { cuts: a.cuts, complete: a.complete && b.complete };
  const unions = a.cuts.flatMap((one) => b.cuts.map((other) => new Set([...one, ...other])));
  unions.sort((one, other) => one.size - other.size);
  const kept: Set<Item>[] = [];
  for (const union of unions) if (!kept.some((smaller) => isInside(smaller, union))) kept.push(union);
  const bounded = kept.slice(0, looked);
  return {
    cuts: bounded.map((cut) => [...cut]),
    complete: a.complete && b.complete && bounded.length === kept.length,
  };
}

function sameSets(a: Found["cuts"], b: Found["cuts"]): boolean {
  const keys = new Set(a.map(keyOf));
  return a.length === b.length && b.every((cut) => keys.has(keyOf(cut)));
}
function keyOf(cut: readonly Item[]): string {
  return cut
    .map(({ id }) => id)
    .sort()
    .join(" ");
}
function isInside(smaller: ReadonlySet<Item>, larger: ReadonlySet<Item>): boolean {
  for (const item of smaller) if (!larger.has(item)) return false;
  return true;
}

function waitsOf(circuit: Circuit, terminals: readonly Terminal[], cut: readonly Item[]): Isolation["waits"] {
  const charge = traceStored(circuit, { light: "day", supply: "grid", open: new Set(cut) });
  const waits = new Map<Item, Given | undefined>();
  for (const terminal of terminals)
    for (const { source, wait } of charge.get(terminal) ?? []) waits.set(source.item, wait);
  return [...waits].map(([inverter, wait]) => ({ inverter, wait }));
}

function notCounted(circuit: Circuit): Ineffective[] {
  const devices = new Set(circuit.links.flatMap(({ by, opens }) => (opens && by.is === "item" ? [by] : [])));
  return [...devices].flatMap((device) => whyIneffective(circuit, device) ?? []);
}
