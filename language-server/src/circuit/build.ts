import type { Design } from "../design/design.js";
import type { End, Item } from "../design/things.js";
import type { Circuit, Link, Terminal } from "./circuit.js";

/**
 * The circuit of a design: one node a terminal, one link a run or a device's inside. Conductors are drawn as one line:
 * a pair of d.c. conductors, or line and neutral with their earth, is one link; which poles a device opens is a fact
 * of the device.
 */
export function buildCircuit(design: Design): Circuit {
  const terminals = new Map<string, Terminal>();
  const links: Link[] = [];

  const terminal = (item: Item, name: string): Terminal => {
    const id = name === "" ? item.id : `${item.id}.${name}`;
    let found = terminals.get(id);
    if (!found) {
      found = { id, item, name, links: [] };
      terminals.set(id, found);
    }
    return found;
  };
  const join = (a: Terminal, b: Terminal, by: Link["by"], opens: boolean): void => {
    const link: Link = { a, b, by, opens };
    links.push(link);
    a.links.push(link);
    b.links.push(link);
  };

  const addInside = (item: Item): void => {
    const row = item.row;
    if (row) {
      for (const name of row.terminals) terminal(item, name);
      if (row.through && row.terminals.includes("in") && row.terminals.includes("out"))
        join(terminal(item, "in"), terminal(item, "out"), item, row.through === "opens");
    }
    for (const child of item.children) {
      addInside(child);
      // Nesting is feeding: a combiner's fuse lies between its own outer terminal and the bar.
      if (item.kind === "combiner" && child.row?.terminals.includes("out"))
        join(terminal(child, "out"), terminal(item, "in"), item, false);
      else if (item.kind === "combiner" && child.kind === "spd")
        join(terminal(child, "in"), terminal(item, "in"), item, false);
    }
  };
  for (const item of design.items) addInside(item);

  const at = (end: End): Terminal => terminal(end.item, end.terminal);
  for (const run of design.runs) if (run.from && run.to) join(at(run.from), at(run.to), run, false);
  return { terminals, links };
}
