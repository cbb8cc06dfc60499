/** Which part of a picture is seen: the picture's point in the upper left corner, and pixels a unit. */
export interface View {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}
export interface Size {
  readonly width: number;
  readonly height: number;
}
export interface Point {
  readonly x: number;
  readonly y: number;
}
export interface Rect extends Point, Size {}

export const leastScale = 0.05;
export const mostScale = 8;
/** A small picture is not blown up to fill a large panel. */
const mostFitScale = 1.5;

/** All of a picture, in the middle. */
export function fit(picture: Size, stage: Size): View {
  const scale = within(Math.min(stage.width / picture.width, stage.height / picture.height, mostFitScale));
  return {
    x: (picture.width - stage.width / scale) / 2,
    y: (picture.height - stage.height / scale) / 2,
    scale,
  };
}

/** Below this the words of a picture cannot be read. */
const legibleScale = 0.7;

/** How a picture is first seen: all of it where that can be read, else its upper left part, where the sources are. */
export function start(picture: Size, stage: Size): View {
  const all = fit(picture, stage);
  if (all.scale >= legibleScale) return all;
  const [width, height] = [stage.width / legibleScale, stage.height / legibleScale];
  return {
    x: Math.min(0, (picture.width - width) / 2),
    y: Math.min(0, (picture.height - height) / 2),
    scale: legibleScale,
  };
}

/** Nearer or farther, while what is at a point of the stage stays there. */
export function zoomAt(view: View, factor: number, at: Point): View {
  const scale = within(view.scale * factor);
  return {
    x: view.x + at.x / view.scale - at.x / scale,
    y: view.y + at.y / view.scale - at.y / scale,
    scale,
  };
}

/** Moves what is seen by pixels of the stage. */
export function pan(view: View, { x, y }: Point): View {
  return { ...view, x: view.x + x / view.scale, y: view.y + y / view.scale };
}

const edge = 24;

/** Moves no farther than is needed to see a part of the picture; what does not fit is seen from its upper left corner. */
export function reveal(view: View, part: Rect, stage: Size): View {
  const margin = edge / view.scale;
  return {
    ...view,
    x: into(view.x, stage.width / view.scale, part.x - margin, part.width + 2 * margin),
    y: into(view.y, stage.height / view.scale, part.y - margin, part.height + 2 * margin),
  };
}

function into(start: number, length: number, partStart: number, partLength: number): number {
  if (partLength > length || partStart < start) return partStart;
  return Math.max(start, partStart + partLength - length);
}

/** Keeps the picture from being lost: some of it is always on the stage. */
export function keepInSight(view: View, picture: Size, stage: Size): View {
  const rest = (2 * edge) / view.scale;
  const bound = (start: number, seen: number, whole: number): number =>
    Math.min(Math.max(start, rest - seen), whole - rest);
  return {
    ...view,
    x: bound(view.x, stage.width / view.scale, picture.width),
    y: bound(view.y, stage.height / view.scale, picture.height),
  };
}

export function viewBox({ x, y, scale }: View, stage: Size): string {
  return [x, y, stage.width / scale, stage.height / scale].map((value) => value.toFixed(2)).join(" ");
}

function within(scale: number): number {
  return Math.min(mostScale, Math.max(leastScale, scale));
}
