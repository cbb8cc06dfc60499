import type { Circuit } from "../circuit/circuit.js";
import { wordOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import type { IsWired } from "./board-of.js";
import type { Node, Wire } from "./diagram.js";

/**
 * What joins the installation's earth to what it relies on, where no run says so: the supplier's earth in a TN system,
 * and the electrodes. Both follow from what the items say of themselves.
 */
export function withEarth(
  nodes: readonly Node[],
  items: readonly Item[],
  isWired: IsWired,
  circuit: Circuit,
): { readonly nodes: readonly Node[]; readonly wires: readonly Wire[] } {
  const earthing = items.find(({ kind }) => kind === "earthing");
  if (!earthing || isWired(circuit.terminals.get(`${earthing.id}.in`))) return { nodes, wires: [] };
  const own = `${earthing.id}.in`;
  const wires: Wire[] = [];
  const added = new Map<string, string>();
  const join = (id: string, port: string, words: string): void => {
    const to = { node: id, port };
    const from = { node: earthing.id, port: own };
    const description = `earth of ${id}: ${words}`;
    wires.push({ id: `earth ${id}`, isRun: false, current: "earth", from, to, label: [words], description });
  };
  for (const item of items) {
    const system = item.kind === "supply" ? wordOf(item, "earthing") : undefined;
    if (system?.startsWith("TN")) {
      added.set(item.id, `${item.id}.earth`);
      join(item.id, `${item.id}.earth`, `${system} earth`);
    } else if (item.kind === "electrode" && !isWired(circuit.terminals.get(`${item.id}.in`)))
      join(item.id, `${item.id}.in`, "earthing conductor");
  }
  return {
    wires,
    nodes: nodes.map((node): Node => {
      const port = added.get(node.id);
      if (port !== undefined) return { ...node, ports: [...node.ports, { id: port, side: "west", current: "earth" }] };
      if (wires.length === 0 || (node.id !== earthing.id && node.symbol !== "electrode")) return node;
      const side = node.id === earthing.id ? "east" : "west";
      return {
        ...node,
        ports: node.ports.map((each) => (isWired(circuit.terminals.get(each.id)) ? each : { ...each, side })),
      };
    }),
  };
}
