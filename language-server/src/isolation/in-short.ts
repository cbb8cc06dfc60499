import type { Assessment } from "../assessment/assessment.js";
import { isolate } from "../circuit/cuts.js";
import { isolationText } from "../circuit/isolation-text.js";
import type { Item, Run } from "../design/things.js";
import { isIncomplete } from "./incomplete.js";

/** Beyond so many a summary is none. */
const shown = 6;

export interface IsolationInShort {
  /** The smallest set of devices: "Open Q1 and Q3: INV is dead, if it is wired as written. Prove it dead." */
  readonly open: string;
  /** "Q1.in, from S1 in any light" */
  readonly stillLive: readonly string[];
}

/**
 * How to make a thing dead, in the words of the whole report. Undefined for what has no terminal. Searches the circuit:
 * for when somebody asks, not for every edit.
 */
export function isolationInShort(assessment: Assessment, thing: Item | Run): IsolationInShort | undefined {
  if (isIncomplete(assessment))
    return hasTerminals(thing)
      ? { open: `What makes ${thing.id} dead is not worked out while the text has errors.`, stillLive: [] }
      : undefined;
  const { circuit } = assessment;
  // One set is enough here, and the smallest is found without looking at many.
  const isolation = isolate(circuit, thing, { sets: 1, looked: 1 });
  if (isolation.terminals.length === 0) return undefined;
  const { open, stillLive } = isolationText(circuit, isolation);
  const more = stillLive.length - shown;
  return { open, stillLive: more > 0 ? [...stillLive.slice(0, shown), `${more} more`] : stillLive };
}

function hasTerminals(thing: Item | Run): boolean {
  return thing.is === "run" || (thing.row?.terminals.length ?? 0) > 0 || thing.children.some(hasTerminals);
}
