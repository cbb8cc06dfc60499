import { element } from "./dom";
import { say } from "./host";

export const cardId = "card";
const delay = 350;
const gap = 8;

/** What is known of the thing that is pointed at, beside it. */
export class Card {
  readonly box = element("div", { id: cardId, class: "card", role: "tooltip", tabindex: -1, hidden: true });
  private wanted: string | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;
  /** Somebody wishes to go into it as soon as it is there. */
  private isAwaited = false;

  constructor(
    private readonly place: (id: string) => DOMRect | undefined,
    back: (id: string) => void,
  ) {
    this.box.addEventListener("pointerenter", () => clearTimeout(this.timer));
    this.box.addEventListener("pointerleave", () => {
      if (!this.hasFocus) this.hide();
    });
    this.box.addEventListener("click", (event) => {
      const link = event.target instanceof Element ? event.target.closest("a") : null;
      if (!link) return;
      event.preventDefault();
      say({ is: "follow", href: link.getAttribute("href") ?? "" });
    });
    this.box.addEventListener("keydown", (event) => {
      if (event.key !== "Escape" || this.wanted === undefined) return;
      event.stopPropagation();
      back(this.wanted);
    });
    this.box.addEventListener("focusout", ({ relatedTarget }) => {
      if (!(relatedTarget instanceof Node && this.box.contains(relatedTarget))) this.hide();
    });
  }

  /** Moves the focus to the first of its links, or to the card itself, to be scrolled. */
  enter(id: string): void {
    if (id === this.wanted && !this.box.hidden) this.goIn(id);
    else {
      clearTimeout(this.timer);
      this.wanted = id;
      this.isAwaited = true;
      say({ is: "tell", id });
    }
  }

  /** Asks after a moment, so that a pointer on its way does not light up all that it passes. */
  lookAt(id: string | undefined): void {
    if (id === this.wanted || this.hasFocus) return;
    this.wanted = id;
    this.isAwaited = false;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => {
      this.empty();
      if (id !== undefined) say({ is: "tell", id });
    }, delay);
  }

  show(id: string, html: string): void {
    const place = this.place(id);
    if (id !== this.wanted || !place || html === "") return;
    this.box.innerHTML = html;
    this.box.hidden = false;
    const { width, height } = this.box.getBoundingClientRect();
    const isBelow = place.bottom + gap + height <= window.innerHeight || place.top < height + gap;
    const top = isBelow ? place.bottom + gap : place.top - gap - height;
    this.box.style.top = `${Math.max(gap, Math.min(top, window.innerHeight - height - gap))}px`;
    this.box.style.left = `${Math.max(gap, Math.min(place.left, window.innerWidth - width - gap))}px`;
    if (this.isAwaited) this.goIn(id);
  }

  /** True where there was one. */
  hide(): boolean {
    clearTimeout(this.timer);
    this.wanted = undefined;
    this.isAwaited = false;
    const wasShown = !this.box.hidden;
    this.empty();
    return wasShown;
  }

  private get hasFocus(): boolean {
    return this.box.contains(document.activeElement);
  }

  private goIn(id: string): void {
    this.isAwaited = false;
    (this.box.querySelector<HTMLElement>("a") ?? this.box).focus();
    // The thing has lost the focus to the card that tells of it, which stays.
    clearTimeout(this.timer);
    this.wanted = id;
  }

  /** What is hidden still describes things to those who hear the page. */
  private empty(): void {
    this.box.hidden = true;
    this.box.replaceChildren();
  }
}
