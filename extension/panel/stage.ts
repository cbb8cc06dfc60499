import {
  fit,
  keepInSight,
  type Point,
  pan,
  type Rect,
  reveal,
  type Size,
  start,
  type View,
  viewBox,
  zoomAt,
} from "./viewport";

/** What is seen: as a picture is first shown, all of it, or what somebody moved it to. */
export type Seen = View | "start" | "all";

const zoomStep = 1.25;
/** So many pixels a press of the pointer may wander and still be a click. */
const stillness = 4;

/** The frame that a picture is looked at through: moves and enlarges it by pointer, wheel and buttons. */
export class Stage {
  private svg: SVGSVGElement | undefined;
  private picture: Size = { width: 1, height: 1 };
  private wasDragged = false;
  private dragged: { readonly from: Point; readonly view: View; isMoved: boolean } | undefined;

  constructor(
    readonly frame: HTMLElement,
    private seen: Seen,
    private readonly onMoved: (seen: Seen) => void,
  ) {
    new ResizeObserver(() => this.show()).observe(frame);
    frame.addEventListener("wheel", (event) => this.wheel(event), { passive: false });
    frame.addEventListener("pointerdown", (event) => this.press(event));
    frame.addEventListener("pointermove", (event) => this.drag(event));
    for (const end of ["pointerup", "pointercancel"] as const) frame.addEventListener(end, () => this.release());
    // The end of a drag is no click on what happens to be there.
    frame.addEventListener(
      "click",
      (event) => {
        if (this.wasDragged) event.stopPropagation();
      },
      { capture: true },
    );
  }

  /** Another picture is looked at, or the same in a new form; what somebody moved it to stays. */
  use(svg: SVGSVGElement, picture: Size): void {
    this.svg = svg;
    this.picture = picture;
    this.show();
  }

  fit(): void {
    this.look("all");
  }

  /** Begins anew, as with another picture. */
  restart(): void {
    this.look("start");
  }

  /** Goes along with something that has moved in the picture, where somebody chose what is seen. */
  follow(by: Point): void {
    if (typeof this.seen === "object") this.move({ ...this.seen, x: this.seen.x + by.x, y: this.seen.y + by.y });
  }

  zoom(direction: 1 | -1, at: Point = this.middle()): void {
    this.move(zoomAt(this.view, zoomStep ** direction, at));
  }

  pan(by: Point): void {
    this.move(pan(this.view, by));
  }

  reveal(part: Rect): void {
    const { view } = this;
    const next = reveal(view, part, this.size);
    if (next.x !== view.x || next.y !== view.y) this.move(next);
  }

  private move(view: View): void {
    this.look(keepInSight(view, this.picture, this.size));
  }

  private look(seen: Seen): void {
    this.seen = seen;
    this.show();
    this.onMoved(seen);
  }

  private get view(): View {
    if (typeof this.seen === "object") return this.seen;
    return this.seen === "all" ? fit(this.picture, this.size) : start(this.picture, this.size);
  }

  private show(): void {
    const { width, height } = this.size;
    if (this.svg && width > 0 && height > 0) this.svg.setAttribute("viewBox", viewBox(this.view, this.size));
  }

  private get size(): Size {
    return { width: this.frame.clientWidth, height: this.frame.clientHeight };
  }

  private middle(): Point {
    return { x: this.size.width / 2, y: this.size.height / 2 };
  }

  private wheel(event: WheelEvent): void {
    event.preventDefault();
    const { left, top } = this.frame.getBoundingClientRect();
    if (event.ctrlKey || event.metaKey)
      this.zoom(event.deltaY < 0 ? 1 : -1, { x: event.clientX - left, y: event.clientY - top });
    else this.pan(event.shiftKey ? { x: event.deltaY, y: event.deltaX } : { x: event.deltaX, y: event.deltaY });
  }

  private press(event: PointerEvent): void {
    this.wasDragged = false;
    if (event.button === 0)
      this.dragged = { from: { x: event.clientX, y: event.clientY }, view: this.view, isMoved: false };
  }

  private drag(event: PointerEvent): void {
    if (!this.dragged) return;
    const { from, view } = this.dragged;
    const by = { x: from.x - event.clientX, y: from.y - event.clientY };
    if (!this.dragged.isMoved && Math.hypot(by.x, by.y) < stillness) return;
    if (!this.dragged.isMoved) this.frame.setPointerCapture(event.pointerId);
    this.dragged.isMoved = true;
    this.move(pan(view, by));
  }

  private release(): void {
    this.wasDragged = this.dragged?.isMoved === true;
    this.dragged = undefined;
  }
}
