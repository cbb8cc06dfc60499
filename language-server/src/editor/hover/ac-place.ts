import * as l10n from "@vscode/l10n";
import type { Assessment } from "../../assessment/assessment.js";
import type { Path } from "../../circuit/feed.js";
import type { BoardCircuit, Plant } from "../../circuit/plant.js";
import type { Item, Run } from "../../design/things.js";
import { plain } from "../markdown.js";

/** More ways than these do not help to see where a thing is. */
const most = 6;

/** Where a thing lies between the supply and what feeds in: one line a way, at most six. Markdown. */
export function acPlaces(assessment: Assessment, thing: Item | Run): string[] {
  const paths = assessment.plants.flatMap((plant) => [...pathsOf(plant)]);
  const unique = [...new Set(paths.filter((path) => liesOn(path, thing.id)).map(pathText))];
  const shown = unique.slice(0, most);
  if (unique.length > most) shown.push(l10n.t("and {0} more", unique.length - most));
  return shown;
}

/** On which way of which board a device sits: `Way 9 of CU behind CU.R1, serves INV.` */
export function wayText(assessment: Assessment, thing: Item | Run): string | undefined {
  for (const { boards } of assessment.plants)
    for (const { circuits } of boards)
      for (const circuit of circuits) if (circuit.device.id === thing.id) return circuitText(circuit);
  return undefined;
}

/** From each inverter and generating unit to the supply, and from each battery to its port. */
function* pathsOf({ inverters, generators, batteries }: Plant): Generator<Path> {
  for (const { grid } of inverters) if (grid?.toSupply) yield grid.toSupply;
  for (const { toSupply } of generators) if (toSupply) yield toSupply;
  for (const { path } of batteries) if (path) yield path;
}

function liesOn(path: Path, id: string): boolean {
  return path.from.item.id === id || path.to.item.id === id || path.hops.some(({ by }) => by.id === id);
}

/** `INV.ac → W8 → Q3 → W9 → CU.K9 → CU.MS → W12 → GRID`: a board that is named by what sits on it is not named again. */
function pathText({ from, to, hops }: Path): string {
  const ids = [from.item.id, ...hops.map(({ by }) => by.id), to.item.id];
  const named = ids.filter((id, index) => {
    const neighbours = [ids[index - 1], ids[index + 1]];
    return id !== neighbours[0] && !neighbours.some((other) => other?.startsWith(`${id}.`));
  });
  return plain(named.join(" → "));
}

function circuitText({ board, way, rcds, serves, servesText }: BoardCircuit): string {
  const number = way === undefined ? l10n.t("A way") : l10n.t("Way {0}", way);
  const behind = rcds.length > 0 ? ` behind ${rcds.map(({ id }: Item) => id).join(", ")}` : "";
  const served = serves?.id ?? servesText;
  return plain(`${number} of ${board.id}${behind}${served === undefined ? "" : `, serves ${served}`}.`);
}
