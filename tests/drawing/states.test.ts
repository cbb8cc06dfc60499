import { describe, expect, test } from "vitest";
import { diagramOf } from "../../language-server/src/drawing/diagram-of.js";
import { layout } from "../../language-server/src/drawing/layout.js";
import type { States } from "../../language-server/src/drawing/states.js";
import { light } from "../../language-server/src/drawing/themes.js";
import { assessed } from "../examples/examples.js";
import { assessText, renderSvg } from "./drawn.js";

const cottage = await layout(diagramOf(assessed("alder-cottage/alder-cottage.sun")));

function drawn(states: States, placed = cottage): (id: string) => string {
  const svg = renderSvg(placed, light, { sheet: false, states });
  return (id) => svg.split(`<g data-id="${id}"`)[1]?.split(/<g data-id=/)[0] ?? "";
}

const raised = /M-24 0L-9 0L8 -10/;

describe("a picture of one moment", () => {
  test("without it devices are drawn open, as the standard has them, and nothing says so of them", () => {
    const svg = renderSvg(cottage, light, { sheet: false });
    expect(svg).not.toMatch(/data-open|data-live|data-position/);
    expect(svg.match(new RegExp(raised, "g"))!.length).toBeGreaterThan(5);
  });

  test("an open device has its blade raised, every other one lies on its contact", () => {
    const of = drawn(
      new Map([
        ["Q1", { open: true }],
        ["Q2", { open: false }],
        ["CU.R1.K1", { open: true }],
      ]),
    );
    expect(of("Q1")).toContain('data-open="true"');
    expect(of("Q1")).toMatch(raised);
    expect(of("Q1")).toMatch(/aria-label="Q1: [^"]*, open"/);
    expect(of("Q2")).not.toMatch(raised);
    expect(of("Q2")).toMatch(/data-open="false".*aria-label="Q2: [^"]*, closed"/);
    expect(of("Q3")).not.toMatch(raised);
    expect(of("Q3")).not.toContain("data-open");
    expect(of("CU.R1.K1")).toMatch(/data-open="true"/);
    expect(of("CU.R1.K2")).not.toMatch(raised);
  });

  test("live runs and items are hatched, and said to be live; nothing is called dead", () => {
    const of = drawn(
      new Map([
        ["W1", { live: true }],
        ["S1", { live: true }],
        ["W4", { live: false }],
      ]),
    );
    for (const id of ["W1", "S1"]) {
      expect(of(id)).toMatch(/data-live="true"/);
      expect(of(id)).toMatch(/aria-label="[^"]*, live"/);
      expect(of(id)).toContain(`stroke="${light.live}"`);
    }
    expect(of("W4")).toMatch(/data-live="false"/);
    expect(of("W4")).not.toContain(`stroke="${light.live}"`);
    expect(renderSvg(cottage, light, { states: new Map([["W4", { live: false }]]) })).not.toMatch(/, dead/);
  });

  test("a board's state is that of its bar, not of what is in it", () => {
    const of = drawn(new Map([["CU", { live: true }]]));
    expect(of("CU")).toContain('data-live="true"');
    expect(of("CU.R1.K1")).not.toContain("data-live");
  });

  test("a fuse that is drawn leaves its place empty; a changeover switch lies where it is told", async () => {
    const text =
      "fuse F { rated-current: 80 A }\nmeter M {}\nrun W from F to M: 1 m of C\nsupply G {}\nchangeover X {}\nrun W1 from G to X.grid: 1 m of C";
    const placed = await layout(diagramOf(assessText(text)));
    const shown = (states: States, id: string): string => drawn(states, placed)(id);
    expect(shown(new Map([["F", { open: true }]]), "F")).toMatch(/stroke-dasharray/);
    expect(shown(new Map(), "F")).not.toMatch(/stroke-dasharray/);
    const lies = (position: "grid" | "backup"): string => shown(new Map([["X", { position }]]), "X");
    expect(lies("grid")).not.toBe(lies("backup"));
    expect(lies("backup")).toMatch(/data-position="backup".*lies on backup/);
    // Off every contact: both ways are dotted.
    expect(shown(new Map([["X", { open: true }]]), "X").match(/stroke-dasharray="1.5 3"/g)).toHaveLength(2);
  });

  test("placing is the same, whatever the state", () => {
    const box = (svg: string): string | undefined => svg.match(/viewBox="[^"]*"/)?.[0];
    expect(box(renderSvg(cottage, light, { states: new Map([["Q1", { open: true, live: true }]]) }))).toBe(
      box(renderSvg(cottage)),
    );
  });
});
