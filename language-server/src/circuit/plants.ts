import type { Design } from "../design/design.js";
import type { Item } from "../design/things.js";
import { boardView } from "./boards.js";
import type { Circuit, Converter, Terminal } from "./circuit.js";
import { FeedTrees } from "./feed-trees.js";
import { linesOf } from "./lines.js";
import { allOfKind, anchorOf } from "./loose.js";
import { neutralEarthLinks } from "./neutral-earth.js";
import type { BatteryView, BoardCircuit, BoardView, GeneratorView, InverterView, Plant } from "./plant.js";
import { plantSignature } from "./plant-signature.js";
import { acSurgeTap, backupConnection, batteryView, gridConnection, transformerView } from "./plant-views.js";
import { regions } from "./regions.js";
import { plantKinds } from "./separate.js";

/** What all plants of a design share. */
interface Shared {
  readonly design: Design;
  readonly circuit: Circuit;
  readonly converters: ReadonlyMap<Item, Converter>;
  readonly earthing?: Item;
  readonly electrodes: readonly Item[];
}

/**
 * The plants of a design, each independent of the others, in the order of the text. Where `design` is one piece,
 * `whole` is the design it was cut from: earthing and electrodes are everybody's.
 */
export function plants(design: Design, circuit: Circuit, whole = design): Plant[] {
  const shared: Shared = {
    design,
    circuit,
    converters: new Map(circuit.converters.map((converter) => [converter.inverter, converter])),
    earthing: whole.items.find(({ kind }) => kind === "earthing"),
    electrodes: whole.items.filter(({ kind }) => kind === "electrode"),
  };
  const pointers = [...allOfKind(design.items, "link"), ...allOfKind(design.items, "ct")];
  const anchors = new Map(pointers.map((item) => [item, anchorOf(item, design)]));
  const found: Plant[] = [];
  for (const region of regions(circuit)) {
    const members = new Members(region);
    if (!plantKinds.some((kind) => members.of(kind).length > 0)) continue;
    const isFirst = found.length === 0;
    const here = pointers.filter((item) => {
      const anchor = anchors.get(item);
      return anchor ? members.has(anchor) : isFirst;
    });
    found.push(plantOf(region, members, here, shared));
  }
  return found;
}

/** Items with a terminal in a region, and the inverters whose ports are there. */
class Members {
  private readonly all = new Set<Item>();
  private readonly byKind = new Map<string, Item[]>();

  constructor(region: readonly Terminal[]) {
    for (const { item, name } of region) {
      // Earth bars are joined to nothing that feeds; the board is where its bar is.
      if (name === "earth") continue;
      const isPort = item.parent?.kind === "inverter";
      if (isPort) {
        this.all.add(item);
        this.add(item.parent!);
      } else this.add(item);
    }
  }
  has(item: Item): boolean {
    return this.all.has(item);
  }
  /** Items of a kind; a battery port is no battery. */
  of(kind: string): readonly Item[] {
    return this.byKind.get(kind) ?? [];
  }
  private add(item: Item): void {
    if (this.all.has(item)) return;
    this.all.add(item);
    const same = this.byKind.get(item.kind);
    if (same) same.push(item);
    else this.byKind.set(item.kind, [item]);
  }
}

function plantOf(region: readonly Terminal[], members: Members, pointers: readonly Item[], shared: Shared): Plant {
  const { design, circuit } = shared;
  const trees = new FeedTrees(region);
  const boards = new Map(members.of("board").map((board) => [board, boardView(board, design, circuit, trees)]));
  const ways = new Map(
    [...boards.values()].flatMap(({ circuits }) => circuits.map((way) => [way.device, way] as const)),
  );
  const batteries = members.of("battery").map((battery) => batteryView(battery, circuit));
  const inverters = members.of("inverter").flatMap((inverter) => {
    const converter = shared.converters.get(inverter);
    return converter ? [inverterView(converter, trees, boards, ways, batteries)] : [];
  });
  const links = pointers.filter(({ kind }) => kind === "link");
  const supplies = members.of("supply");
  const plant: Omit<Plant, "signature"> = {
    id: plantKinds.flatMap((kind) => members.of(kind))[0]?.id ?? "",
    supplies,
    boards: [...boards.values()],
    inverters,
    batteries,
    generators: generatorViews(region, trees, ways),
    changeovers: members.of("changeover"),
    meters: members.of("meter"),
    transformers: pointers
      .filter(({ kind }) => kind === "ct")
      .map((transformer) => transformerView(transformer, design, trees)),
    surge: region
      .filter((terminal) => terminal.item.kind === "spd" && trees.reaching(terminal).length > 0)
      .map((terminal) => acSurgeTap(terminal.item, terminal, trees)),
    lines: linesOf(trees.all, ways),
    neutralEarth: neutralEarthLinks(links, supplies, inverters),
    earthing: shared.earthing,
    electrodes: shared.electrodes,
    trees: trees.all,
  };
  return { ...plant, signature: plantSignature(plant, links) };
}

function inverterView(
  { inverter, ports }: Converter,
  trees: FeedTrees,
  boards: ReadonlyMap<Item, BoardView>,
  ways: ReadonlyMap<Item, BoardCircuit>,
  batteries: readonly BatteryView[],
): InverterView {
  const portOf = (kind: string): Terminal | undefined => ports.find((port) => port.kind === kind)?.terminal;
  const grid = portOf("ac");
  const backup = portOf("backup");
  const island = backup && trees.rootedAt(backup);
  const storage = portOf("battery")?.item;
  return {
    inverter,
    trackers: ports.filter(({ kind }) => kind === "tracker").map(({ terminal }) => terminal.item),
    grid: grid && gridConnection(grid.item, grid, trees, ways),
    backup: backup && island && backupConnection(backup.item, island, boards, ways),
    storage: storage && {
      port: storage,
      batteries: batteries.filter(({ port }) => port === storage).map(({ battery }) => battery),
    },
  };
}

function generatorViews(
  region: readonly Terminal[],
  trees: FeedTrees,
  ways: ReadonlyMap<Item, BoardCircuit>,
): GeneratorView[] {
  return region
    .filter(({ item }) => item.kind === "generator")
    .map((terminal) => {
      const { toSupply, circuit } = gridConnection(terminal.item, terminal, trees, ways);
      return { generator: terminal.item, toSupply, circuit };
    });
}
