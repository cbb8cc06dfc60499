/**
 * Puts something new into a box; the focus stays on what it was on, by its `data-key`. Where that is gone, it goes to what
 * stands in its place, so that nobody has to begin at the top of the page.
 */
export function redraw(box: HTMLElement, draw: () => void): void {
  const before = stops(box);
  const at = before.indexOf(document.activeElement as HTMLElement);
  const key = before[at]?.dataset.key;
  draw();
  if (at < 0) return;
  const after = stops(box);
  const isSame = (stop: HTMLElement | undefined): boolean => key !== undefined && stop?.dataset.key === key;
  const next = isSame(after[at]) ? after[at] : (after.find(isSame) ?? after[Math.min(at, after.length - 1)]);
  next?.focus({ preventScroll: true });
}

function stops(box: HTMLElement): HTMLElement[] {
  return [...box.querySelectorAll<HTMLElement>("button, select, summary")];
}
