import type { Item } from "../design/things.js";
import { type Circuit, type Converter, otherEnd, type Terminal } from "./circuit.js";
import { openingDevices } from "./cut-graph.js";

/** A device next to an item with nothing to open between. */
export interface Parting {
  readonly device: Item;
  /** Its terminal on the item's side. */
  readonly near: Terminal;
  /** The item's terminal that it parts. */
  readonly parts: Terminal;
}

/** The nearest devices on every way from some terminals, also where no source is known behind them. */
export function boundaryOf(circuit: Circuit, terminals: readonly Terminal[]): Parting[] {
  const opening = openingDevices(circuit);
  const converterOf = new Map<Terminal, Converter>();
  for (const converter of circuit.converters)
    for (const { terminal } of converter.ports) converterOf.set(terminal, converter);
  const found = new Map<Item, Parting>();
  const parts = new Map<Terminal, Terminal>(terminals.map((terminal) => [terminal, terminal]));
  for (const [near, parted] of parts) {
    for (const link of near.links) {
      const far = otherEnd(link, near);
      if (link.by.is === "item" && link.opens && opening.has(link.by)) {
        // A device between two of the terminals is inside, not around them.
        if (!terminals.includes(far) && !found.has(link.by))
          found.set(link.by, { device: link.by, near, parts: parted });
      } else if (!parts.has(far)) parts.set(far, parted);
    }
    const converter = converterOf.get(near);
    if (!converter) continue;
    for (const { terminal, kind } of converter.ports) {
      if (parts.has(terminal)) continue;
      const { inverter } = converter;
      if (!opening.has(inverter) || (kind === "tracker") === (near.item.kind === "tracker"))
        parts.set(terminal, parted);
      else if (!found.has(inverter)) found.set(inverter, { device: inverter, near, parts: parted });
    }
  }
  return [...found.values()];
}
