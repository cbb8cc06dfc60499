import morphdom from "morphdom";
import type { Join } from "../src/panel/messages";
import { cardId } from "./card";
import { hush } from "./dom";
import { type Direction, type Drawn, neighbour } from "./neighbours";
import { readingOrder } from "./reading";
import type { Stage } from "./stage";
import type { Point, Rect } from "./viewport";

/** The words that say which keys the picture takes. */
export const keysId = "keys";

export interface PictureActions {
  /** A click. */
  press(id: string): void;
  goTo(id: string): void;
  /** Somebody points at a thing, or stands on it; undefined: at nothing any more. */
  lookAt(id: string | undefined): void;
  /** A key that is pressed on a thing and means nothing here; true where it meant something there. */
  key(key: string, id: string): boolean;
}

const arrows: Readonly<Record<string, Direction>> = {
  ArrowLeft: "left",
  ArrowRight: "right",
  ArrowUp: "up",
  ArrowDown: "down",
};

/** The diagram in the page: every thing can be reached, is told of and leads to its text. */
export class Picture {
  private svg: SVGSVGElement | undefined;
  private joins: readonly Join[] = [];
  /** The one thing that the Tab key comes to. */
  private current: string | undefined;
  private marked: string | undefined;

  constructor(
    private readonly stage: Stage,
    private readonly actions: PictureActions,
  ) {
    const { frame } = stage;
    frame.addEventListener("click", (event) => {
      const id = idOf(event.target);
      if (id === undefined) return;
      this.stand(id);
      actions.press(id);
    });
    frame.addEventListener("keydown", (event) => this.press(event));
    frame.addEventListener("focusin", (event) => {
      const id = idOf(event.target);
      if (id === undefined) return;
      this.current = id;
      this.reveal(id);
      actions.lookAt(id);
    });
    frame.addEventListener("focusout", () => actions.lookAt(undefined));
    frame.addEventListener("pointerover", (event) => actions.lookAt(idOf(event.target)));
    frame.addEventListener("pointerleave", () => actions.lookAt(undefined));
  }

  /** Shows a picture in the place of the one before: what is the same thing stays the same element, with its focus. */
  show(text: string, joins: readonly Join[]): void {
    this.joins = joins;
    const next = new DOMParser().parseFromString(text, "image/svg+xml").documentElement as unknown as SVGSVGElement;
    const size = { width: next.width.baseVal.value, height: next.height.baseVal.value };
    this.prepare(next);
    const kept = this.marked ?? this.current;
    const before = this.origin(kept);
    if (this.svg) {
      const viewBox = this.svg.getAttribute("viewBox");
      if (viewBox) next.setAttribute("viewBox", viewBox);
      morphdom(this.svg, document.importNode(next, true), {
        getNodeKey: (node) => (node instanceof Element ? (node.getAttribute("data-id") ?? undefined) : undefined),
        onBeforeElUpdated: (from, to) => !from.isEqualNode(to),
      });
    } else {
      this.svg = document.importNode(next, true);
      this.stage.frame.replaceChildren(this.svg);
    }
    this.stage.use(this.svg, size);
    const after = this.origin(kept);
    if (before && after && isFarther(before, after))
      this.stage.follow({ x: after.x - before.x, y: after.y - before.y });
  }

  clear(): void {
    this.svg = undefined;
    this.stage.frame.replaceChildren();
  }

  /** Marks what the cursor in the text stands on, or what that is a part of, and brings it in sight. */
  mark(inText: string | undefined): void {
    const id = this.outermost(inText);
    if (id === this.marked) return;
    this.marked = id;
    for (const each of this.svg?.querySelectorAll(".at-cursor") ?? []) each.classList.remove("at-cursor");
    if (id === undefined) return;
    const found = this.find(id);
    found?.classList.add("at-cursor");
    if (found && !this.stage.frame.contains(document.activeElement)) {
      this.stand(id);
      this.reveal(id);
    }
  }

  /** `INV` of `INV.pv1`, which is drawn with it; undefined where nothing of it is drawn. */
  private outermost(id: string | undefined): string | undefined {
    if (id === undefined || this.find(id)) return id;
    return this.outermost(/^(.+)\.[^.]+$/.exec(id)?.[1]);
  }

  /** The place of a thing in the window. */
  place(id: string): DOMRect | undefined {
    return this.find(id)?.getBoundingClientRect();
  }

