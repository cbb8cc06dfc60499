import type { Design } from "./design.js";
import type { ReadingDeclaration } from "./model.js";
import { readingRow } from "./schema/wiring.js";
import type { Item, Reading, Run } from "./things.js";

/** The readings of a design whose target exists, in the order of the text. */
export function readingsOf({ readings, runs }: Design): Reading[] {
  if (readings.length === 0) return [];
  const byId = new Map(runs.map((run) => [run.id, run]));
  return readings.flatMap(({ declaration, item }) => {
    const target = item ?? byId.get(declaration.target.path.join("."));
    return target ? [readingOf(declaration, target)] : [];
  });
}

function readingOf(declaration: ReadingDeclaration, target: Item | Run): Reading {
  const { day } = declaration;
  const id = `measured ${target.id}${day === undefined ? "" : ` on ${day}`}`;
  const layers = [{ label: id, block: declaration }];
  return { is: "reading", id, kind: "measured", row: readingRow, declaration, layers, target };
}
