import { fedThrough } from "../circuit/beyond.js";
import type { Terminal } from "../circuit/circuit.js";
import { type FeedTree, pathTo } from "../circuit/feed.js";
import type { BoardCircuit, Plant } from "../circuit/plant.js";
import { withArticle } from "../design/article.js";
import { given } from "../design/facts.js";
import type { Item, Part, Run } from "../design/things.js";
import { formatFigure } from "../physics/working.js";
import { ifKnown } from "./ac-cables.js";
import { isNoWorse } from "./device-parts.js";
import { unitName } from "./feeding-units.js";
import { freeNumbers, takesDevices } from "./free-ways.js";
import type { Judge } from "./judge.js";
import { percent } from "./part-fixes.js";
import { exportCurrent } from "./port-currents.js";
import type { Fix } from "./rule.js";

/** Where the wiring of a unit lands on a way of a board, and where else it might. */
export interface Landing {
  readonly run: Run;
  readonly end: "from" | "to";
  readonly device: Item;
}

/** The run by which a unit lands on the way of a board nearest to it that lies behind a device, or on that device. */
export function landingOf(tree: FeedTree, unit: Terminal, behind: Item): Landing | undefined {
  const hops = pathTo(tree, unit)?.hops ?? [];
  const start = hops.findIndex(({ by, to }) => by === behind && to.item === behind);
  for (let index = hops.length - 1; index >= start && index > 0; index--) {
    const { by: run } = hops[index]!;
    const { item: device } = hops[index]!.from;
    if (run.is !== "run" || device.declaration.way === undefined) continue;
    return { run, end: run.from?.item === device ? "from" : "to", device };
  }
  return undefined;
}

interface Question {
  readonly plant: Plant;
  readonly tree: FeedTree;
  readonly unit: Terminal;
}

/** Ways of the same board that feed nothing yet, lie behind neither a device nor an RCD, and let the unit's current pass. */
export function spareWays({ plant, tree, unit }: Question, landing: Landing, device: Item, judge: Judge): Fix[] {
  const view = plant.boards.find(({ circuits }) => circuits.some((circuit) => circuit.device === landing.device));
  const current = ifKnown(() => exportCurrent([unit], tree, judge));
  if (!view || !current) return [];
  const behind = itemsBehind(tree, device);
  return view.circuits
    .filter((circuit) => isSpare(circuit) && !behind.has(circuit.device) && circuit.rcds.length === 0)
    .filter((circuit) => (given(circuit.device, "rated-current")?.value ?? 0) >= current.value)
    .map(({ device: other }) => ({
      title: `Land ${landing.run.id} on ${other.id}`,
      preview: `apart from ${device.id}, ${formatFigure(given(other, "rated-current")!)}`,
      does: "set-end",
      thing: landing.run,
      end: landing.end,
      terminal: other.id,
    }));
}

/** A further device on a free way of the same board, of a part that holds, for the run of a unit to land on. */
export function newWays(
  { plant, tree, unit }: Question,
  landing: Landing,
  device: Item,
  holds: (part: Part) => boolean,
  judge: Judge,
): Fix[] {
  const board = plant.boards.find(({ circuits }) => circuits.some(({ device }) => device === landing.device))?.item;
  const current = ifKnown(() => exportCurrent([unit], tree, judge));
  const [way] = board && takesDevices(board) ? (freeNumbers(board, judge, 1) ?? []) : [];
  // A board behind the device has no way apart from it.
  if (!board || !current || way === undefined || itemsBehind(tree, device).has(board)) return [];
  const { run, end } = landing;
  return [...judge.parts.values()].flatMap((part): Fix[] => {
    const rated = given(part, "rated-current");
    if (!rated || rated.value < current.value || !isNoWorse(part, landing.device, unsaidOf(part)) || !holds(part))
      return [];
    return [
      {
        title: `Land ${run.id} on ${withArticle(part.kind)} of its own, ${part.name}, on way ${way} of ${board.id}, for which nothing is written`,
        preview: `${part.name}: ${formatFigure(rated)}, ${percent(current.value / rated.value)}`,
        does: "nest-devices",
        thing: board,
        devices: [{ part, way, landing: { run, end }, serves: unitName(unit) }],
      },
    ];
  });
}

/** An RCBO is for a.c. by what it is, and its sheet says nothing of it. */
function unsaidOf({ kind }: Part): string[] {
  return kind === "rcbo" ? ["supply", "rated-voltage"] : [];
}

/** A way that is not said to serve anything, and to which nothing is wired. */
export function isSpare({ serves, servesText, beyond }: BoardCircuit): boolean {
  return serves === undefined && servesText === undefined && beyond.runs.length + beyond.loads.length === 0;
}

function itemsBehind(tree: FeedTree, device: Item): ReadonlySet<Item> {
  const out = tree.order.find(({ item, name }) => item === device && name === "out");
  return new Set(out ? fedThrough(tree, out).map(({ item }) => item) : []);
}
