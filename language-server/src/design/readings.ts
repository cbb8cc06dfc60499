import type { Design } from "./design.js";
import type { ReadingDeclaration } from "./model.js";
import { readingRow } from "./schema/wiring.js";
import type { Item, Reading, Run } from "./things.js";

/** The readings of a design whose target exists, in the order of the text. */
export function readingsOf({ readings, runs }: Design): Reading[] {
  let byId: Map<string, Run> | undefined;
  const runOf = (declaration: ReadingDeclaration): Run | undefined => {
    byId ??= new Map(runs.map((run) => [run.id, run]));
    return byId.get(declaration.target.path.join("."));
  };
  return readings.flatMap(({ declaration, item }) => {
    const target = item ?? runOf(declaration);
    return target ? [readingOf(declaration, target)] : [];
  });
}

const memory = new WeakMap<ReadingDeclaration, Reading>();

/** Like other things, a reading stays the same object for as long as its text and its target do. */
function readingOf(declaration: ReadingDeclaration, target: Item | Run): Reading {
  const known = memory.get(declaration);
  if (known?.target === target) return known;
  const { day } = declaration;
  const id = `measured ${target.id}${day === undefined ? "" : ` on ${day}`}`;
  const layers = [{ label: id, block: declaration }];
  const reading: Reading = { is: "reading", id, kind: "measured", row: readingRow, declaration, layers, target };
  memory.set(declaration, reading);
  return reading;
}
