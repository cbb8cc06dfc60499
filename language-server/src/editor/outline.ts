import type {
  Declaration,
  DepartureDeclaration,
  ItemDeclaration,
  PartDeclaration,
  Quantity,
  ReadingDeclaration,
  RunDeclaration,
} from "../design/model.js";
import { absolute, type Place } from "../place.js";
import { shortNumber } from "./markdown.js";
import type { Span } from "./navigate.js";
import { type ThingSort, thingSort } from "./thing-sort.js";
import type { WorkspaceView } from "./workspace-view.js";

/** What sort of thing an entry is; the editor gives each its picture. */
export type OutlineSort = "file" | "site" | "part" | "reading" | "departure" | ThingSort;

/** One entry of the outline: what a reader looks for in a long design. */
export interface OutlineEntry {
  readonly name: string;
  readonly detail: string;
  readonly sort: OutlineSort;
  /** The whole declaration. */
  readonly whole: Span;
  /** Its name, where the cursor goes. */
  readonly at: Span;
  readonly children: readonly OutlineEntry[];
}

/** A file's declarations with what is nested in them, in the order of the text. */
export function outlineOf(view: WorkspaceView, uri: string): OutlineEntry[] {
  const entries: OutlineEntry[] = [];
  const supplies = suppliesOfParts(view, uri);
  for (const { declarations } of view.sources.fragments(uri)) {
    for (const declaration of declarations) {
      if (!view.isLive(declaration.place)) continue;
      const entry = entryOf(declaration, supplies);
      if (entry) entries.push(entry);
    }
  }
  return entries;
}

/** Which parts are made for d.c. or for a.c., by name. Read off the text: an outline waits for no assessment. */
type Supplies = ReadonlyMap<string, string>;

function suppliesOfParts(view: WorkspaceView, uri: string): Supplies {
  const supplies = new Map<string, string>();
  for (const file of view.sources.reach(uri))
    for (const { declarations } of view.sources.fragments(file))
      for (const declaration of declarations) {
        const supply = declaration.declares === "part" ? supplyIn(declaration) : undefined;
        if (declaration.declares === "part" && supply !== undefined) supplies.set(declaration.name, supply);
      }
  return supplies;
}

function supplyIn({ properties }: Pick<ItemDeclaration, "properties">): string | undefined {
  const value = properties.find(({ name }) => name === "supply")?.value;
  return value?.kind === "word" ? value.value : undefined;
}

function entryOf(declaration: Declaration, supplies: Supplies): OutlineEntry | undefined {
  switch (declaration.declares) {
    case "use":
      return entry(`use ${declaration.path}`, "", "file", declaration.place, declaration.pathPlace);
    case "part":
      return partEntry(declaration, supplies);
    case "item":
      return itemEntry(declaration, undefined, supplies);
    case "run":
      return runEntry(declaration);
    case "measured":
      return readingEntry(declaration);
    case "departure":
      return departureEntry(declaration);
    case "expect":
      return undefined;
  }
}

function partEntry(declaration: PartDeclaration, supplies: Supplies): OutlineEntry {
  const { name, kind, place, namePlace, nested } = declaration;
  const inside = nested.map((each) => itemEntry(each, kind, supplies));
  return entry(name, kind, "part", place, namePlace, inside);
}

/** `S1`, `string, 11 × Hollin430`; a way of a board begins with its number. */
function itemEntry(declaration: ItemDeclaration, within: string | undefined, supplies: Supplies): OutlineEntry {
  const { name, kind, title, part, count, way, serves, place, namePlace, nested } = declaration;
  const nameless = namePlace.from === declaration.kindPlace.from;
  const details = [nameless ? "" : kind];
  if (part) details.push(`${count ? `${count.value} × ` : ""}${part.path.join(".")}`);
  if (serves) details.push(`serves ${"path" in serves ? serves.path.join(".") : serves.value}`);
  const supply = supplyIn(declaration) ?? (part && supplies.get(part.path.join(".")));
  const shown = title ?? (nameless ? kind : name);
  return entry(
    way ? `way ${way.value}: ${shown}` : shown,
    details.filter(Boolean).join(", "),
    kind === "site" ? "site" : thingSort(kind, within, supply),
    place,
    namePlace,
    nested.map((each) => itemEntry(each, kind, supplies)),
  );
}

/** `W1`, `S1 → Q1, 18 m Solar4`. */
function runEntry({ name, from, to, length, cable, place, namePlace }: RunDeclaration): OutlineEntry {
  const ends = [from, to].map((mention) => mention?.path.join(".") ?? "?").join(" → ");
  const laid = [length && quantityText(length.value), cable?.path.join(".")].filter(Boolean).join(" ");
  return entry(name, laid === "" ? ends : `${ends}, ${laid}`, "run", place, namePlace);
}

function readingEntry({ target, day, place }: ReadingDeclaration): OutlineEntry {
  return entry(`measured ${target.path.join(".")}`, day ?? "", "reading", place, target.place);
}

/** Lists that show names only have to tell departures from one rule apart as well. */
function departureEntry({ rule, target, reason, place, rulePlace }: DepartureDeclaration): OutlineEntry {
  const on = target ? ` on ${target.path.join(".")}` : "";
  return entry(`departure ${rule}${on}`, reason, "departure", place, rulePlace);
}

function quantityText({ written, unit }: Quantity): string {
  return `${shortNumber(written, 12)} ${unit}`.trim();
}

function entry(
  name: string,
  detail: string,
  sort: OutlineSort,
  whole: Place,
  nameAt: Place,
  children: readonly OutlineEntry[] = [],
): OutlineEntry {
  return { name, detail, sort, whole: absolute(whole), at: absolute(nameAt), children };
}
