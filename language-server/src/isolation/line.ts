import type { Assessment } from "../assessment/assessment.js";
import { isolate } from "../circuit/cuts.js";
import { deviceText, isolationText } from "../circuit/isolation-text.js";
import type { Item, Run } from "../design/things.js";
import { isIncomplete } from "./incomplete.js";

/** Beyond so many a line is no line. */
const shown = 6;

/**
 * How to make a thing dead, in one line: "Dead with Q1 and Q3 open, if it is wired as written; stays live: Q1.in: S1 in
 * any light". Undefined for what has no terminal. Searches the circuit: for when somebody asks, not for every edit.
 */
export function isolationLine(assessment: Assessment, thing: Item | Run): string | undefined {
  if (isIncomplete(assessment))
    return hasTerminals(thing) ? `What makes ${thing.id} dead is not worked out while the text has errors` : undefined;
  const { circuit } = assessment;
  // One set is enough here, and the smallest is found without looking at many.
  const isolation = isolate(circuit, thing, { sets: 1, looked: 1 });
  if (isolation.terminals.length === 0) return undefined;
  const [first] = isolation.cuts;
  const { stillLive } = isolationText(circuit, isolation);
  const live =
    stillLive.length > shown ? [...stillLive.slice(0, shown), `${stillLive.length - shown} more`] : stillLive;
  return (
    deadText(thing.id, first, isolation.staysLive.length > 0) +
    (live.length > 0 ? `; stays live: ${live.join("; ")}` : "")
  );
}

function hasTerminals(thing: Item | Run): boolean {
  return thing.is === "run" || (thing.row?.terminals.length ?? 0) > 0 || thing.children.some(hasTerminals);
}

function deadText(id: string, first: readonly Item[] | undefined, someStaysLive: boolean): string {
  if (!first) return `No set of devices makes ${id} dead`;
  if (first.length === 0)
    return someStaysLive ? `Nothing else feeds ${id}` : `Nothing that is written here feeds ${id}`;
  const open = first.map(deviceText).join(", ");
  return someStaysLive
    ? `All but what stays live is dead with ${open} open, if it is wired as written`
    : `Dead with ${open} open, if it is wired as written`;
}
