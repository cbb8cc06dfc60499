import { element } from "./dom";
import { say } from "./host";

export const cardId = "card";
const delay = 350;
const gap = 8;

/** What is known of the thing that is pointed at, beside it. */
export class Card {
  readonly box = element("div", { id: cardId, class: "card", role: "tooltip", hidden: true });
  private wanted: string | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(private readonly place: (id: string) => DOMRect | undefined) {
    this.box.addEventListener("pointerenter", () => clearTimeout(this.timer));
    this.box.addEventListener("pointerleave", () => this.hide());
    this.box.addEventListener("click", (event) => {
      const link = event.target instanceof Element ? event.target.closest("a") : null;
      if (!link) return;
      event.preventDefault();
      say({ is: "follow", href: link.getAttribute("href") ?? "" });
    });
  }

  /** Asks after a moment, so that a pointer on its way does not light up all that it passes. */
  lookAt(id: string | undefined): void {
    if (id === this.wanted) return;
    this.wanted = id;
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
  }

  /** True where there was one. */
  hide(): boolean {
    clearTimeout(this.timer);
    this.wanted = undefined;
    const wasShown = !this.box.hidden;
    this.empty();
    return wasShown;
  }

  /** What is hidden still describes things to those who hear the page. */
  private empty(): void {
    this.box.hidden = true;
    this.box.replaceChildren();
  }
}
