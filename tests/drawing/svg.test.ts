import { describe, expect, test } from "vitest";
import { chartsOf } from "../../language-server/src/drawing/charts/charts.js";
import { diagramOf } from "../../language-server/src/drawing/diagram-of.js";
import { layout } from "../../language-server/src/drawing/layout.js";
import { pictureOf } from "../../language-server/src/drawing/render.js";
import { svgOf } from "../../language-server/src/drawing/svg.js";
import { light, ofPage, themes } from "../../language-server/src/drawing/themes.js";
import { assessed, goodDesigns } from "../examples/examples.js";
import { assessText, renderSvg } from "./drawn.js";
import { texts } from "./texts.js";

async function svg(path: string): Promise<string> {
  return renderSvg(await layout(diagramOf(assessed(path))));
}

/** Without the sheet, whose counts change with every rule. */
async function drawing(path: string): Promise<string> {
  return renderSvg(await layout(diagramOf(assessed(path))), light, { sheet: false });
}

describe("pictures that were looked at", () => {
  test.each(["alder-cottage/alder-cottage.sun", "long-barn/long-barn.sun", "training/house-fuses-in-the-box.sun"])(
    "%s",
    async (path) => {
      const name = path.replace(/.*\//, "").replace(".sun", "");
      await expect(await drawing(path)).toMatchFileSnapshot(`pictures/${name}.svg`);
    },
  );

  test.each(["voltage:S1", "curve:INV.pv1", "drop"])("%s of unequal strings in parallel", async (name) => {
    const chart = chartsOf(assessed("training/unequal-strings-in-parallel.sun")).find((each) => each.name === name);
    const file = `pictures/unequal-strings-${name.replace(":", "-")}.svg`;
    await expect(svgOf(chart!.picture(), light)).toMatchFileSnapshot(file);
  });
});

describe("for those who hear it, and for pages with a strict policy", () => {
  test("the picture has a title and a description, and each thing a label", async () => {
    const drawn = await svg("alder-cottage/alder-cottage.sun");
    expect(drawn).toContain('<title id="sunwright-title">Single-line diagram of Alder Cottage</title>');
    expect(drawn).toMatch(/<g data-id="Q1" class="item isolator" role="img" aria-label="Q1: isolator, /);
    expect(drawn).toMatch(/<g data-id="W1" class="run" role="img" aria-label="W1: run from S1.out to Q1.in, /);
    expect(drawn).toMatch(/<g data-id="CU.R1.K1" class="device" role="img" aria-label="way 1, /);
  });

  test.each(goodDesigns)("%s: whatever has an id is named, and says what it is", async (path) => {
    const drawn = await svg(path);
    const things = drawn.split(/(?=<g data-id=)/).slice(1);
    expect(things.length).toBeGreaterThan(10);
    for (const thing of things)
      expect(thing).toMatch(/^<g data-id="[^"]+"[^>]* role="img" aria-label="[^"]+"[^>]*>\s*<title>[^<]+</);
  });

  test("no style sheet, no script, nothing from elsewhere", async () => {
    const drawn = renderSvg(await layout(diagramOf(assessed("long-barn/long-barn.sun"))), ofPage);
    expect(drawn).not.toMatch(/<style|style=|<script|href|url\(|<image|<foreignObject/);
  });

  test("d.c. and a.c. are told apart without colour: by the line, and in words", async () => {
    const gray = Object.fromEntries(Object.keys(light).map((paint) => [paint, "gray"])) as typeof light;
    const drawn = renderSvg(await layout(diagramOf(assessed("alder-cottage/alder-cottage.sun"))), gray);
    const group = (id: string): string => drawn.split(`<g data-id="${id}"`)[1]?.split("</g>")[0] ?? "";
    expect(group("W1").match(/<path/g)).toHaveLength(2);
    expect(group("W8").match(/<path/g)).toHaveLength(1);
    expect(group("W1")).toContain(">W1 d.c. · 18 m<");
    expect(group("W8")).toContain(">W8 a.c. · 0.6 m<");
  });

  test("every theme has every paint", () => {
    const paints = Object.keys(light);
    for (const theme of Object.values(themes)) expect(Object.keys(theme)).toEqual(paints);
  });

  test("what people write cannot leave its place", async () => {
    const text = `site "</title><script>alert(1)</script> & \\"x" {\n}\nstring S1 is 3 x M\nboard B { isolator MS { poles: 2 } way 1: breaker K1 serves "<b>&shed" { rated-current: 6 A } }`;
    const drawn = renderSvg(await layout(diagramOf(assessText(text))));
    expect(drawn).not.toMatch(/<script|<b>/);
    expect(drawn).toContain("&lt;b&gt;&amp;shed");
  });

  test("nothing on a sheet is cut off at its edge", async () => {
    for (const path of ["alder-cottage/alder-cottage.sun", "training/no-isolator.sun"]) {
      const picture = pictureOf(await layout(diagramOf(assessed(path))));
      for (const { x, right, y, words } of texts(picture.shapes)) {
        const isInside = x >= 12 && right <= picture.width - 12 && y >= 12 && y <= picture.height - 12;
        expect(isInside, words).toBe(true);
      }
    }
  });
});
