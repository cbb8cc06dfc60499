import type { Assessment } from "../../assessment/assessment.js";
import { given } from "../../design/facts.js";
import type { Item } from "../../design/things.js";
import type { Offer } from "./offer.js";
import type { Wanted } from "./wanted.js";

/** So many free ways are enough to choose from. */
const most = 12;

/** Numbers of the ways that nothing is written for, of the board that the cursor is in. */
export function freeWayOffers({ design }: Assessment, { blocks }: Wanted): Offer[] {
  const named = blocks.find(({ head }) => head.kind === "board")?.head.name;
  const board = named === undefined ? undefined : design.names.top.get(named);
  const ways = board && given(board, "ways")?.value;
  if (!board || ways === undefined || !Number.isFinite(ways)) return [];
  const taken = new Set(takenIn(board));
  const free: Offer[] = [];
  for (let way = 1; way <= ways && free.length < most; way++)
    if (!taken.has(way))
      free.push({ label: String(way), sort: "name", detail: `free way of ${board.id}`, insert: `${way}: ` });
  return free;
}

function* takenIn(item: Item): Generator<number> {
  for (const child of item.children) {
    if (child.declaration.way) yield child.declaration.way.value;
    yield* takenIn(child);
  }
}
