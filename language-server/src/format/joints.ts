import { type Gap, isComment, none, one, type Piece, two } from "./pieces.js";

const tightBefore = new Set([":", ".", ",", "]"]);
const tightAfter = new Set([".", "["]);

/** What stands between two pieces of one sentence. `steps` is the indentation of a line that has to go on below. */
export function joint(before: Piece, piece: Piece, steps: number): Gap {
  if (before.is === "line-comment") return { is: "line", blank: false, steps: steps + 1 };
  if (piece.is === "line-comment") return two;
  if (isComment(before) || isComment(piece)) return one;
  if (piece.is === "mark" && tightBefore.has(piece.written)) return none;
  if (before.is === "mark" && tightAfter.has(before.written)) return none;
  return one;
}
