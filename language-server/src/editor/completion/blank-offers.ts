import type { Design } from "../../design/design.js";
import {
  type KindRow,
  kindRow,
  type PropertyRow,
  partKinds,
  partRow,
  topLevelKinds,
} from "../../design/schema/index.js";
import { nextNameOf } from "./free-names.js";
import { type Offer, whole } from "./offer.js";

/** Blanks to fill in: what has no sheet of its own with what is usually stated of it, and an empty sheet of each kind. */
export function blankOffers(design: Design): Offer[] {
  return [...topLevelKinds().flatMap((kind) => itemBlank(kind, design)), ...partKinds().flatMap(partBlank)];
}

/** Of what there is one of in a design, only while there is none. */
const single: ReadonlySet<string> = new Set(["site", "supply", "earthing"]);

function itemBlank(kind: string, design: Design): Offer[] {
  const row = kindRow(kind);
  if (!row || row.declaredAs === "both" || kind === "string") return [];
  if (single.has(kind) && design.items.some((item) => item.kind === kind)) return [];
  const isNamed = row.declaredAs === "item";
  const head = kind === "site" ? `site "\${1:NAME}"` : isNamed ? `${kind} \${1:${nextNameOf(design, kind)}}` : kind;
  return [whole(kind, `${kind} { … }`, row.title, block(head, row, head === kind ? 1 : 2))];
}

function partBlank(kind: string): Offer[] {
  const row = partRow(kind);
  const printed = row && { ...row, properties: row.properties.filter(isPrinted) };
  if (!printed?.properties.some(({ essential }) => essential)) return [];
  const head = `part \${1:NAME} is ${kind}`;
  return [whole("part", `part … is ${kind}`, `an empty sheet: ${printed.title}`, block(head, printed, 2))];
}

/** No sheet prints what names something of a design, or is found on site. */
function isPrinted({ shape, onSite }: PropertyRow): boolean {
  return shape.is !== "mention" && !onSite;
}

function block(head: string, row: KindRow, firstStop: number): string {
  const essential = row.properties.filter((property) => property.essential);
  const lines = essential.map((property, index) => `    ${property.name}: ${gap(property, firstStop + index)}\n`);
  return `${head} {\n${lines.join("")}}`;
}

/** A word to choose, or a place that stays an error until somebody fills it in, with its unit behind it. */
function gap({ name, shape, typical }: PropertyRow, stop: number): string {
  if (shape.is === "flag") return `\${${stop}|yes,no|}`;
  if (shape.is === "words") return `\${${stop}|${shape.words.join(",")}|}`;
  const unit = shape.is === "quantity" || shape.is === "range" ? /[^\d.\s-].*$/.exec(typical ?? "")?.[0] : undefined;
  return `\${${stop}:${name.toUpperCase()}}${unit === undefined ? "" : ` ${unit}`}`;
}
