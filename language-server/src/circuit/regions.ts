import type { Circuit, Terminal } from "./circuit.js";
import { otherEnd } from "./circuit.js";

/** Pieces of a circuit that neither a conductor nor an inverter joins to each other, each in the order of the text. */
export function regions(circuit: Circuit): Terminal[][] {
  const acrossInverter = new Map<Terminal, readonly Terminal[]>();
  for (const { ports } of circuit.converters) {
    const terminals = ports.map(({ terminal }) => terminal);
    for (const terminal of terminals) acrossInverter.set(terminal, terminals);
  }
  const regionOf = new Map<Terminal, number>();
  const found: Terminal[][] = [];
  for (const start of circuit.terminals.values()) {
    if (regionOf.has(start)) continue;
    const number = found.push([]) - 1;
    const queue = [start];
    regionOf.set(start, number);
    const visit = (next: Terminal): void => {
      if (regionOf.has(next)) return;
      regionOf.set(next, number);
      queue.push(next);
    };
    for (const terminal of queue) {
      for (const link of terminal.links) visit(otherEnd(link, terminal));
      for (const next of acrossInverter.get(terminal) ?? []) visit(next);
    }
  }
  for (const terminal of circuit.terminals.values()) found[regionOf.get(terminal)!]!.push(terminal);
  return found;
}
