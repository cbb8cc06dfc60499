import { flagOf, given, wordOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import type { Given } from "../physics/figure.js";
import { type Circuit, otherEnd, type Source, type Terminal, terminalsOf } from "./circuit.js";
import type { Situation } from "./modes.js";
import { isStanding, Pieces } from "./pieces.js";
import type { Ineffective } from "./poles.js";
import { whyIneffective } from "./systems.js";

/** How energy of one source is at a terminal. */
export interface Arrival {
  readonly source: Source;
  /**
   * `conductor`: joined to it by closed conductors all the way. `converter`: through at least one inverter.
   * `stored`: held by the capacitors of an inverter after everything is open.
   */
  readonly through: "conductor" | "converter" | "stored";
  /** Inverters passed, from the source; for stored energy the inverter that holds it. */
  readonly inverters: readonly Item[];
  /** What ends it without anybody opening anything: an inverter or generating unit that disconnects for loss of mains. */
  readonly untilDisconnects?: Item;
  /** The supply in an island: dead now, and live without warning. */
  readonly mayReturn?: true;
  /** For stored energy: the maker's wait. Undefined: not declared, so nobody knows how long; never zero. */
  readonly wait?: Given;
}

/** What is live in one situation. */
export interface LiveTrace {
  readonly situation: Situation;
  /** Open devices that were traced as closed all the same, and why. */
  readonly ineffective: readonly Ineffective[];
  /** Every terminal that anything reaches. One that is missing is dead as far as the circuit as written goes. */
  readonly arrivals: ReadonlyMap<Terminal, readonly Arrival[]>;
}

/**
 * Traces every source through a circuit with some devices open: who reaches which terminal, and through what.
 *
 * An inverter joins its ports: whatever feeds one may come out of any other. Its grid port gives power only beside the
 * grid, or beside a backup port that stands in for it, and stops when that is lost; its backup port never stops.
 * Not modelled: faults, wrong wiring of single conductors, neutral and earth by themselves, a generator that somebody
 * plugs in, the charge of long cables, and whether a device is really open. The result is as true as the text.
 */
export function traceLive(circuit: Circuit, situation: Situation): LiveTrace {
  const { pieces, ineffective } = piecesFor(circuit, situation);
  const tracer = new Tracer(circuit, situation, pieces);
  const atPiece = new Map<number, Arrival[]>();
  for (const source of circuit.sources)
    for (const [piece, step] of tracer.trace(source)) push(atPiece, piece, { source, ...step });
  const arrivals = new Map<Terminal, Arrival[]>();
  for (const [piece, own] of atPiece) for (const terminal of pieces.members(piece)) arrivals.set(terminal, own);
  for (const [terminal, charge] of storedCharge(circuit, pieces)) {
    const own = arrivals.get(terminal);
    arrivals.set(terminal, own ? [...own, ...charge] : charge);
  }
  return { situation, ineffective, arrivals };
}

/**
 * What the capacitors of inverters still hold with some devices open: at every port, along their d.c. conductors up to
 * the next open device, and along the runs of their a.c. ports up to the next device.
 */
export function traceStored(circuit: Circuit, situation: Situation): ReadonlyMap<Terminal, readonly Arrival[]> {
  return storedCharge(circuit, piecesFor(circuit, situation).pieces);
}

function piecesFor(circuit: Circuit, situation: Situation): { pieces: Pieces; ineffective: Ineffective[] } {
  const ineffective: Ineffective[] = [];
  const open = new Set<Item>();
  for (const device of situation.open) {
    const why = whyNotOpen(circuit, device);
    if (why) ineffective.push(why);
    else open.add(device);
  }
  return { pieces: new Pieces(circuit, { ...situation, open }), ineffective };
}

function whyNotOpen(circuit: Circuit, device: Item): Ineffective | undefined {
  const canOpen =
    device.kind === "inverter"
      ? flagOf(device, "built-in-dc-isolator") === true
      : terminalsOf(circuit, device).some(({ links }) => links.some((link) => link.opens && link.by === device));
  return canOpen ? whyIneffective(circuit, device) : { device, why: `a ${device.kind} has nothing to open` };
}

function storedCharge(circuit: Circuit, pieces: Pieces): Map<Terminal, Arrival[]> {
  const found = new Map<Terminal, Arrival[]>();
  for (const { inverter, ports } of circuit.converters) {
    const [first] = ports;
    if (!first) continue;
    const wait = given(inverter, "discharge-wait");
    const source: Source = {
      id: `${inverter.id} capacitors`,
      kind: "stored",
      item: inverter,
      terminal: first.terminal,
    };
    const charge: Arrival = { source, through: "stored", inverters: [inverter], ...(wait && { wait }) };
    const reached = new Set<Terminal>();
    for (const { terminal, kind } of ports) {
      const isDc = kind === "tracker" || kind === "battery";
      for (const other of isDc ? pieces.members(pieces.of(terminal)) : alongRuns(terminal)) reached.add(other);
    }
    for (const terminal of reached) push(found, terminal, charge);
  }
  return found;
}

/** A terminal with those that runs alone join to it: what one of them holds, all of them hold. */
function alongRuns(start: Terminal): Set<Terminal> {
  const joined = new Set([start]);
  for (const terminal of joined)
    for (const link of terminal.links) if (link.by.is === "run") joined.add(otherEnd(link, terminal));
  return joined;
}

type Step = Omit<Arrival, "source">;

/** Follows one source after another from piece to piece. */
class Tracer {
  /** Terminals where something that runs without the grid stands in for it. */
  private readonly formed: ReadonlySet<Terminal>;

  constructor(
    private readonly circuit: Circuit,
    private readonly situation: Situation,
    private readonly pieces: Pieces,
  ) {
    this.formed = situation.supply === "island" ? this.formedInIsland() : new Set();
  }

  /** By conductors, with every device closed: what is opened afterwards must never make more live. */
  private formedInIsland(): Set<Terminal> {
    const reached = new Set<Terminal>();
    for (const { item, terminal } of this.circuit.sources)
      if (item.kind === "generator" && flagOf(item, "runs-without-grid")) reached.add(terminal);
    for (const { ports } of this.circuit.converters)
      for (const { kind, terminal } of ports) if (kind === "backup") reached.add(terminal);
    for (const terminal of reached)
      for (const link of terminal.links) if (isStanding(link, this.situation)) reached.add(otherEnd(link, terminal));
    return reached;
  }

  /** How a source begins: it feeds, feeds until it disconnects, may return, or does not feed at all. */
  private beginning({ kind, item, terminal }: Source): Partial<Arrival> | undefined {
    const { light, supply } = this.situation;
    switch (kind) {
      case "pv":
        return light === "day" ? {} : undefined;
      case "grid":
        return supply === "grid" ? {} : { mayReturn: true };
      case "generator":
        if (wordOf(item, "energy-source") === "sun" && light === "night") return undefined;
        if (flagOf(item, "runs-without-grid")) return {};
        return supply === "grid" || this.formed.has(terminal) ? { untilDisconnects: item } : undefined;
      default:
        return {};
    }
  }

  /** Inverter by inverter from the source; what only comes while an inverter has not disconnected, last. */
  trace(source: Source): ReadonlyMap<number, Step> {
    const seen = new Map<number, Step>();
    const start = this.beginning(source);
    if (!start) return seen;
    let front: [number, Step][] = [
      [this.pieces.of(source.terminal), { through: "conductor", inverters: [], ...start }],
    ];
    let later: [number, Step][] = [];
    while (front.length > 0 || later.length > 0) {
      if (front.length === 0) [front, later] = [later, []];
      const reached: [number, Step][] = [];
      for (const [piece, step] of front) {
        if (seen.has(piece)) continue;
        seen.set(piece, step);
        reached.push([piece, step]);
      }
      front = [];
      // A supply that may return has not done so: it charges nothing and passes no inverter yet.
      if (start.mayReturn) break;
      for (const [piece, step] of reached) this.acrossInverters(piece, step, seen, front, later);
    }
    return seen;
  }

  private acrossInverters(
    from: number,
    step: Step,
    seen: ReadonlyMap<number, Step>,
    front: [number, Step][],
    later: [number, Step][],
  ): void {
    for (const { inverter, ports } of this.pieces.convertersAt(from)) {
      const next: Step = { ...step, through: "converter", inverters: [...step.inverters, inverter] };
      for (const { kind, terminal } of ports) {
        const piece = this.pieces.of(terminal);
        if (seen.has(piece) || !this.pieces.passes(inverter, kind)) continue;
        if (kind !== "ac") (step.untilDisconnects ? later : front).push([piece, next]);
        else if (this.situation.supply === "grid" || this.formed.has(terminal))
          later.push([piece, { ...next, untilDisconnects: step.untilDisconnects ?? inverter }]);
      }
    }
  }
}

function push<Key, Value>(map: Map<Key, Value[]>, key: Key, value: Value): void {
  const own = map.get(key);
  if (own) own.push(value);
  else map.set(key, [value]);
}
