import { describe, expect, test } from "vitest";
import { panelColours } from "../../extension/panel-colours.mjs";
import type { Paint } from "../../language-server/src/drawing/picture.js";
import { dark, highContrast, light, type Theme } from "../../language-server/src/drawing/themes.js";

/*
 * Contrast as WCAG 2.2 defines it under "relative luminance" and "contrast ratio" (w3c.github.io/wcag/guidelines).
 * Least ratios: 4.5 for words (1.4.3), 3 for what is needed to understand a drawing (1.4.11), from memory.
 */

function luminance(colour: string): number {
  const [red, green, blue] = [1, 3, 5].map((start) => {
    const share = Number.parseInt(colour.slice(start, start + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}

function contrast(one: string, other: string): number {
  const [lighter, darker] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (lighter! + 0.05) / (darker! + 0.05);
}

/**
 * What words are written in; lines are drawn in the same paints. `rule` is not among them: it is for the lines of a grid,
 * from which nothing has to be read, as each value is printed too.
 */
const written: readonly Paint[] = [
  ...(["ink", "faint", "dc", "ac", "earth", "error", "warning", "note", "live"] as const),
  ...(["first", "second", "third", "fourth"] as const),
];

/**
 * The themes of the drawing, and those of the page with what the editor's own themes put in: foreground, background and
 * that of widgets, as the colour themes that VS Code ships have them.
 */
const themes: Readonly<Record<string, Theme>> = {
  light,
  dark,
  "high contrast": highContrast,
  "page, light": { ...page("body"), ink: "#3b3b3b", paper: "#ffffff", panel: "#f8f8f8" },
  "page, dark": { ...page("body.vscode-dark"), ink: "#cccccc", paper: "#1f1f1f", panel: "#202020" },
  "page, high contrast": page("body.vscode-high-contrast"),
  "page, high contrast light": page("body.vscode-high-contrast-light"),
};

/** The paints that the page has in one kind of theme, where the editor names none of its own. */
function page(selector: string): Theme {
  const block = panelColours().split(`${selector} {`)[1]!.split("}")[0]!;
  const paints = [...block.matchAll(/--sunwright-(\w+): (?:var\([^,]+, )?(#\w{6})\)?;/g)];
  return Object.fromEntries(paints.map(([, paint, colour]) => [paint, colour])) as Theme;
}

test("the ends of the scale: no contrast is 1, black on white is 21", () => {
  expect(contrast("#777777", "#777777")).toBe(1);
  expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 10);
});

describe.each(Object.entries(themes))("%s", (_, theme) => {
  test("has every paint as a colour", () => {
    expect(Object.keys(theme)).toEqual(Object.keys(light));
    for (const colour of Object.values(theme)) expect(colour).toMatch(/^#[0-9a-f]{6}$/);
  });

  test.each(["paper", "panel"] as const)("words can be read on %s", (ground) => {
    for (const paint of written) expect(contrast(theme[paint], theme[ground]), paint).toBeGreaterThanOrEqual(4.5);
  });

  test("numbers can be read on the badges", () => {
    for (const paint of ["error", "warning", "note"] as const)
      expect(contrast(theme.paper, theme[paint]), paint).toBeGreaterThanOrEqual(4.5);
  });

  test("what lies on a band of a chart can be told from it", () => {
    for (const paint of ["ink", "first", "second", "third", "fourth", "error"] as const)
      expect(contrast(theme[paint], theme.band), paint).toBeGreaterThanOrEqual(3);
  });
});