  private prepare(svg: SVGSVGElement): void {
    const order = readingOrder(idsIn(svg), this.joins);
    if (this.current === undefined || !order.includes(this.current)) this.current = order[0];
    inOrder(svg, order);
    svg.setAttribute("role", "group");
    svg.setAttribute("aria-describedby", `${keysId} ${svg.getAttribute("aria-describedby") ?? ""}`);
    // Each thing says its findings itself.
    for (const each of svg.querySelectorAll(".mark")) each.setAttribute("aria-hidden", "true");
    for (const each of svg.querySelectorAll<SVGGElement>("[data-id]")) {
      // It would be shown beside the card, which tells the same.
      each.querySelector(":scope > title")?.remove();
      // What holds other things cannot be a button: its inside would be passed over.
      each.setAttribute("role", each.querySelector("[data-id]") ? "group" : "button");
      each.setAttribute("aria-describedby", cardId);
      each.setAttribute("tabindex", each.dataset.id === this.current ? "0" : "-1");
      if (each.dataset.id === this.marked) each.classList.add("at-cursor");
    }
    hush(svg);
  }

  private press(event: KeyboardEvent): void {
    const id = idOf(event.target);
    if (id === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    if (!this.act(event.key, id)) return;
    event.preventDefault();
    event.stopPropagation();
  }

  private act(key: string, id: string): boolean {
    const direction = arrows[key];
    if (direction) {
      const next = neighbour(this.drawn(), this.joins, id, direction);
      if (next !== undefined) this.focus(next);
      return true;
    }
    switch (key) {
      case "Enter":
        this.actions.goTo(id);
        return true;
      case "Home":
      case "End": {
        const drawn = this.drawn();
        const end = key === "Home" ? drawn[0] : drawn.at(-1);
        if (end) this.focus(end.id);
        return true;
      }
      default:
        return this.actions.key(key, id);
    }
  }

  focus(id: string): void {
    this.stand(id);
    this.find(id)?.focus({ preventScroll: true });
  }

  private stand(id: string): void {
    for (const each of this.svg?.querySelectorAll("[tabindex='0']") ?? []) each.setAttribute("tabindex", "-1");
    this.find(id)?.setAttribute("tabindex", "0");
    this.current = id;
  }

  private reveal(id: string): void {
    const place = this.placeInPicture(id);
    if (place) this.stage.reveal(place);
  }

  /** Where a thing, or what it is inside of, stands in the picture; runs stand nowhere in particular. */
  private origin(id: string | undefined): Point | undefined {
    const found = id === undefined ? null : this.find(id)?.closest<SVGGElement>(".drawing > [transform]");
    const matrix = found?.transform.baseVal.consolidate()?.matrix;
    return matrix && { x: matrix.e, y: matrix.f };
  }

  private placeInPicture(id: string): Rect | undefined {
    const place = this.place(id);
    const matrix = this.svg?.getScreenCTM()?.inverse();
    if (!place || !matrix) return undefined;
    const { x, y } = new DOMPoint(place.x, place.y).matrixTransform(matrix);
    return { x, y, width: place.width * matrix.a, height: place.height * matrix.d };
  }

  private drawn(): Drawn[] {
    return [...(this.svg?.querySelectorAll<SVGGElement>("[data-id]") ?? [])].map((each) => {
      const { x, y, width, height } = each.getBoundingClientRect();
      return { id: each.dataset.id ?? "", x, y, width, height };
    });
  }

  private find(id: string): SVGGElement | null {
    return this.svg?.querySelector<SVGGElement>(`[data-id="${CSS.escape(id)}"]`) ?? null;
  }
}

/** A label that has grown moves its thing by a little; following that would make all the rest tremble. */
function isFarther(a: Point, b: Point): boolean {
  return Math.hypot(a.x - b.x, a.y - b.y) > 12;
}

function idOf(target: EventTarget | null): string | undefined {
  const found = target instanceof Element ? target.closest("[data-id]") : null;
  return found?.getAttribute("data-id") ?? undefined;
}

/** It is drawn with all wires first; what is read comes in another order. */
function inOrder(svg: SVGSVGElement, order: readonly string[]): void {
  const drawing = svg.querySelector(".drawing");
  const things = new Map([...(drawing?.children ?? [])].map((each) => [each.getAttribute("data-id"), each]));
  drawing?.prepend(...order.flatMap((id) => things.get(id) ?? []));
}

function idsIn(svg: SVGSVGElement): string[] {
  return [...svg.querySelectorAll("[data-id]")].map((each) => each.getAttribute("data-id") ?? "");
}
