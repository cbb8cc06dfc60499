import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { panelFrame } from "./frames.js";
import type { Host } from "./host.js";
import type { Hands } from "./stage.js";

export const windowSize = { width: 1280, height: 800 };

/** What takes a whole window beside that of the tests. */
export function windowHands(browser: Browser, host: Host, pictures: string): Hands {
  /** Opens a second window on the same folder and a file in it. */
  const beside = async (file: string, look: (page: Page) => Promise<void>): Promise<void> => {
    const second = await browser.newPage({ viewport: windowSize });
    try {
      await second.addInitScript("globalThis.__name = (named) => named");
      await second.goto(host.plain);
      await openFile(second, file);
      await look(second);
    } catch (error) {
      await second.screenshot({ path: join(pictures, "second-window.png") });
      throw error;
    } finally {
      await second.close();
    }
  };
  return {
    /** Waits until something is drawn in a second window, or is not. */
    secondWindow: ({ file, selector, appears }: { file: string; selector: string; appears: boolean }) =>
      beside(file, async (page) => {
        await page.waitForFunction(isDrawn, { selector, appears }, { timeout: 30_000 });
      }),
    /** Shows our panel in a second window, clicks something in it, loads the window anew and waits until something is in it. */
    reloadPanel: ({ file, command, click, selector }: Record<"file" | "command" | "click" | "selector", string>) =>
      beside(file, async (page) => {
        await page.keyboard.press("F1");
        await page.locator(".quick-input-widget input[type=text]").fill(`>${command}`);
        await page.locator(".quick-input-list .monaco-list-row", { hasText: command }).first().click();
        await inPanel(page, click, (found) => found.click());
        await inPanel(page, selector, (found) => found.waitFor());
        // In a browser an editor writes down how its window is every few seconds, while that has the keys.
        await page.bringToFront();
        await page.waitForTimeout(15_000);
        await page.reload();
        await inPanel(page, selector, (found) => found.waitFor());
        await page.screenshot({ path: join(pictures, "reloaded.png") });
      }),
  };
}

/** Does something in our panel once it has an element. */
async function inPanel(
  page: Page,
  selector: string,
  act: (found: ReturnType<Page["locator"]>) => Promise<void>,
): Promise<void> {
  const end = Date.now() + 60_000;
  for (;;) {
    const frame = await panelFrame(page);
    const isThere =
      frame &&
      (await frame
        .locator(selector)
        .count()
        .catch(() => 0)) > 0;
    if (isThere) return act(frame.locator(selector).first());
    if (Date.now() > end) throw new Error(`The panel does not come to have ${selector}`);
    await page.waitForTimeout(100);
  }
}

/** Opens a file by its name, with the keys that a user would press. */
async function openFile(page: Page, name: string): Promise<void> {
  await page
    .locator(".monaco-workbench .explorer-viewlet, .monaco-workbench .editor-group-container")
    .first()
    .waitFor();
  const input = page.locator(".quick-input-widget input[type=text]");
  // The first key may come before the window listens.
  for (let tries = 0; tries < 20 && !(await input.isVisible()); tries++) {
    await page.keyboard.press("Control+P");
    await page.waitForTimeout(500);
  }
  await input.fill(name);
  await page.locator(".quick-input-list .monaco-list-row", { hasText: name }).first().waitFor();
  await page.keyboard.press("Enter");
  await page.locator(".monaco-editor .view-line").first().waitFor();
}

function isDrawn({ selector, appears }: { selector: string; appears: boolean }): boolean {
  return (document.querySelector(selector) !== null) === appears;
}
