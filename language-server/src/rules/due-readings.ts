import type { Installation } from "../circuit/installation.js";
import type { BoardCircuit, Plant } from "../circuit/plant.js";
import { flagOf } from "../design/facts.js";
import type { Item, Run } from "../design/things.js";
import { hasMains, islandsOf } from "./mains.js";

/** What has to be measured before an installation is energised. */

/** One property of a reading; an RCD that goes on without the grid is tried in both modes. */
export interface DueProperty {
  readonly property: string;
  readonly mode?: "grid" | "island";
}

/** What is due on one thing. */
export interface DueReading {
  readonly thing: Item;
  /** Things on which it may be recorded instead: the RCD ahead of a way, a run behind it. */
  readonly also: readonly (Item | Run)[];
  readonly properties: readonly DueProperty[];
}

const ofString: readonly DueProperty[] = [
  { property: "open-circuit-voltage" },
  { property: "short-circuit-current" },
  { property: "irradiance" },
  { property: "cell-temperature" },
  { property: "polarity" },
  { property: "insulation-resistance" },
  { property: "insulation-test-voltage" },
];
const ofSupply: readonly DueProperty[] = [{ property: "loop-impedance" }, { property: "fault-current" }];
const ofElectrode: readonly DueProperty[] = [{ property: "electrode-resistance" }];
const ofCircuit: readonly DueProperty[] = [
  { property: "insulation-resistance" },
  { property: "insulation-test-voltage" },
  { property: "polarity" },
  { property: "loop-impedance" },
];

/** Everything that is due, in the order of a test sheet: the array, then the supply, its circuits, the electrodes. */
export function* dueReadings({ zones, plants }: Installation): Generator<DueReading> {
  for (const { arrays } of zones)
    for (const { strings } of arrays)
      for (const { string } of strings) if (isNew(string)) yield { thing: string, also: [], properties: ofString };
  for (const plant of plants) if (hasMains(plant)) yield* dueInPlant(plant);
}

function* dueInPlant(plant: Plant): Generator<DueReading> {
  for (const supply of plant.supplies) yield { thing: supply, also: [], properties: ofSupply };
  const backedUp = new Set(islandsOf(plant).flatMap(({ backup }) => backup.circuits.map(({ device }) => device)));
  for (const { circuits } of plant.boards)
    for (const circuit of circuits)
      if (isOfThisWork(circuit)) yield dueOnCircuit(circuit, backedUp.has(circuit.device));
  for (const electrode of plant.electrodes) yield { thing: electrode, also: [], properties: ofElectrode };
}

/** What a generating unit feeds into, and the circuits of a new board. What was there was tested when it was built. */
function isOfThisWork({ board, device, serves, servesText, beyond }: BoardCircuit): boolean {
  if (beyond.gridPorts.length + beyond.generators.length > 0) return true;
  if (!isNew(board) || !isNew(device) || !beyond.loads.every(isNew)) return false;
  return beyond.runs.length > 0 || serves !== undefined || servesText !== undefined;
}

function isNew(item: Item): boolean {
  return flagOf(item, "existing") !== true;
}

function dueOnCircuit({ device, rcds, beyond }: BoardCircuit, isBackedUp: boolean): DueReading {
  const residual = device.kind === "rcbo" || device.kind === "rcd" ? [device, ...rcds] : rcds;
  const property = "residual-trip-time";
  const trips: DueProperty[] =
    residual.length === 0
      ? []
      : isBackedUp
        ? [
            { property, mode: "grid" },
            { property, mode: "island" },
          ]
        : [{ property }];
  return { thing: device, also: [...rcds, ...beyond.runs], properties: [...ofCircuit, ...trips] };
}
