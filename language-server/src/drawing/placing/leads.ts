import type { Diagram, Wire } from "../diagram.js";

/** Surge protective devices with one wire carry its label themselves. */
export function leadsOf({ nodes, wires }: Diagram): ReadonlyMap<string, Wire> {
  const tees = new Set(nodes.flatMap(({ id, symbol, inside }) => (symbol === "spd" && !inside ? [id] : [])));
  const found = new Map<string, Wire[]>();
  for (const wire of wires)
    for (const { node } of [wire.from, wire.to])
      if (tees.has(node)) found.set(node, [...(found.get(node) ?? []), wire]);
  const only = new Map<string, Wire>();
  for (const [node, [wire, another]] of found)
    if (wire && !another && wire.label.length > 0 && wire.from.node !== wire.to.node) only.set(node, wire);
  // A wire between two of them is carried by one.
  const taken = new Set<Wire>();
  for (const [node, wire] of only) {
    if (taken.has(wire)) only.delete(node);
    taken.add(wire);
  }
  return only;
}
