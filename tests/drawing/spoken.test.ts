import { describe, expect, test } from "vitest";
import { diagramOf } from "../../language-server/src/drawing/diagram-of.js";
import { layout } from "../../language-server/src/drawing/layout.js";
import { spokenLine } from "../../language-server/src/drawing/spoken.js";
import { light } from "../../language-server/src/drawing/themes.js";
import { assessed, goodDesigns } from "../examples/examples.js";
import { renderSvg } from "./drawn.js";

describe("signs are said as words", () => {
  test.each([
    ["35° / 180°", "tilt 35°, azimuth 180°"],
    ["35°", "35°"],
    ["1~ 230 V", "single-phase 230 V"],
    ["15 kW 3~", "15 kW three-phase"],
    ["32 A 800 V 2P", "32 A 800 V 2-pole"],
    ["63 A 1P+N", "63 A 1-pole and neutral"],
    ["5.8 kWh · 179.2..230.4 V", "5.8 kWh, 179.2 to 230.4 V"],
    ["Rack 2P", "Rack 2-pole"],
    ["SPD-2P", "SPD-2P"],
  ])("%s", (printed, said) => {
    expect(spokenLine(printed)).toBe(said);
  });
});

describe("names of drawn things", () => {
  test.each(goodDesigns)("%s: each begins with the name that is printed, as a voice asks for it", async (path) => {
    const drawn = renderSvg(await layout(diagramOf(assessed(path))), light, { sheet: false });
    const things = [...drawn.matchAll(/<g data-id="([^"]+)"[^>]* aria-label="([^"]*)"/g)];
    expect(things.length).toBeGreaterThan(10);
    for (const [, id, name] of things)
      expect(name!.replace(/^way [^,]+, /, "").replace(/^earth of /, "earth ")).toMatch(startingWith(id!));
  });

  test("a thing says which findings are about it, a thing without any says none", async () => {
    const drawn = renderSvg(await layout(diagramOf(assessed("alder-cottage/alder-cottage.sun"))), light, {
      sheet: false,
    });
    const name = (id: string) => drawn.split(`<g data-id="${id}"`)[1]?.match(/aria-label="([^"]*)"/)?.[1];
    expect(name("W4")).toMatch(/, departure 1$/);
    expect(name("INV")).toMatch(/, departure 2, departure 3$/);
    expect(name("S1")).not.toMatch(/departure|error|warning|note/);
  });
});

function startingWith(id: string): RegExp {
  return new RegExp(`^${id.replace(/^serves /, "").replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&")}\\b`);
}
