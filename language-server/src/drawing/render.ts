import { badge, placeMarks } from "./badges.js";
import type { Diagram } from "./diagram.js";
import type { Placed } from "./layout.js";
import { group, type Picture, type Shape } from "./picture.js";
import type { Page } from "./sheets/columns.js";
import { belowDrawing, besideDrawing, type Sheet } from "./sheets/frame.js";
import { withMarksSaid } from "./spoken.js";
import { inState, type States } from "./states.js";
import { wireShapes } from "./wires.js";

export interface RenderOptions {
  /** With title block, legend and findings beside the drawing; a panel that shows these elsewhere goes without. */
  readonly sheet?: boolean;
  /**
   * How things are at one moment. With it, devices that switch are drawn open or closed, and what is live is hatched;
   * without it, as the standard draws them, open.
   */
  readonly states?: States;
  /** Which of several sheets it is. */
  readonly page?: Page;
}

const margin = 36;
const onlyPage: Page = { number: 1, of: 1 };

/** A placed diagram as vector shapes. */
export function pictureOf(placed: Placed, { sheet = true, states, page = onlyPage }: RenderOptions = {}): Picture {
  const drawing = group(drawingShapes(placed, states), { sort: "drawing", x: margin, y: margin });
  const { title } = placed.diagram;
  const which = page.of > 1 ? `, sheet ${page.number} of ${page.of}` : "";
  const about = { title: `Single-line diagram of ${title.site}${which}`, description: describe(placed.diagram) };
  const width = placed.width + 2 * margin;
  if (!sheet) return { width, height: placed.height + 2 * margin, shapes: [drawing], ...about };

  const extent = { width, height: placed.height + 2 * margin };
  const sheets = [besideDrawing(placed.diagram, page, extent), belowDrawing(placed.diagram, page, extent)];
  const [best] = sheets.sort((a, b) => onPaper(b) - onPaper(a));
  const { x, y, shapes, ...size } = best!;
  return { ...size, shapes: [...shapes, group([drawing], { x, y })], ...about };
}

/** How large it comes out on a landscape sheet of the A series. */
function onPaper({ width, height }: Sheet): number {
  return Math.min(Math.SQRT2 / width, 1 / height);
}

function drawingShapes(placed: Placed, states: States | undefined): Shape[] {
  const things = [
    ...placed.wires.map((wire) => wireShapes(wire, states?.get(wire.wire.id)?.live)),
    ...placed.nodes.map(({ node, box, x, y }) =>
      group(box.shapes, { id: node.id, sort: `item ${node.symbol}`, label: node.description, x, y }),
    ),
  ];
  const marks = placeMarks(placed).map(({ mark, x, y }) => badge(mark, x, y));
  const said = withMarksSaid(things, placed.diagram.marks);
  return [...(states ? inState(said, states) : said), ...marks];
}

function describe({ nodes, wires, marks, title }: Diagram): string {
  const runs = wires.filter(({ isRun }) => isRun).length;
  return `${nodes.length} items and ${runs} runs; ${marks.length} findings and departures. ${title.cautions.join(" ")}`;
}
