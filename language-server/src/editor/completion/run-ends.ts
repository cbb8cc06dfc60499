import type { Assessment } from "../../assessment/assessment.js";
import type { Item } from "../../design/things.js";
import { sortOfItem } from "../thing-sort.js";
import { itemOffer, withNested } from "./names-offers.js";
import type { Offer } from "./offer.js";

/** What a cable may belong to. One from a string does not go to the supply. */
type Network = "array" | "battery" | "ac";

const anyNetwork: readonly Network[] = ["array", "battery", "ac"];

/**
 * Ends for a run: whatever has a terminal, what is not wired there yet first. Cables are written from where power comes
 * in, so that one rarely begins at a device on the bar of a board or at a thing that only takes, and rarely ends at a
 * source. Behind `from …`, what that end could feed or be fed from comes before all else.
 */
export function endOffers({ design, circuit }: Assessment, side: "in" | "out", from: readonly string[]): Offer[] {
  const resolved = from.length > 0 ? design.names.resolve({ path: from }) : undefined;
  const start = resolved?.is === "item" ? resolved.item : undefined;
  const wanted = start ? networksOf(start) : anyNetwork;
  const ranked: { readonly offer: Offer; readonly rank: number }[] = [];
  for (const item of withNested(design.items)) {
    const terminals = item.row?.terminals ?? [];
    if (terminals.length === 0 || item.id === "" || item === start) continue;
    const terminal = terminals.includes(side) ? side : terminals[0]!;
    const at = circuit.terminals.get(terminal === "" ? item.id : `${item.id}.${terminal}`);
    const isWired = at?.links.some((link) => link.by.is === "run") ?? false;
    const isRare = side === "out" ? isOnBar(item) || terminal === "in" : isSource(item);
    const isOther = !networksOf(item).some((network) => wanted.includes(network));
    const rank = (isOther ? 4 : 0) + (isRare ? 2 : 0) + (isWired ? 1 : 0);
    ranked.push({ offer: itemOffer(item, isWired ? "wired already" : undefined), rank });
  }
  return ranked.sort((a, b) => a.rank - b.rank).map(({ offer }) => offer);
}

function networksOf(item: Item): readonly Network[] {
  const { kind, parent } = item;
  if (kind === "battery") return ["battery"];
  if (kind === "string" || kind === "tracker" || kind === "combiner") return ["array"];
  if (parent?.kind === "combiner") return ["array"];
  if (kind === "supply" || kind === "generator" || kind === "ac" || kind === "backup") return ["ac"];
  const sort = sortOfItem(item);
  // What goes to earth carries no current that anything is fed with.
  if (sort === "earthing") return [];
  if (sort === "dc-device") return ["array", "battery"];
  return sort === "ac-device" || sort === "board" || isOnBar(item) ? ["ac"] : anyNetwork;
}

function isSource({ kind, parent }: Item): boolean {
  if (kind === "battery") return parent === undefined;
  return kind === "string" || kind === "supply" || kind === "generator";
}

function isOnBar({ parent }: Item): boolean {
  return parent !== undefined && (parent.kind === "board" || isOnBar(parent));
}
