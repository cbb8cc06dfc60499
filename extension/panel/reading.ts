import type { Join } from "../src/panel/messages";

/** The order in which things are told: as the text has them, each followed by the wires that lead on from it. */
export function readingOrder(ids: readonly string[], joins: readonly Join[]): string[] {
  const wires = new Set(joins.map(({ wire }) => wire));
  const told = new Set<string>();
  for (const id of ids) {
    if (wires.has(id)) continue;
    told.add(id);
    for (const { wire, from } of joins) if (from === id && ids.includes(wire)) told.add(wire);
  }
  return [...new Set([...told, ...ids])];
}
