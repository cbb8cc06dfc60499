import { describe, expect, test } from "vitest";
import { diagramOf } from "../../language-server/src/drawing/diagram-of.js";
import { layout } from "../../language-server/src/drawing/layout.js";
import { assessed, designs } from "../examples/examples.js";
import { assessText } from "./drawn.js";

describe("wires of one terminal meet in a dot, all others cross without", () => {
  test("three strings on one bar, from above, level and from below", async () => {
    const strings = [1, 2, 3].map((each) => `string S${each} is 3 x P\nrun W${each} from S${each} to CB: 3 m of C`);
    const { wires } = await layout(diagramOf(assessText(`combiner CB {}\n${strings.join("\n")}`)));
    const level = wires.find(({ points }) => points.length === 2)!;
    const dots = wires.flatMap(({ junctions }) => junctions);
    expect(dots).toHaveLength(1);
    expect(dots[0]!.y).toBe(level.points[0]!.y);
  });

  test.each(designs)("%s: a dot lies on wires of one terminal only", async (path) => {
    const { wires } = await layout(diagramOf(assessed(path)));
    for (const { junctions } of wires)
      for (const { x, y } of junctions) {
        const through = wires.filter(({ points }) =>
          points.slice(1).some((to, index) => {
            const from = points[index]!;
            const isBetween = (a: number, b: number, at: number): boolean =>
              Math.min(a, b) <= at && at <= Math.max(a, b);
            return isBetween(from.x, to.x, x) && isBetween(from.y, to.y, y);
          }),
        );
        expect(through.length).toBeGreaterThan(1);
        const ports = through.map(({ wire }) => [wire.from.port, wire.to.port]);
        expect(ports[0]!.some((port) => ports.every((each) => each.includes(port)))).toBe(true);
      }
  });
});
