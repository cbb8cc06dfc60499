import {
  fit,
  keepInSight,
  type Point,
  pan,
  type Rect,
  reveal,
  type Size,
  type View,
  viewBox,
  zoomAt,
} from "./viewport";

const zoomStep = 1.25;
/** So many pixels a press of the pointer may wander and still be a click. */
const stillness = 4;

/** The frame that a picture is looked at through: moves and enlarges it by pointer, wheel and buttons. */
export class Stage {
  private view: View | undefined;
  /** Nobody has moved it: it goes on showing all of the picture, whatever size that comes to. */
  private isFitted = true;
  private svg: SVGSVGElement | undefined;
  private picture: Size = { width: 1, height: 1 };
  private dragged: { readonly from: Point; readonly view: View; isMoved: boolean } | undefined;

  constructor(
    readonly frame: HTMLElement,
    kept: View | undefined,
    private readonly onMoved: (view: View | undefined) => void,
  ) {
    if (kept) {
      this.view = kept;
      this.isFitted = false;
    }
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
  private wasDragged = false;

  /** Another picture is looked at, or the same in a new form; what is seen stays unless all of it was seen. */
  use(svg: SVGSVGElement, picture: Size): void {
    this.svg = svg;
    this.picture = picture;
    this.show();
  }

  fit(): void {
    this.isFitted = true;
    this.show();
    this.onMoved(undefined);
  }

  zoom(direction: 1 | -1, at: Point = this.middle()): void {
    this.move(zoomAt(this.seen(), zoomStep ** direction, at));
  }

  pan(by: Point): void {
    this.move(pan(this.seen(), by));
  }

  reveal(part: Rect): void {
    const view = this.seen();
    const next = reveal(view, part, this.size);
    if (next.x !== view.x || next.y !== view.y) this.move(next);
  }

  private move(view: View): void {
    this.view = keepInSight(view, this.picture, this.size);
    this.isFitted = false;
    this.show();
    this.onMoved(this.view);
  }

  private seen(): View {
    return this.isFitted || !this.view ? fit(this.picture, this.size) : this.view;
  }

  private show(): void {
    const { width, height } = this.size;
    if (!this.svg || width === 0 || height === 0) return;
    this.view = this.seen();
    this.svg.setAttribute("viewBox", viewBox(this.view, this.size));
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
      this.dragged = { from: { x: event.clientX, y: event.clientY }, view: this.seen(), isMoved: false };
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
