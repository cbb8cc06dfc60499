import type { Circuit, Terminal } from "./circuit.js";
import { otherEnd } from "./circuit.js";

/** Pieces of a circuit that neither a conductor nor an inverter joins to each other, each in the order of the text. */
export function regions(circuit: Circuit): Terminal[][] {
  const acrossInverter = new Map<Terminal, readonly Terminal[]>();
  for (const { ports } of circuit.converters) {
    const terminals = ports.map(({ terminal }) => terminal);
    for (const terminal of terminals) acrossInverter.set(terminal, terminals);
  }
  const seen = new Set<Terminal>();
  const found: Terminal[][] = [];
  for (const start of circuit.terminals.values()) {
    if (seen.has(start)) continue;
    const region = [start];
    seen.add(start);
    const visit = (next: Terminal): void => {
      if (seen.has(next)) return;
      seen.add(next);
      region.push(next);
    };
    for (const terminal of region) {
      for (const link of terminal.links) visit(otherEnd(link, terminal));
      for (const next of acrossInverter.get(terminal) ?? []) visit(next);
    }
    found.push(region);
  }
  return found;
}
