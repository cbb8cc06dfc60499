import { flagOf, given, wordOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import type { Given } from "../physics/figure.js";
import { type Circuit, type Converter, type Link, otherEnd, type Source, type Terminal } from "./circuit.js";
import { isInPosition, type Situation } from "./modes.js";
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
  const faulty: Ineffective[] = [];
  const open = new Set<Item>();
  for (const device of situation.open) {
    const why = whyNotOpen(circuit, device);
    if (why) faulty.push(why);
    else open.add(device);
  }
  const arrivals = new Map<Terminal, Arrival[]>();
  const tracer = new Tracer(circuit, { ...situation, open }, arrivals);
  for (const source of circuit.sources) tracer.trace(source);
  for (const converter of circuit.converters) tracer.traceStored(converter);
  return { situation, ineffective: faulty, arrivals };
}

function whyNotOpen(circuit: Circuit, device: Item): Ineffective | undefined {
  const canOpen =
    device.kind === "inverter"
      ? flagOf(device, "built-in-dc-isolator") === true
      : circuit.links.some((link) => link.opens && link.by === device);
  return canOpen ? whyIneffective(circuit, device) : { device, why: `a ${device.kind} has nothing to open` };
}

type Step = Omit<Arrival, "source">;

class Tracer {
  private readonly converterOf = new Map<Terminal, Converter>();
  /** Terminals where something that runs without the grid stands in for it. */
  private readonly formed: ReadonlySet<Terminal>;

  constructor(
    private readonly circuit: Circuit,
    private readonly situation: Situation,
    private readonly arrivals: Map<Terminal, Arrival[]>,
  ) {
    for (const converter of circuit.converters)
      for (const { terminal } of converter.ports) this.converterOf.set(terminal, converter);
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
      for (const link of terminal.links) if (this.isStanding(link)) reached.add(otherEnd(link, terminal));
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

  /** Conductors first, then inverter by inverter; what only comes while an inverter has not disconnected, last. */
  trace(source: Source): void {
    const start = this.beginning(source);
    if (!start) return;
    const seen = new Map<Terminal, Step>();
    let front: [Terminal, Step][] = [[source.terminal, { through: "conductor", inverters: [], ...start }]];
    let later: [Terminal, Step][] = [];
    while (front.length > 0 || later.length > 0) {
      if (front.length === 0) [front, later] = [later, []];
      const reached = this.alongConductors(front, seen);
      front = [];
      // A supply that may return has not done so: it charges nothing and passes no inverter yet.
      if (start.mayReturn) break;
      for (const [terminal, step] of reached) this.acrossInverter(terminal, step, seen, front, later);
    }
    for (const [terminal, step] of seen) this.add(terminal, { source, ...step });
  }

  /** What an inverter's capacitors hold: at every port, and along the conductors of its d.c. side. */
  traceStored({ inverter, ports }: Converter): void {
    const wait = given(inverter, "discharge-wait");
    const step: Step = { through: "stored", inverters: [inverter], ...(wait && { wait }) };
    const seen = new Map<Terminal, Step>();
    for (const { terminal, kind } of ports) {
      if (kind === "tracker" || kind === "battery") this.alongConductors([[terminal, step]], seen);
      else seen.set(terminal, step);
    }
    const [first] = ports;
    if (!first) return;
    const source: Source = {
      id: `${inverter.id} capacitors`,
      kind: "stored",
      item: inverter,
      terminal: first.terminal,
    };
    for (const [terminal, how] of seen) this.add(terminal, { source, ...how });
  }

  private alongConductors(front: readonly [Terminal, Step][], seen: Map<Terminal, Step>): [Terminal, Step][] {
    const reached: [Terminal, Step][] = [];
    const enter = (terminal: Terminal, step: Step): void => {
      if (seen.has(terminal)) return;
      seen.set(terminal, step);
      reached.push([terminal, step]);
    };
    for (const [terminal, step] of front) enter(terminal, step);
    for (const [terminal, step] of reached)
      for (const link of terminal.links) if (this.isClosed(link)) enter(otherEnd(link, terminal), step);
    return reached;
  }

  private acrossInverter(
    from: Terminal,
    step: Step,
    seen: ReadonlyMap<Terminal, Step>,
    front: [Terminal, Step][],
    later: [Terminal, Step][],
  ): void {
    const converter = this.converterOf.get(from);
    if (!converter || !this.passes(converter, from)) return;
    const { inverter } = converter;
    const next: Step = { ...step, through: "converter", inverters: [...step.inverters, inverter] };
    for (const { terminal } of converter.ports) {
      if (seen.has(terminal) || !this.passes(converter, terminal)) continue;
      if (terminal.item.kind !== "ac") (step.untilDisconnects ? later : front).push([terminal, next]);
      else if (this.situation.supply === "grid" || this.formed.has(terminal))
        later.push([terminal, { ...next, untilDisconnects: step.untilDisconnects ?? inverter }]);
    }
  }

  /** An inverter's own d.c. isolator lies between its tracker terminals and its inside. */
  private passes({ inverter }: Converter, port: Terminal): boolean {
    return !(port.item.kind === "tracker" && this.situation.open.has(inverter));
  }

  private isClosed(link: Link): boolean {
    const isOpen = link.opens && link.by.is === "item" && this.situation.open.has(link.by);
    return !isOpen && this.isStanding(link);
  }

  /** A changeover joins only in the position in which it stands. */
  private isStanding({ by, position }: Link): boolean {
    return position === undefined || by.is === "run" || isInPosition(by, position, this.situation);
  }

  private add(terminal: Terminal, arrival: Arrival): void {
    const own = this.arrivals.get(terminal);
    if (own) own.push(arrival);
    else this.arrivals.set(terminal, [arrival]);
  }
}
