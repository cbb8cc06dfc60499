import { describe, expect, test } from "vitest";
import { diagramOf } from "../../language-server/src/drawing/diagram-of.js";
import type { Placed } from "../../language-server/src/drawing/layout.js";
import type { Picture } from "../../language-server/src/drawing/picture.js";
import { scaleOn } from "../../language-server/src/drawing/sheets/paper.js";
import { drawingsOf, sheetsOf } from "../../language-server/src/drawing/sheets/sheets.js";
import { svgOf } from "../../language-server/src/drawing/svg.js";
import { light } from "../../language-server/src/drawing/themes.js";
import { assessed, designs } from "../examples/examples.js";
import { assessText } from "./drawn.js";
import { faults } from "./geometry.js";
import { largeSite } from "./large-site.js";
import { texts } from "./texts.js";

const site = diagramOf(assessText(largeSite(300)));
const millimetre = 96 / 25.4;

/** The smallest letters on A3, from ascender to descender, in millimetres. */
function smallest(picture: Picture): number {
  return (Math.min(...texts(picture.shapes).map(({ size }) => size)) * scaleOn("A3", picture)) / millimetre;
}

describe("letters on A3 can be read", () => {
  test.each(designs)("%s", async (path) => {
    for (const picture of await sheetsOf(diagramOf(assessed(path)))) expect(smallest(picture)).toBeGreaterThan(1.8);
  });

  test.each(["alder-cottage/alder-cottage.sun", "long-barn/long-barn.sun", "three-phase-barn/three-phase-barn.sun"])(
    "%s is whole on one sheet",
    async (path) => {
      expect(await sheetsOf(diagramOf(assessed(path)))).toHaveLength(1);
    },
  );

  test("a site of 300 items, on several sheets", async () => {
    const pictures = await sheetsOf(site);
    expect(pictures.length).toBeGreaterThan(4);
    for (const picture of pictures) expect(smallest(picture)).toBeGreaterThan(1.8);
  });
});

describe("several sheets are one drawing", () => {
  test("nothing overlaps on any, and wires end at terminals or flags", async () => {
    for (const drawing of await drawingsOf(site)) expect(faults(drawing)).toEqual([]);
  });

  test("every item is on one sheet, every run on one, or on the two that it joins", async () => {
    const drawings = await drawingsOf(site);
    const nodes = drawings.flatMap((drawing) => own(drawing).map(({ id }) => id));
    expect([...nodes].sort()).toEqual(site.nodes.map(({ id }) => id).sort());
    for (const wire of site.wires) {
      const on = drawings.filter(({ wires }) => wires.some((each) => each.wire.id === wire.id));
      const ends = drawings.filter((drawing) =>
        own(drawing).some(({ id }) => id === wire.from.node || id === wire.to.node),
      );
      expect(on, wire.id).toEqual(ends);
    }
  });

  test("a flag names the sheet and the terminal where its wire goes on, and there a flag leads back", async () => {
    const drawings = await drawingsOf(site);
    const home = new Map(drawings.flatMap((drawing, index) => own(drawing).map(({ id }) => [id, index + 1] as const)));
    const cutWires = site.wires.filter(({ id }) => flagsOf(drawings, id).length > 0);
    expect(cutWires).toHaveLength(8);
    for (const { id, from, to } of cutWires) {
      const labels = flagsOf(drawings, id);
      expect(labels.map(([sheet]) => sheet).sort()).toEqual(
        [`sheet ${home.get(to.node)}`, `sheet ${home.get(from.node)}`].sort(),
      );
      expect(labels.map(([, terminal]) => terminal).sort()).toEqual(
        [`to ${to.port.replace(/\.(in|out)$/, "")}`, `to ${from.port.replace(/\.(in|out)$/, "")}`].sort(),
      );
    }
  });

  test("every finding is on one sheet, and every sheet says which it is", async () => {
    const pictures = await sheetsOf(site);
    const drawings = await drawingsOf(site);
    expect(drawings.flatMap(({ diagram }) => diagram.marks.map(({ number }) => number)).sort((a, b) => a - b)).toEqual(
      site.marks.map(({ number }) => number),
    );
    for (const [index, picture] of pictures.entries()) {
      const words = texts(picture.shapes).map(({ words: each }) => each);
      expect(words).toContain(`${index + 1} of ${pictures.length}`);
      expect(words).toContain("Larch Park");
      expect(picture.title).toBe(`Single-line diagram of Larch Park, sheet ${index + 1} of ${pictures.length}`);
    }
  });

  test("findings for which there is no room have sheets of their own, and the drawing says where", async () => {
    const diagram = diagramOf(assessed("alder-cottage/alder-cottage.sun"));
    const marks = Array.from({ length: 240 }, (_, index) => ({ ...diagram.marks[0]!, number: index + 1 }));
    const [drawing, ...lists] = await sheetsOf({ ...diagram, marks });
    expect(texts(drawing!.shapes).map(({ words }) => words)).toContain(`On sheets 2 to ${lists.length + 1}.`);
    const numbers = lists.flatMap(({ shapes }) => texts(shapes).filter(({ words }) => /^\d+$/.test(words)));
    expect(numbers.map(({ words }) => Number(words))).toEqual(marks.map(({ number }) => number));
    for (const list of lists) expect(smallest(list)).toBeGreaterThan(1.8);
  });

  test("the same bytes each time", async () => {
    const all = async (): Promise<string[]> => (await sheetsOf(site)).map((picture) => svgOf(picture, light));
    expect(await all()).toEqual(await all());
  });
});

function own({ nodes }: Placed): { readonly id: string }[] {
  return nodes.map(({ node }) => node).filter(({ symbol }) => symbol !== "continuation");
}

/** What the flags of a wire say. */
function flagsOf(drawings: readonly Placed[], id: string): (readonly string[])[] {
  return drawings.flatMap(({ nodes, wires }) => {
    const ends = wires.filter(({ wire }) => wire.id === id).flatMap(({ wire }) => [wire.from.node, wire.to.node]);
    const flags = nodes.map(({ node }) => node).filter(({ symbol }) => symbol === "continuation");
    return flags.filter((flag) => ends.includes(flag.id)).map(({ label }) => label);
  });
}
