import type {
  Declaration,
  ItemDeclaration,
  PartDeclaration,
  Quantity,
  ReadingDeclaration,
  RunDeclaration,
} from "../design/model.js";
import { absolute, type Place } from "../place.js";
import { shortNumber } from "./markdown.js";
import type { Span } from "./navigate.js";
import type { WorkspaceView } from "./workspace-view.js";

/** What sort of thing an entry is; the editor gives each its picture. */
export type OutlineSort = "file" | "site" | "part" | "item" | "block" | "run" | "note";

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
  for (const { declarations } of view.sources.fragments(uri)) {
    for (const declaration of declarations) {
      if (!view.isLive(declaration.place)) continue;
      const entry = entryOf(declaration);
      if (entry) entries.push(entry);
    }
  }
  return entries;
}

function entryOf(declaration: Declaration): OutlineEntry | undefined {
  switch (declaration.declares) {
    case "use":
      return entry(`use ${declaration.path}`, "", "file", declaration.place, declaration.pathPlace);
    case "part":
      return partEntry(declaration);
    case "item":
      return itemEntry(declaration);
    case "run":
      return runEntry(declaration);
    case "measured":
      return readingEntry(declaration);
    case "departure":
      return entry(
        `departure ${declaration.rule}`,
        declaration.target ? `on ${declaration.target.path.join(".")}` : "",
        "note",
        declaration.place,
        declaration.rulePlace,
      );
    case "expect":
      return undefined;
  }
}

function partEntry(declaration: PartDeclaration): OutlineEntry {
  const { name, kind, place, namePlace, nested } = declaration;
  return entry(name, kind, "part", place, namePlace, nested.map(itemEntry));
}

/** `S1`, `string, 11 × Hollin430`; a way of a board begins with its number. */
function itemEntry(declaration: ItemDeclaration): OutlineEntry {
  const { name, kind, title, part, count, way, serves, place, namePlace, nested } = declaration;
  const nameless = namePlace.from === declaration.kindPlace.from;
  const details = [nameless ? "" : kind];
  if (part) details.push(`${count ? `${count.value} × ` : ""}${part.path.join(".")}`);
  if (serves) details.push(`serves ${"path" in serves ? serves.path.join(".") : serves.value}`);
  const shown = title ?? (nameless ? kind : name);
  return entry(
    way ? `way ${way.value}: ${shown}` : shown,
    details.filter(Boolean).join(", "),
    kind === "site" ? "site" : nameless ? "block" : "item",
    place,
    namePlace,
    nested.map(itemEntry),
  );
}

/** `W1`, `S1 → Q1, 18 m Solar4`. */
function runEntry({ name, from, to, length, cable, place, namePlace }: RunDeclaration): OutlineEntry {
  const ends = [from, to].map((mention) => mention?.path.join(".") ?? "?").join(" → ");
  const laid = [length && quantityText(length.value), cable?.path.join(".")].filter(Boolean).join(" ");
  return entry(name, laid === "" ? ends : `${ends}, ${laid}`, "run", place, namePlace);
}

function readingEntry({ target, day, place }: ReadingDeclaration): OutlineEntry {
  return entry(`measured ${target.path.join(".")}`, day ?? "", "note", place, target.place);
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
