import type { Assessment } from "../../assessment/assessment.js";
import { given } from "../../design/facts.js";
import type { Offer } from "./offer.js";
import { tokensBefore } from "./tokens.js";
import type { Wanted } from "./wanted.js";

/** So many free ways are enough to choose from. */
const most = 12;

/**
 * Numbers of the ways that nothing is written for, of the board that the cursor is in. They are read off its text: while
 * a line is half typed the design is that of before.
 */
export function freeWayOffers({ design }: Assessment, { blocks }: Wanted, text: string): Offer[] {
  const named = blocks.find(({ head }) => head.kind === "board")?.head.name;
  const board = named === undefined ? undefined : design.names.top.get(named);
  const ways = board && given(board, "ways")?.value;
  if (!board || ways === undefined || !Number.isFinite(ways)) return [];
  const taken = new Set(waysIn(text));
  const free: Offer[] = [];
  for (let way = 1; way <= ways && free.length < most; way++)
    if (!taken.has(way))
      free.push({ label: String(way), sort: "name", detail: `free way of ${board.id}`, insert: `${way}: ` });
  return free;
}

function waysIn(text: string): number[] {
  const { tokens } = tokensBefore(text, 0, text.length);
  return tokens.flatMap(({ token, image }, index) => {
    const next = tokens[index + 1];
    return token === "word" && image === "way" && next?.token === "number" ? [Number(next.image)] : [];
  });
}
