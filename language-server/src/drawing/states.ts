import type { PlacedWire } from "./layout.js";
import { type GroupShape, type Pose, path, rect, round, type Shape, type State } from "./picture.js";

/** What each item and run is like at one moment, by id. Where it is given, devices that switch are drawn as they lie. */
export type States = ReadonlyMap<string, State>;

/** The shapes as they are at one moment: contacts open or closed, what is live hatched. */
export function inState(shapes: readonly Shape[], states: States, of: State = {}): Shape[] {
  return shapes.map((shape): Shape => {
    if (shape.is !== "group") return shape;
    // A device inside a board has a state of its own: it is not that of the board.
    const state = shape.id === undefined ? of : (states.get(shape.id) ?? {});
    const { poses, extent, ...rest } = shape;
    const drawn = (poses && posed(poses, state)) ?? shape.shapes;
    const hatch = extent && state.live ? hatched(extent) : [];
    const label = rest.label === undefined || shape.id === undefined ? rest.label : spoken(rest.label, shape, state);
    return {
      ...rest,
      shapes: [...inState(drawn, states, state), ...hatch],
      ...(label !== undefined && { label }),
      ...(shape.id !== undefined && { state }),
    };
  });
}

function posed(poses: NonNullable<GroupShape["poses"]>, state: State): readonly Shape[] | undefined {
  const pose: Pose = state.open ? "open" : (state.position ?? "closed");
  return poses[pose];
}

/** Hearing it tells the same as seeing it. Nothing is called dead here: what is not marked as live is not proved so. */
function spoken(label: string, { id }: GroupShape, { open, live, position }: State): string {
  const words = [
    open === undefined ? undefined : open ? "open" : "closed",
    position && `lies on ${position}`,
    live ? "live" : undefined,
  ].filter((word) => word !== undefined);
  return id === undefined || words.length === 0 ? label : `${label}, ${words.join(", ")}`;
}

const hatchStyle = { stroke: "live", width: 1.1, opacity: 0.75 } as const;
const pitch = 6;

/** Lines rising to the right over a rectangle, cut at its edges, and the edge itself. */
function hatched({ x, y, w, h }: NonNullable<GroupShape["extent"]>): Shape[] {
  let d = "";
  for (let start = pitch; start < w + h; start += pitch) {
    const [left, right] = [Math.max(0, start - h), Math.min(w, start)];
    d += `M${round(x + left)} ${round(y + start - left)}L${round(x + right)} ${round(y + start - right)}`;
  }
  return [path(d, hatchStyle), rect(x, y, w, h, { ...hatchStyle, radius: 2 })];
}

/** Strokes across a live run, all along it. */
export function liveStrokes(points: PlacedWire["points"]): Shape[] {
  let d = "";
  for (const [index, to] of points.slice(1).entries()) {
    const from = points[index]!;
    const length = Math.abs(to.x - from.x) + Math.abs(to.y - from.y);
    for (let at = pitch / 2; at < length; at += pitch) {
      const [x, y] = [from.x + ((to.x - from.x) * at) / length, from.y + ((to.y - from.y) * at) / length];
      d += `M${round(x - 3)} ${round(y + 5)}L${round(x + 3)} ${round(y - 5)}`;
    }
  }
  return d === "" ? [] : [path(d, { stroke: "live", width: 1.2 })];
}
