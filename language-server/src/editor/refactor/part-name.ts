import type { ItemDeclaration } from "../../design/model.js";
import type { KindRow } from "../../design/schema/index.js";

/** What an item would be called on a catalogue's page: its kind with the first of its essential figures. */
export function partName({ kind, properties }: ItemDeclaration, row: KindRow): string {
  const word = kind
    .split("-")
    .map((part) => part.slice(0, 1).toUpperCase() + part.slice(1))
    .join("");
  const current = properties.find(({ name }) => name === "rated-current");
  const essential = row.properties.filter((property) => property.essential).map(({ name }) => name);
  const figures = [current, ...properties.filter(({ name }) => essential.includes(name))];
  for (const property of figures)
    if (property?.value?.kind === "quantity") return `${word}${Math.abs(Math.round(property.value.written))}`;
  return `${word}Part`;
}
