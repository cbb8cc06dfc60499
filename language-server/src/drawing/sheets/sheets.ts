import type { Diagram, Mark } from "../diagram.js";
import { layout, type Placed } from "../layout.js";
import type { Picture } from "../picture.js";
import { pictureOf } from "../render.js";
import type { Page } from "./columns.js";
import { findingsSheets } from "./findings-sheets.js";
import { isReadable } from "./paper.js";
import { type FlaggedPart, flaggedParts, stacked } from "./stack.js";

/** What the sheets are made for: most offices print no larger. */
const paper = "A3";
const elsewhere: Page = { number: 1, of: 1, findings: "elsewhere" };

/**
 * The diagram on as many sheets as it takes to be read on paper. What does not go on one is cut where a single wire
 * holds it together; flags say on which sheet a wire goes on. Findings for which a sheet has no room have their own.
 */
export async function sheetsOf(diagram: Diagram): Promise<Picture[]> {
  const drawings = await drawingsOf(diagram);
  const isWithFindings = drawings.map((placed) => isReadable(paper, pictureOf(placed)));
  const moved = drawings.flatMap(({ diagram: { marks } }, index) => (isWithFindings[index] ? [] : marks));
  const lists = findingsSheets(diagram, moved);
  const of = drawings.length + lists.length;
  const first = drawings.length + 1;
  const words = lists.length > 1 ? `On sheets ${first} to ${of}.` : `On sheet ${first}.`;
  return [
    ...drawings.map((placed, index) => {
      const page = { number: index + 1, of, ...(!isWithFindings[index] && { findings: words }) };
      return pictureOf(placed, { page });
    }),
    ...lists.map((list, index) => list({ number: first + index, of })),
  ];
}

/** What is drawn on each sheet. */
export async function drawingsOf(diagram: Diagram): Promise<Placed[]> {
  const whole = await layout(diagram);
  const fits = (placed: Placed): boolean => isReadable(paper, pictureOf(placed, { page: elsewhere }));
  if (fits(whole)) return [whole];
  const alone = (part: FlaggedPart): Placed => stacked(diagram, [part], [], () => "sheet");
  let parts: FlaggedPart[] = [];
  for (const limit of [60, 40, 28, 20, 12]) {
    parts = await flaggedParts(diagram, limit);
    if (parts.every((part) => fits(alone(part)))) break;
  }
  if (parts.length === 1) return [whole];
  const groups: FlaggedPart[][] = [];
  for (const part of parts) {
    const last = groups[groups.length - 1];
    if (last && fits(stacked(diagram, [...last, part], [], () => "sheet"))) last.push(part);
    else groups.push([part]);
  }
  return numbered(diagram, groups);
}

function numbered(diagram: Diagram, groups: readonly (readonly FlaggedPart[])[]): Placed[] {
  const sheetOf = new Map<string, number>();
  const home = new Map<string, number>();
  for (const [index, parts] of groups.entries())
    for (const { placed } of parts) {
      for (const { node, box } of placed.nodes) {
        if (node.symbol !== "continuation") sheetOf.set(node.id, index);
        for (const id of box.corners.keys()) home.set(id, index);
      }
      for (const { wire } of placed.wires) if (!home.has(wire.id)) home.set(wire.id, index);
    }
  const isOn = (mark: Mark, index: number): boolean => (home.get(mark.at ?? "") ?? 0) === index;
  return groups.map((parts, index) => {
    const marks = diagram.marks.filter((mark) => isOn(mark, index));
    return stacked(diagram, parts, marks, (node) => `sheet ${sheetOf.get(node)! + 1}`);
  });
}
