import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { diagramOf } from "../../language-server/src/drawing/diagram-of.js";
import { layout } from "../../language-server/src/drawing/layout.js";
import { installations } from "../circuit/random-circuit.js";
import { assessed, designs, goodDesigns, textOf } from "../examples/examples.js";
import { assessText, renderSvg } from "./drawn.js";
import { faults } from "./geometry.js";

describe("nothing overlaps, everything is joined, wires are level or upright", () => {
  test.each(designs)("%s", async (path) => {
    expect(faults(await layout(diagramOf(assessed(path))))).toEqual([]);
  });

  test("random installations, thickly wired", async () => {
    await fc.assert(
      fc.asyncProperty(installations({ min: 0, max: 8 }), async (text) => {
        expect(faults(await layout(diagramOf(assessText(text))))).toEqual([]);
      }),
      { numRuns: 60, seed: 6 },
    );
  });
});

describe("the same where a diagram is placed in parts", () => {
  test.each(goodDesigns)("%s", async (path) => {
    for (const atOnce of [4, 10]) {
      const placed = await layout(diagramOf(assessed(path)), atOnce);
      expect(faults(placed)).toEqual([]);
    }
  });

  test("random installations, in parts of six", async () => {
    await fc.assert(
      fc.asyncProperty(installations({ min: 0, max: 8 }), async (text) => {
        const diagram = diagramOf(assessText(text));
        const placed = await layout(diagram, 6);
        expect(faults(placed)).toEqual([]);
        expect(placed.nodes.map(({ node }) => node)).toEqual(diagram.nodes);
        expect(placed.wires.map(({ wire }) => wire)).toEqual(diagram.wires);
      }),
      { numRuns: 60, seed: 9 },
    );
  });
});

describe("the eye of these tests is open", () => {
  test("it sees a box that is moved onto another, and the wires that it leaves behind", async () => {
    const placed = await layout(diagramOf(assessed("alder-cottage/alder-cottage.sun")));
    const at = placed.nodes.find(({ node }) => node.id === "Q3")!;
    const nodes = placed.nodes.map((each) => (each.node.id === "M1" ? { ...each, x: at.x, y: at.y } : each));
    const seen = faults({ ...placed, nodes });
    expect(seen).toContain("the boxes of Q3 and M1 overlap");
    expect(seen).toContain("W9 does not reach M1.in");
  });

  test("it sees a wire aslant, a wire through a symbol and a label that strayed", async () => {
    const placed = await layout(diagramOf(assessed("alder-cottage/alder-cottage.sun")));
    const wires = placed.wires.map((each) => {
      if (each.wire.id === "W8") return { ...each, points: [each.points[0]!, { x: 900, y: 1 }] };
      return each.wire.id === "W9" ? { ...each, label: { ...each.label!, y: -400 } } : each;
    });
    const q1 = placed.nodes.find(({ node }) => node.id === "Q1")!;
    const through = {
      ...wires[0]!,
      points: [
        { x: q1.x, y: q1.y + 30 },
        { x: q1.x + 90, y: q1.y + 30 },
      ],
    };
    const seen = faults({ ...placed, wires: [through, ...wires.slice(1)] });
    expect(seen).toContain("W8 runs aslant");
    expect(seen).toContain("the label of W9 is far from it");
    expect(seen).toContain("W1 runs through Q1 (isolator)");
  });
});

describe("the picture says what the text says", () => {
  test.each(designs)("%s: every item and every run that joins two things is drawn", async (path) => {
    const assessment = assessed(path);
    const svg = renderSvg(await layout(diagramOf(assessment)));
    const { items, runs } = assessment.design;
    const drawn = [
      ...items.filter(({ kind }) => !["site", "ct", "link"].includes(kind)).map(({ id }) => id),
      ...runs.filter(({ from, to }) => from && to).map(({ id }) => id),
    ];
    expect(drawn.filter((id) => !svg.includes(`data-id="${id}"`))).toEqual([]);
  });

  test.each(designs)("%s: every finding has a mark and its words beside", (path) => {
    const assessment = assessed(path);
    const wanted = assessment.checks.filter(({ outcome }) => ["finding", "departure"].includes(outcome.outcome));
    const { marks } = diagramOf(assessment);
    expect(marks.map(({ number }) => number)).toEqual(wanted.map((_, index) => index + 1));
    expect(marks.map(({ rule }) => rule).sort()).toEqual(wanted.map(({ rule }) => rule.id).sort());
  });

  test("a design half written is drawn as far as it goes", async () => {
    const text = `string S1 is 3 x Nothing\nisolator Q1 {\nrun W1 from S1 to Q9: 3 m of None\ninverter INV { tracker a {} }\nrun W2 from S1 to INV.a`;
    const placed = await layout(diagramOf(assessText(text)));
    expect(faults(placed)).toEqual([]);
    expect(placed.nodes.map(({ node }) => node.id)).toContain("S1");
    expect(placed.diagram.title.cautions[0]).toMatch(/what could not be read is not drawn/);
  });
});

describe("the same text gives the same picture", () => {
  test("byte for byte", async () => {
    const path = "long-barn/long-barn.sun";
    const [first, second] = [assessed(path), assessed(path, textOf(path))];
    expect(renderSvg(await layout(diagramOf(first)))).toBe(renderSvg(await layout(diagramOf(second))));
  });

  test("a longer run moves nothing", async () => {
    const path = "alder-cottage/alder-cottage.sun";
    const before = await layout(diagramOf(assessed(path)));
    const after = await layout(diagramOf(assessed(path, textOf(path).replace("18 m of Solar4", "17 m of Solar4"))));
    expect(after.nodes.map(({ x, y }) => [x, y])).toEqual(before.nodes.map(({ x, y }) => [x, y]));
  });

  test("a circuit more in the board leaves the order of everything as it was", async () => {
    const path = "alder-cottage/alder-cottage.sun";
    const before = await layout(diagramOf(assessed(path)));
    const more = textOf(path).replace("    way 8:", '    way 5: breaker K5 is B16 serves "shed"\n    way 8:');
    const after = await layout(diagramOf(assessed(path, more)));
    expect(after.nodes.map(({ x }) => x)).toEqual(before.nodes.map(({ x }) => x));
    // By column: what stands beside each other may move up and down against each other, as the board grows.
    const columns = (placed: typeof before): string[] =>
      [...placed.nodes].sort((a, b) => a.x - b.x || a.y - b.y).map(({ node }) => node.id);
    expect(columns(after)).toEqual(columns(before));
  });
});
