import { chmodSync, mkdirSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { accessHands } from "./access-hands.js";
import { panelFrame } from "./frames.js";
import type { Host } from "./host.js";
import { descendants } from "./processes.js";
import type { Hands } from "./stage.js";
import { watchHands } from "./watch-hands.js";
import { windowHands, windowSize } from "./window-hands.js";

const titleHeight = 30;

export interface Outside {
  readonly host: Host;
  readonly browser: Browser;
  readonly page: Page;
  /** Where pictures go. */
  readonly pictures: string;
  /** The folder that is open. */
  readonly folder: string;
}

/** What is done to a host from outside while its tests run inside. */
export function handsOf({ host, browser, page, pictures, folder }: Outside): Hands {
  const servers = () =>
    host.pid === undefined
      ? []
      : descendants(host.pid).filter(({ words }) => words.some((word) => word.endsWith("dist/server.cjs")));
  return {
    ...accessHands(page, pictures),
    ...watchHands(page),
    ...windowHands(browser, host, pictures),
    /** Takes a picture of the window, without the title, which is the test host's. */
    picture: async ({ name }: { name: string }) => {
      mkdirSync(pictures, { recursive: true });
      const clip = { x: 0, y: titleHeight, width: windowSize.width, height: windowSize.height - titleHeight };
      await page.screenshot({ path: join(pictures, `${name}.png`), clip });
    },
    /** Presses keys in the window, as `Control+a`. */
    press: async ({ key }: { key: string }) => page.keyboard.press(key),
    type: async ({ text }: { text: string }) => page.keyboard.type(text),
    /** The words that are shown in some place of the page. */
    words: async ({ selector }: { selector: string }) => page.locator(selector).allInnerTexts(),
    /** What some attribute of some places of the page says. */
    attribute: async ({ selector, name }: { selector: string; name: string }) =>
      page.locator(selector).evaluateAll((found, key) => found.map((each) => each.getAttribute(key) ?? ""), name),
    /** The words in the frames of panels and previews. */
    panels: async () => {
      const texts = page
        .frames()
        .map((frame) => frame.evaluate(() => document.body?.textContent ?? "").catch(() => ""));
      return (await Promise.all(texts)).filter((words) => words !== "");
    },
    /** What some element of our own panel's page is like; undefined where there is no such panel or element. */
    inPanel: async ({ selector }: { selector: string }) => {
      const frame = await panelFrame(page);
      return frame?.evaluate(lookOf, selector);
    },
    /** Clicks something in our own panel's page; the middle of it, or of what is seen of it. */
    clickInPanel: async ({ selector }: { selector: string }) => {
      const frame = await panelFrame(page);
      if (!frame) throw new Error("There is no panel");
      await frame.locator(selector).first().click({ timeout: 5_000 });
    },
    /** Points at something in our own panel's page. */
    pointInPanel: async ({ selector }: { selector: string }) => {
      const frame = await panelFrame(page);
      await frame?.locator(selector).first().hover({ timeout: 5_000 });
    },
    /**
     * Puts the focus on something in our own panel's page, so that keys go there. The editor may still be giving it to
     * what was in front before: it is there when it stays.
     */
    focusInPanel: async ({ selector }: { selector: string }) => {
      const found = (await panelFrame(page))?.locator(selector).first();
      for (let tries = 0, held = 0; found && held < 3; tries++) {
        if (tries > 40) throw new Error(`The focus does not stay on ${selector}`);
        held = (await found.evaluate(hasKeys)) ? held + 1 : 0;
        if (held === 0) await found.evaluate(takeKeys);
        await page.waitForTimeout(100);
      }
    },
    count: async ({ selector }: { selector: string }) => page.locator(selector).count(),
    /** Moves the pointer to the middle of something, from beside it, as an editor asks only about moves; false where it is not. */
    point: async ({ selector }: { selector: string }) => {
      const box = await page
        .locator(selector)
        .first()
        .boundingBox({ timeout: 1_000 })
        .catch(() => null);
      if (!box) return false;
      await page.mouse.move(box.x + box.width / 2, box.y - 2);
      await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2, { steps: 3 });
      return true;
    },
    /** Takes the pointer to where nothing is. */
    rest: async () => page.mouse.move(windowSize.width / 2, windowSize.height - 60),
    click: async ({ selector }: { selector: string }) => page.locator(selector).first().click(),
    /** Presses a key and measures in the page how long it takes until something is drawn, in ms. */
    keyToMark: async ({ key, selector }: { key: string; selector: string }) => {
      await page.evaluate(watchForMark, selector);
      await page.keyboard.press(key);
      await page.waitForFunction("globalThis.keyToMark !== undefined", undefined, { timeout: 20_000 });
      return page.evaluate<number>("globalThis.keyToMark");
    },
    /** Ends the language server as a crash would; false where it has no process of its own. */
    killServer: async () => {
      const found = servers();
      for (const { pid } of found) process.kill(pid, "SIGKILL");
      return found.length > 0;
    },
    /** Marks a file as not to be written. */
    protect: async ({ path }: { path: string }) => chmodSync(join(folder, path), 0o444),
    /** Programs that run for the editor's server side. */
    programs: async () => (host.pid === undefined ? [] : descendants(host.pid).map(({ words }) => words)),
  };
}

/** What a test may want to know of an element: plain data. */
function lookOf(selector: string): object | undefined {
  const all = Array.from(document.querySelectorAll<HTMLElement>(selector));
  const [first] = all;
  if (!first) return undefined;
  const { x, y, width, height } = first.getBoundingClientRect();
  return {
    count: all.length,
    words: first.textContent,
    hasFocus: first === document.activeElement,
    attributes: Object.fromEntries(Array.from(first.attributes).map(({ name, value }) => [name, value])),
    box: { x, y, width, height },
    window: { width: innerWidth, height: innerHeight },
  };
}

/** Runs in the panel: whether keys go to an element. In a window without the keys it may have the focus all the same. */
function hasKeys(element: Element): boolean {
  return document.hasFocus() && document.activeElement === element;
}

function takeKeys(element: HTMLElement | SVGElement): void {
  element.blur();
  window.focus();
  element.focus();
}

/** Leaves in the page how long it takes from the next key until something is drawn. */
function watchForMark(selector: string): void {
  const page = globalThis as { keyToMark?: number };
  delete page.keyToMark;
  let pressed = 0;
  const observer = new MutationObserver(() => {
    if (pressed === 0 || document.querySelector(selector) === null) return;
    observer.disconnect();
    page.keyToMark = Math.round(performance.now() - pressed);
  });
  observer.observe(document.body, { childList: true, subtree: true, attributes: true });
  document.addEventListener(
    "keydown",
    () => {
      pressed = performance.now();
    },
    { capture: true, once: true },
  );
}
