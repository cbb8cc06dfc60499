import type { Item } from "../design/things.js";
import { type Circuit, type Link, otherEnd, type Terminal } from "./circuit.js";

/** The same circuit with a device that opens in one of its joints: what would be, before anybody writes it down. */
export function withDevice({ terminals, links, converters, sources }: Circuit, joint: Link, device: Item): Circuit {
  const copies = new Map<string, Terminal>();
  const copyOf = ({ id, item, name }: Terminal): Terminal => {
    let copy = copies.get(id);
    if (!copy) {
      copy = { id, item, name, links: [] };
      copies.set(id, copy);
    }
    return copy;
  };
  for (const terminal of terminals.values()) copyOf(terminal);
  const joined: Link[] = [];
  const join = (link: Link): void => {
    joined.push(link);
    link.a.links.push(link);
    otherEnd(link, link.a).links.push(link);
  };
  for (const link of links) {
    const [a, b] = [copyOf(link.a), copyOf(link.b)];
    if (link !== joint) {
      join({ ...link, a, b });
      continue;
    }
    const [before, behind] = ["in", "out"].map((name) =>
      copyOf({ id: `${device.id}.${name}`, item: device, name, links: [] }),
    ) as [Terminal, Terminal];
    join({ ...link, a, b: before });
    join({ a: before, b: behind, by: device, opens: true });
    join({ ...link, a: behind, b });
  }
  return {
    terminals: copies,
    links: joined,
    converters: converters.map(({ inverter, ports }) => ({
      inverter,
      ports: ports.map(({ kind, terminal }) => ({ kind, terminal: copyOf(terminal) })),
    })),
    sources: sources.map((source) => ({ ...source, terminal: copyOf(source.terminal) })),
  };
}
