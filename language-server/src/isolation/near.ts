import { type Circuit, type Converter, otherEnd, type Terminal } from "../circuit/circuit.js";
import { openingDevices } from "../circuit/cut-graph.js";
import type { Item } from "../design/things.js";

/** What lies between some terminals and the nearest devices that open all round. */
export interface Near {
  /** Devices that could open and are not counted on, or open nothing a person may rely on. */
  readonly devices: ReadonlySet<Item>;
  /** Inverters that join what they are wired to. */
  readonly inverters: ReadonlySet<Item>;
}

export function near(circuit: Circuit, start: readonly Terminal[]): Near {
  const opening = openingDevices(circuit);
  const devices = new Set<Item>();
  const inverters = new Set<Item>();
  const converterAt = new Map<Terminal, Converter>();
  for (const converter of circuit.converters)
    for (const { terminal } of converter.ports) converterAt.set(terminal, converter);
  const seen = new Set(start);
  for (const terminal of seen) {
    for (const link of terminal.links) {
      if (link.opens && link.by.is === "item") {
        if (opening.has(link.by)) continue;
        devices.add(link.by);
      }
      seen.add(otherEnd(link, terminal));
    }
    const converter = converterAt.get(terminal);
    if (!converter) continue;
    inverters.add(converter.inverter);
    for (const port of converter.ports) seen.add(port.terminal);
  }
  return { devices, inverters };
}
