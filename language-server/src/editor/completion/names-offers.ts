import type { Assessment } from "../../assessment/assessment.js";
import type { Design } from "../../design/design.js";
import type { Item, Part } from "../../design/things.js";
import { keyFigures } from "../hover/thing.js";
import { plain } from "../markdown.js";
import { sortOfItem } from "../thing-sort.js";
import { checksOf } from "../things-of.js";
import type { Offer } from "./offer.js";

/** Parts of one kind with their key figures. */
export function partOffers(design: Design, kind: string): Offer[] {
  return [...design.parts.values()]
    .filter((part) => part.kind === kind)
    .map((part) => ({
      label: part.name,
      sort: "part",
      detail: part.row?.title ?? part.kind,
      documentation: partDocumentation(part),
    }));
}

function partDocumentation(part: Part): string {
  const figures = keyFigures(part).map((figure) => `- ${figure}`);
  const doc = part.declaration.doc?.trim();
  return [doc, figures.join("\n")].filter(Boolean).join("\n\n");
}

/** What may follow a dot: ports and nested items, and the item's own terminals. */
export function terminalOffers({ design }: Assessment, path: readonly string[]): Offer[] {
  const resolved = design.names.resolve({ path });
  if (resolved.is !== "item") return [];
  const { item } = resolved;
  const nested = [...withNested(item.children)].map((child) => itemOffer(child, undefined, child.name));
  const own = (item.row?.terminals ?? [])
    .filter(Boolean)
    .map((name): Offer => ({ label: name, sort: "terminal", detail: `terminal of ${item.id}` }));
  return [...nested, ...own];
}

/** Items by name, for a reading, a departure or a load. Those with a finding of the rule first. */
export function targetOffers(assessment: Assessment, rule?: string): Offer[] {
  const { design } = assessment;
  const found: Offer[] = [];
  const others: Offer[] = [];
  const things = [...withNested(design.items), ...design.runs];
  for (const thing of things) {
    if (thing.id === "" || thing.kind === "site") continue;
    const finding = rule === undefined ? undefined : findingText(assessment, thing, rule);
    const offer = thing.is === "run" ? runOffer(thing.id, thing.cable?.name) : itemOffer(thing);
    if (finding === undefined) others.push(offer);
    else found.push({ ...offer, documentation: finding });
  }
  return [...found, ...others];
}

function findingText(assessment: Assessment, thing: Parameters<typeof checksOf>[1], rule: string): string | undefined {
  for (const { rule: checked, outcome } of checksOf(assessment, thing))
    if (checked.id === rule && outcome.outcome === "finding") return plain(outcome.what);
  return undefined;
}

/** An item by its name, with what it is and what state it is in. */
export function itemOffer(item: Item, state?: string, label = item.id): Offer {
  const what = item.part ? `${item.kind}, ${item.part.name}` : item.kind;
  return {
    label,
    sort: sortOfItem(item),
    detail: state ? `${what} (${state})` : what,
    documentation: item.declaration.doc?.trim() || item.row?.help,
  };
}

function runOffer(id: string, cable: string | undefined): Offer {
  return { label: id, sort: "run", detail: cable ? `run of ${cable}` : "run" };
}

export function* withNested(items: readonly Item[]): Generator<Item> {
  for (const item of items) {
    yield item;
    yield* withNested(item.children);
  }
}
