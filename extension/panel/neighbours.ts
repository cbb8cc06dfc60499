import type { Join } from "../src/panel/messages";
import type { Rect } from "./viewport";

/** Something of the picture that can be walked to. */
export interface Drawn extends Rect {
  readonly id: string;
}
export type Direction = "left" | "right" | "up" | "down";

/**
 * Where an arrow key leads: left and right along the wires, from a thing to its wire and on to the thing at the other
 * end; up and down, and where no wire leads on, to what lies nearest in that direction. Undefined where nothing does.
 */
export function neighbour(
  drawn: readonly Drawn[],
  joins: readonly Join[],
  from: string,
  direction: Direction,
): string | undefined {
  const here = drawn.find(({ id }) => id === from);
  if (!here) return undefined;
  return along(drawn, joins, here, direction) ?? nearest(drawn, here, direction);
}

function along(drawn: readonly Drawn[], joins: readonly Join[], here: Drawn, direction: Direction): string | undefined {
  if (direction !== "left" && direction !== "right") return undefined;
  const isThere = (id: string): boolean => drawn.some((each) => each.id === id);
  const own = joins.find(({ wire }) => wire === here.id);
  if (own) {
    const end = direction === "right" ? own.to : own.from;
    return isThere(end) ? end : undefined;
  }
  const wires = joins
    .filter(({ from, to }) => (direction === "right" ? from : to) === here.id)
    .flatMap(({ wire }) => drawn.find(({ id }) => id === wire) ?? []);
  // Of several wires the one that goes on most nearly level.
  return least(wires, (wire) => Math.abs(middle(wire).y - middle(here).y))?.id;
}

function nearest(drawn: readonly Drawn[], here: Drawn, direction: Direction): string | undefined {
  const start = middle(here);
  const ahead = (each: Drawn): { readonly on: number; readonly aside: number } => {
    const { x, y } = middle(each);
    const [dx, dy] = [x - start.x, y - start.y];
    if (direction === "left" || direction === "right")
      return { on: direction === "right" ? dx : -dx, aside: Math.abs(dy) };
    return { on: direction === "down" ? dy : -dy, aside: Math.abs(dx) };
  };
  const candidates = drawn
    .filter((each) => each.id !== here.id)
    .map((each) => ({ id: each.id, ...ahead(each) }))
    .filter(({ on }) => on > 1);
  // What lies rather beside than ahead is taken only where nothing lies ahead.
  const before = candidates.filter(({ on, aside }) => on >= aside);
  return least(before.length > 0 ? before : candidates, ({ on, aside }) => on + 2 * aside)?.id;
}

function middle({ x, y, width, height }: Rect): { readonly x: number; readonly y: number } {
  return { x: x + width / 2, y: y + height / 2 };
}

function least<Each>(list: readonly Each[], measure: (each: Each) => number): Each | undefined {
  let best: { readonly each: Each; readonly measured: number } | undefined;
  for (const each of list) {
    const measured = measure(each);
    if (!best || measured < best.measured) best = { each, measured };
  }
  return best?.each;
}
