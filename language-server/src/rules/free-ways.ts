import { flagOf } from "../design/facts.js";
import { type Item, isWrittenHere } from "../design/things.js";
import type { Judge } from "./judge.js";

/** Numbers of ways that nothing is written for; undefined where nobody says how many there are. */
export function freeNumbers(board: Item, judge: Judge, most: number): number[] | undefined {
  const ways = judge.quantity(board, "ways");
  if (!ways) return undefined;
  const taken = new Set(takenWays(board));
  const free: number[] = [];
  for (let way = 1; way <= ways.value && free.length < most; way++) if (!taken.has(way)) free.push(way);
  return free;
}

function* takenWays({ children }: Item): Generator<number> {
  for (const child of children) {
    if (child.declaration.way) yield child.declaration.way.value;
    yield* takenWays(child);
  }
}

/**
 * Whether a fix may put a further device into a board: into a new one unless its sheet says otherwise; into one that was
 * there before only where somebody looked, and it takes a device of its maker.
 */
export function takesDevices(board: Item): boolean {
  const said = ["spare-ways-usable", "devices-of-board-maker"].map((name) => flagOf(board, name));
  const isEnough =
    flagOf(board, "existing") === true ? (one?: boolean) => one === true : (one?: boolean) => one !== false;
  return isWrittenHere(board) && said.every(isEnough);
}
