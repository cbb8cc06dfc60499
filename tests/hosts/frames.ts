import type { Frame, Page } from "playwright-core";

/** The page inside the frames in which an editor shows something of its own sort: the first that has such an element. */
export async function frameWith(page: Page, selector: string): Promise<Frame | undefined> {
  for (const frame of page.frames()) {
    const isIt = await frame.evaluate((wanted) => document.querySelector(wanted) !== null, selector).catch(() => false);
    if (isIt) return frame;
  }
  return undefined;
}

export function panelFrame(page: Page): Promise<Frame | undefined> {
  return frameWith(page, "#panel");
}
