import { expect, test } from "vitest";
import type { Assessment } from "../../language-server/src/assessment/assessment.js";
import { diagramOf } from "../../language-server/src/drawing/diagram-of.js";
import { layout } from "../../language-server/src/drawing/layout.js";
import { renderSvg } from "../../language-server/src/drawing/render.js";
import { assessed } from "../examples/examples.js";
import { assessText } from "./drawn.js";
import { faults } from "./geometry.js";
import { largeSite } from "./large-site.js";

/** Printed, never asserted: machines differ. */
async function timed(name: string, assessment: Assessment, goal: number): Promise<void> {
  const times: number[] = [];
  // On a machine that others use too, the processor's time says more than the clock.
  const used = process.cpuUsage();
  for (let round = 0; round < 7; round++) {
    const start = performance.now();
    renderSvg(await layout(diagramOf(assessment)));
    times.push(performance.now() - start);
  }
  const [first = 0, ...warm] = times;
  const median = warm.sort((a, b) => a - b)[Math.floor(warm.length / 2)] ?? 0;
  const { user, system } = process.cpuUsage(used);
  const processor = (user + system) / 1000 / times.length;
  console.log(
    `${name}: processor ${processor.toFixed(0)} ms a picture; first ${first.toFixed(0)} ms, then ${median.toFixed(0)} ms (goal ${goal} ms)`,
  );
}

test("how long Alder Cottage takes", async () => {
  const assessment = assessed("alder-cottage/alder-cottage.sun");
  await timed("Alder Cottage", assessment, 60);
  expect(diagramOf(assessment).nodes.length).toBeGreaterThan(10);
});

test("a site of 300 items is drawn without a fault, and how long it takes", async () => {
  const assessment = assessText(largeSite(300));
  const diagram = diagramOf(assessment);
  expect(diagram.nodes.length).toBeGreaterThan(290);
  expect(faults(await layout(diagram))).toEqual([]);
  await timed("300 items", assessment, 400);
});
