import type { Design } from "../design/design.js";
import type { Item } from "../design/things.js";
import { boardView } from "./boards.js";
import type { Circuit, Converter, Terminal } from "./circuit.js";
import type { FeedTree } from "./feed.js";
import { feedTrees, linesOf } from "./lines.js";
import { allOfKind, anchorOf } from "./loose.js";
import { neutralEarthLinks } from "./neutral-earth.js";
import type { BatteryView, BoardCircuit, BoardView, GeneratorView, InverterView, Plant } from "./plant.js";
import { plantSignature } from "./plant-signature.js";
import { acSurgeTap, backupConnection, batteryView, gridConnection, transformerView } from "./plant-views.js";
import { regions } from "./regions.js";

/** Kinds that make a piece of wiring a plant; a string on its own is none. */
const plantKinds = ["supply", "board", "inverter", "battery", "generator", "changeover"] as const;

/** The plants of a design, each independent of the others, in the order of the text. */
export function plants(design: Design, circuit: Circuit): Plant[] {
  const found: Plant[] = [];
  const pointers = [...allOfKind(design.items, "link"), ...allOfKind(design.items, "ct")];
  const anchors = new Map(pointers.map((item) => [item, anchorOf(item, design)]));
  for (const region of regions(circuit)) {
    const items = itemsOf(region);
    if (!plantKinds.some((kind) => items.of(kind).length > 0)) continue;
    const isFirst = found.length === 0;
    const here = pointers.filter((item) => {
      const anchor = anchors.get(item);
      return anchor ? items.all.has(anchor) : isFirst;
    });
    found.push(plantOf(region, items, here, design, circuit));
  }
  return found;
}

interface Members {
  readonly all: ReadonlySet<Item>;
  of(kind: string): Item[];
}

/** Items with a terminal in a region, and the inverters whose ports are there. */
function itemsOf(region: readonly Terminal[]): Members {
  const all = new Set<Item>();
  for (const { item, name } of region) {
    // Earth bars are joined to nothing that feeds; the board is where its bar is.
    if (name === "earth") continue;
    if (item.parent?.kind === "inverter") all.add(item.parent);
    all.add(item);
  }
  const isPort = (item: Item): boolean => item.parent?.kind === "inverter";
  return { all, of: (kind) => [...all].filter((item) => item.kind === kind && !isPort(item)) };
}

function plantOf(
  region: readonly Terminal[],
  items: Members,
  pointers: readonly Item[],
  design: Design,
  circuit: Circuit,
): Plant {
  const converters = circuit.converters.filter(({ inverter }) => items.all.has(inverter));
  const supplies = items.of("supply");
  const trees = feedTrees(region);
  const boards = items.of("board").map((board) => boardView(board, design, circuit, trees));
  const ways = new Map(boards.flatMap(({ circuits }) => circuits.map((way) => [way.device, way] as const)));
  const batteries = items.of("battery").map((battery) => batteryView(battery, circuit, converters));
  const inverters = converters.map((converter) => inverterView(converter, trees, boards, ways, batteries));
  const links = pointers.filter(({ kind }) => kind === "link");
  const plant: Omit<Plant, "signature"> = {
    id: plantKinds.flatMap((kind) => items.of(kind))[0]?.id ?? "",
    supplies,
    boards,
    inverters,
    batteries,
    generators: generatorViews(region, trees, ways),
    changeovers: items.of("changeover"),
    meters: items.of("meter"),
    transformers: pointers
      .filter(({ kind }) => kind === "ct")
      .map((transformer) => transformerView(transformer, design, trees)),
    surge: region
      .filter((terminal) => terminal.item.kind === "spd" && trees.some(({ arriving }) => arriving.has(terminal)))
      .map((terminal) => acSurgeTap(terminal.item, terminal, trees)),
    lines: linesOf(trees, ways),
    neutralEarth: neutralEarthLinks(links, supplies, inverters),
    earthing: design.items.find(({ kind }) => kind === "earthing"),
    electrodes: design.items.filter(({ kind }) => kind === "electrode"),
    trees,
  };
  return { ...plant, signature: plantSignature(plant, links) };
}

function inverterView(
  { inverter, ports }: Converter,
  trees: readonly FeedTree[],
  boards: readonly BoardView[],
  ways: ReadonlyMap<Item, BoardCircuit>,
  batteries: readonly BatteryView[],
): InverterView {
  const portOf = (kind: string): Terminal | undefined => ports.find((port) => port.kind === kind)?.terminal;
  const grid = portOf("ac");
  const backup = portOf("backup");
  const island = trees.find(({ root }) => root === backup);
  const storage = portOf("battery")?.item;
  return {
    inverter,
    trackers: ports.filter(({ kind }) => kind === "tracker").map(({ terminal }) => terminal.item),
    grid: grid && gridConnection(grid.item, grid, trees, ways),
    backup: backup && island && backupConnection(backup.item, island, boards),
    storage: storage && {
      port: storage,
      batteries: batteries.filter(({ port }) => port === storage).map(({ battery }) => battery),
    },
  };
}

function generatorViews(
  region: readonly Terminal[],
  trees: readonly FeedTree[],
  ways: ReadonlyMap<Item, BoardCircuit>,
): GeneratorView[] {
  return region
    .filter(({ item }) => item.kind === "generator")
    .map((terminal) => {
      const { toSupply, circuit } = gridConnection(terminal.item, terminal, trees, ways);
      return { generator: terminal.item, toSupply, circuit };
    });
}
