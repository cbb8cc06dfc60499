/**
 * A picture as vector shapes, in user units of 1/96 inch with y downwards. Whatever writes a file (SVG, PDF) reads
 * this; nothing is measured or decided after it.
 */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly title: string;
  readonly description: string;
  readonly shapes: readonly Shape[];
}

export type Shape = PathShape | RectShape | CircleShape | TextShape | GroupShape;

export interface Stroke {
  /** Undefined: no line. */
  readonly stroke?: Paint;
  readonly width?: number;
  readonly dash?: readonly number[];
  /** Undefined: not filled. */
  readonly fill?: Paint;
  readonly opacity?: number;
}
export interface PathShape extends Stroke {
  readonly is: "path";
  /** SVG path data with absolute commands. */
  readonly d: string;
}
export interface RectShape extends Stroke {
  readonly is: "rect";
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  readonly radius?: number;
}
export interface CircleShape extends Stroke {
  readonly is: "circle";
  readonly x: number;
  readonly y: number;
  readonly r: number;
}
export interface TextShape {
  readonly is: "text";
  /** Left end, middle or right end by `anchor`; y is the base line. */
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly size: number;
  readonly bold?: boolean;
  readonly anchor?: "start" | "middle" | "end";
  readonly fill?: Paint;
}
/** Shapes that belong to one thing of the text. */
export interface GroupShape {
  readonly is: "group";
  readonly shapes: readonly Shape[];
  /** Id of the item or run. */
  readonly id?: string;
  /** What sort of thing it is: a class for style sheets. */
  readonly sort?: string;
  /** Read aloud, and shown on hovering. */
  readonly label?: string;
  /** The point all shapes of the group are relative to. */
  readonly x?: number;
  readonly y?: number;
  /** Other ways to draw it, for pictures that show in which state each thing is. */
  readonly poses?: Readonly<Partial<Record<Pose, readonly Shape[]>>>;
  /** What is hatched where the thing is live. */
  readonly extent?: { readonly x: number; readonly y: number; readonly w: number; readonly h: number };
  readonly state?: State;
}

/** `grid` and `backup` are the contacts of a changeover switch. */
export type Pose = "open" | "closed" | "grid" | "backup";
/** What is known of a thing at one moment; what is undefined is not shown. */
export interface State {
  readonly open?: boolean;
  readonly live?: boolean;
  /** The contact that a changeover switch lies on. */
  readonly position?: "grid" | "backup";
}

/** What a colour is for; themes say which it is. */
export type Paint =
  | "ink"
  | "faint"
  | "paper"
  | "panel"
  | "rule"
  | "dc"
  | "ac"
  | "earth"
  | "error"
  | "warning"
  | "note"
  | "band"
  | "live"
  | "first"
  | "second"
  | "third"
  | "fourth";

/* Short constructors, so that a drawing reads as a drawing. */
export const path = (d: string, style: Stroke = { stroke: "ink" }): PathShape => ({ is: "path", d, ...style });
export const line = (x1: number, y1: number, x2: number, y2: number, style?: Stroke): PathShape =>
  path(`M${round(x1)} ${round(y1)}L${round(x2)} ${round(y2)}`, style);
export const rect = (x: number, y: number, w: number, h: number, style: Stroke & { radius?: number }): RectShape => ({
  is: "rect",
  x,
  y,
  w,
  h,
  ...style,
});
export const circle = (x: number, y: number, r: number, style: Stroke = { stroke: "ink" }): CircleShape => ({
  is: "circle",
  x,
  y,
  r,
  ...style,
});
export const text = (
  x: number,
  y: number,
  words: string,
  style: Omit<TextShape, "is" | "x" | "y" | "text">,
): Shape => ({
  is: "text",
  x,
  y,
  text: words,
  ...style,
});
export const group = (shapes: readonly Shape[], about: Omit<GroupShape, "is" | "shapes"> = {}): GroupShape => ({
  is: "group",
  shapes,
  ...about,
});

/** Two decimals: the same on every machine, and finer than any printer. */
export function round(value: number): number {
  const rounded = Math.round(value * 100) / 100;
  return rounded === 0 ? 0 : rounded;
}

export function polyline(points: readonly { readonly x: number; readonly y: number }[]): string {
  return points.map(({ x, y }, index) => `${index === 0 ? "M" : "L"}${round(x)} ${round(y)}`).join("");
}
