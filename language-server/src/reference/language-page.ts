import { dimensions, unitsOf } from "@sunwright/grammar";
import { problemTitles } from "../assessment/problem-ids.js";
import { type KindRow, kindRows, meaningOf, type PropertyRow, type Shape } from "../design/schema/index.js";

/** Every kind with its properties, and everything that can be wrong with the text itself. Markdown, from the schema. */
export function languagePage(): string {
  return `# The language, kind by kind

Generated from the property schema: what is listed here is what the checker knows.

${kindRows.map(kindSection).join("\n")}
## What can be wrong with the text itself

| id | meaning |
|---|---|
${Object.entries(problemTitles)
  .map(([id, title]) => `| ${id} | ${title} |`)
  .join("\n")}

## Units

| quantity | units |
|---|---|
${Object.entries(dimensions)
  .map(([dimension, { title }]) => [
    title,
    unitsOf(dimension as keyof typeof dimensions).map((unit) => `\`${unit.name}\``),
  ])
  .filter(([, units]) => (units as string[]).length > 0)
  .map(([title, units]) => `| ${title} | ${(units as string[]).join(" ")} |`)
  .join("\n")}
`;
}

function kindSection(row: KindRow): string {
  const where = row.within ? ` (inside ${row.within.join(", ")})` : "";
  const terminals = row.terminals.filter(Boolean);
  const ends = terminals.length > 0 ? `\n\nTerminals: ${terminals.map((name) => `\`${name}\``).join(", ")}.` : "";
  const properties =
    row.properties.length > 0
      ? `\n\n| property | value | meaning |\n|---|---|---|\n${row.properties.map(propertyLine).join("\n")}`
      : "";
  return `## ${row.kind}${where}\n\n${row.help}${ends}${properties}\n`;
}

function propertyLine(row: PropertyRow): string {
  const symbol = row.symbol ? ` (${row.symbol})` : "";
  const sheet = row.sheet ? ` On a data sheet: ${row.sheet}.` : "";
  const assumed = row.assumed ? ` Assumed ${row.assumed.text} where not stated: ${row.assumed.reason}.` : "";
  return `| \`${row.name}\`${symbol} | ${shapeText(row.shape)}${row.typical ? `, e.g. \`${row.typical}\`` : ""} | ${meaningOf(row)}${sheet}${assumed} |`;
}

/** What a value may be, in words. */
export function shapeText(shape: Shape): string {
  switch (shape.is) {
    case "quantity":
      return shape.dimensions.map((dimension) => dimensions[dimension].title).join(" or ");
    case "range":
      return `range of ${shape.dimensions.map((dimension) => dimensions[dimension].title).join(" or ")}`;
    case "count":
      return "whole number";
    case "flag":
      return "`yes` or `no`";
    case "words":
      return shape.words.map((word) => `\`${word}\``).join(" ");
    case "text":
      return "text";
    case "day":
      return "day";
    case "mention":
      return `name of a ${shape.kinds.join(" or ")}`;
    case "list":
      return `list of ${shapeText(shape.of)}`;
  }
}
