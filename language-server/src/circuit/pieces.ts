import type { Item } from "../design/things.js";
import { type Circuit, type Converter, type Link, otherEnd, type PortKind, type Terminal } from "./circuit.js";
import { isInPosition, type Situation } from "./modes.js";

/** A changeover joins only in the position in which it stands; everything else always stands. */
export function isStanding({ by, position }: Link, situation: Omit<Situation, "open">): boolean {
  return position === undefined || by.is === "run" || isInPosition(by, position, situation);
}

/**
 * Terminals that closed conductors join, as numbered pieces: whatever reaches one terminal of a piece reaches all.
 * `open` of the situation must hold only devices that really open.
 */
export class Pieces {
  private readonly numbers = new Map<Terminal, number>();
  private readonly terminals: Terminal[][] = [];
  private readonly converters = new Map<number, Converter[]>();

  constructor(
    circuit: Circuit,
    private readonly situation: Situation,
  ) {
    for (const start of circuit.terminals.values()) if (!this.numbers.has(start)) this.flood(start);
    for (const converter of circuit.converters) this.place(converter);
  }

  of(terminal: Terminal): number {
    return this.numbers.get(terminal)!;
  }
  members(piece: number): readonly Terminal[] {
    return this.terminals[piece]!;
  }
  /** Inverters with a port in a piece that their own d.c. isolator does not shut off. */
  convertersAt(piece: number): readonly Converter[] {
    return this.converters.get(piece) ?? [];
  }
  /** An inverter's own d.c. isolator lies between its tracker terminals and its inside. */
  passes(inverter: Item, port: PortKind): boolean {
    return !(port === "tracker" && this.situation.open.has(inverter));
  }

  private flood(start: Terminal): void {
    const number = this.terminals.length;
    const piece = [start];
    this.terminals.push(piece);
    this.numbers.set(start, number);
    for (const terminal of piece) {
      for (const link of terminal.links) {
        const next = otherEnd(link, terminal);
        if (this.numbers.has(next) || !this.isClosed(link)) continue;
        this.numbers.set(next, number);
        piece.push(next);
      }
    }
  }

  private place(converter: Converter): void {
    for (const { kind, terminal } of converter.ports) {
      if (!this.passes(converter.inverter, kind)) continue;
      const piece = this.of(terminal);
      const own = this.converters.get(piece);
      if (!own) this.converters.set(piece, [converter]);
      else if (!own.includes(converter)) own.push(converter);
    }
  }

  private isClosed(link: Link): boolean {
    const isOpen = link.opens && link.by.is === "item" && this.situation.open.has(link.by);
    return !isOpen && isStanding(link, this.situation);
  }
}
