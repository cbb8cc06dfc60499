import { wordOf } from "../design/facts.js";
import type { Item } from "../design/things.js";

/** What sort of thing a name stands for. The editor has a picture for each; the words beside it say the same. */
export type ThingSort =
  | "string"
  | "source"
  | "port"
  | "dc-device"
  | "ac-device"
  | "device"
  | "board"
  | "earthing"
  | "run"
  | "block";

const byKind: Readonly<Record<string, ThingSort>> = {
  string: "string",
  supply: "source",
  inverter: "source",
  battery: "source",
  generator: "source",
  tracker: "port",
  ac: "port",
  backup: "port",
  combiner: "dc-device",
  rcd: "ac-device",
  rcbo: "ac-device",
  breaker: "ac-device",
  changeover: "ac-device",
  meter: "ac-device",
  load: "ac-device",
  ct: "ac-device",
  "terminal-block": "ac-device",
  isolator: "device",
  fuse: "device",
  spd: "device",
  board: "board",
  electrode: "earthing",
  link: "earthing",
  earthing: "earthing",
  run: "run",
};

export const sortOfItem = (item: Item): ThingSort => thingSort(item.kind, item.parent?.kind, wordOf(item, "supply"));

/** The sort of a kind. Of devices that there are for both sides, `supply` says which: `dc`, `ac`, or nothing known. */
export function thingSort(kind: string, within: string | undefined, supply: string | undefined): ThingSort {
  if (kind === "battery" && within === "inverter") return "port";
  const sort = byKind[kind] ?? "block";
  const isEither = sort === "device" || kind === "breaker";
  if (isEither && supply === "dc") return "dc-device";
  return isEither && supply === "ac" ? "ac-device" : sort;
}
