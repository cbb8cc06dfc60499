import { expect, test } from "vitest";
import { diagramOf } from "../../language-server/src/drawing/diagram-of.js";
import { layout } from "../../language-server/src/drawing/layout.js";
import { assessText } from "./drawn.js";
import { faults } from "./geometry.js";
import { largeSite } from "./large-site.js";

test.each([60, 120, 300])("a site of %i items is drawn without a fault", async (items) => {
  const diagram = diagramOf(assessText(largeSite(items)));
  expect(diagram.nodes.length).toBeGreaterThan(items * 0.85);
  expect(faults(await layout(diagram))).toEqual([]);
});
