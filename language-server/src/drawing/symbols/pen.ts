import { type PathShape, path, polyline, type Stroke } from "../picture.js";

/** Half the length of a symbol with its leads, and half its height. Leads run along y = 0. */
export const reach = 24;
export const rise = 14;

/** Draws around the origin, with x turned over where the lead comes from the other side. */
export interface Pen {
  readonly mirror: 1 | -1;
  /** Devices that switch are drawn open by the standard, and closed where their state is shown. */
  readonly isClosed: boolean;
  line(...points: readonly (readonly [number, number])[]): PathShape;
  solid(...points: readonly (readonly [number, number])[]): PathShape;
  curve(d: (x: (value: number) => number) => string, style?: Stroke): PathShape;
}

export const thin = 1.3;

export function pen(mirror: 1 | -1, isClosed = false): Pen {
  const place = (points: readonly (readonly [number, number])[]) =>
    polyline(points.map(([x, y]) => ({ x: x * mirror, y })));
  return {
    mirror,
    isClosed,
    line: (...points) => path(place(points), { stroke: "ink", width: thin }),
    solid: (...points) => path(`${place(points)}Z`, { stroke: "ink", width: thin, fill: "ink" }),
    curve: (d, style = { stroke: "ink", width: thin }) =>
      path(
        d((value) => value * mirror),
        style,
      ),
  };
}
