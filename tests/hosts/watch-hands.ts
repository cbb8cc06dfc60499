import type { Page } from "playwright-core";
import type { Hands } from "./stage.js";

/** What is drawn from one frame to the next, as an eye would have it. */
export function watchHands(page: Page): Hands {
  return {
    /** Begins to count in every frame how often something is drawn. */
    watch: async ({ selector }: { selector: string }) => page.evaluate(beginToWatch, selector),
    /** Ends that; gives the least of the counts, and how many frames there were. */
    watched: async () => page.evaluate(endWatching),
  };
}

interface Watched {
  least: number;
  frames: number;
}

/** Runs in the page. */
function beginToWatch(selector: string): void {
  const page = globalThis as { watched?: Watched };
  const watched: Watched = { least: Number.POSITIVE_INFINITY, frames: 0 };
  page.watched = watched;
  const look = () => {
    if (page.watched !== watched) return;
    watched.frames++;
    watched.least = Math.min(watched.least, document.querySelectorAll(selector).length);
    requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

/** Runs in the page. */
function endWatching(): Watched | undefined {
  const page = globalThis as { watched?: Watched };
  const { watched } = page;
  delete page.watched;
  return watched;
}
