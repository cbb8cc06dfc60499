import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import axe, { type AxeResults } from "axe-core";
import type { Page } from "playwright-core";
import { frameWith, panelFrame } from "./frames.js";
import type { Hands } from "./stage.js";

/** Criteria of WCAG 2.0, 2.1 and 2.2 at levels A and AA that a program can judge. */
const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa"];

/** How a page is for those who hear it, and for those who see less of it. */
export function accessHands(page: Page, pictures: string): Hands {
  return {
    /**
     * What in a part of some frame breaks a rule, one line each, and how many rules were held to something. The rules come
     * in as a debugger's would: the page's policy stays as it is.
     */
    access: async ({ selector, only }: { selector: string; only?: string }) => {
      const frame = await frameWith(page, selector);
      if (!frame) throw new Error(`No frame shows ${selector}`);
      await frame.evaluate(axe.source);
      const { violations, passes } = await frame.evaluate(heldTo, { selector, tags, only });
      return { broken: violations.flatMap(told), held: passes.map(({ id }) => id) };
    },
    /** What a screen reader would say of a part of our own panel, in order. */
    heard: async ({ selector }: { selector: string }) =>
      (await panelFrame(page))?.locator(selector).first().ariaSnapshot({ timeout: 5_000 }),
    /** Has the page painted in the reader's own colours, as a contrast theme of the system does, or no more. */
    forceColours: async ({ on }: { on: boolean }) => page.emulateMedia({ forcedColors: on ? "active" : "none" }),
    /** All paints of some elements of our own panel in some properties, and those of the system by name. */
    paints: async (given: Painted) => (await panelFrame(page))?.evaluate(paintsOf, given),
    /** Leaves a text beside the pictures, to be read, and to take the place of an older one. */
    keepText: async ({ name, text }: { name: string; text: string }) => {
      mkdirSync(pictures, { recursive: true });
      writeFileSync(join(pictures, name), text);
    },
  };
}

interface Painted {
  readonly selector: string;
  readonly properties: readonly string[];
}

/** Runs in the page. */
function paintsOf({ selector, properties }: Painted): { system: Record<string, string>; used: string[] } {
  const probe = document.body.appendChild(document.createElement("i"));
  probe.style.setProperty("forced-color-adjust", "none");
  const named = (name: string) => {
    probe.style.color = name;
    return getComputedStyle(probe).color;
  };
  const system = Object.fromEntries(["Canvas", "CanvasText", "GrayText"].map((name) => [name, named(name)]));
  probe.remove();
  const paints = Array.from(document.querySelectorAll(selector)).flatMap((each) =>
    properties.map((property) => getComputedStyle(each).getPropertyValue(property)),
  );
  return { system, used: [...new Set(paints)].filter((paint) => /^rgba?\((?!0, 0, 0, 0\))/.test(paint)) };
}

interface Held {
  readonly selector: string;
  readonly tags: string[];
  /** One rule instead of all. */
  readonly only: string | undefined;
}

/** Runs in the page. */
async function heldTo({ selector, tags, only }: Held): Promise<AxeResults> {
  const { run } = (globalThis as unknown as { axe: typeof axe }).axe;
  // A page that paints no ground stands on the editor's, which lies outside its frame.
  document.documentElement.style.background = "var(--vscode-editor-background)";
  if (only !== undefined) return run(selector, { runOnly: [only] });
  const runOnly = { type: "tag" as const, values: tags };
  const all = await run(selector, {
    runOnly,
    rules: { "target-size": { enabled: true }, "label-content-name-mismatch": { enabled: false } },
  });
  // In a picture all that is printed at a thing counts as its label there: tests hold names to the printed name instead.
  const labels = await run({ include: [selector], exclude: ["svg"] }, { runOnly: ["label-content-name-mismatch"] });
  return { ...all, violations: [...all.violations, ...labels.violations] };
}

function told({ id, nodes }: AxeResults["violations"][number]): string[] {
  return nodes.map(({ target, html, failureSummary }) => {
    const why = (failureSummary ?? "").split("\n").slice(1).join(" ").trim();
    return `${id}: ${target.join(" ")} (${html.slice(0, 120)}): ${why}`;
  });
}
