import { displayUnit, fromSi, unitsOf } from "@sunwright/grammar";
import { type KindRow, meaningOf, type PropertyRow, type Shape } from "../design/schema/index.js";
import type { Rule } from "../rules/rule.js";
import { pageOf } from "./pages.js";

/* Pieces of Markdown that hovers and completion share. Meaning is in the words, never in colour or layout alone. */

/** A text of a person or a rule, so that none of its characters is taken for layout. */
export function plain(text: string): string {
  return text.replace(/[\\`*_[\]<>#|]/g, "\\$&");
}

export function code(text: string): string {
  return text.includes("`") ? plain(text) : `\`${text}\``;
}

/** An id that links to its page, where there is one. */
export function idLink(id: string, docs: string | undefined): string {
  const page = pageOf(id, docs);
  return page === undefined ? id : `[${id}](${page})`;
}

/** What a kind word means. */
export function kindText(row: KindRow): string {
  const lines = [row.title === row.kind ? `**${row.kind}**` : `**${row.kind}**: ${row.title}`, row.help];
  const terminals = row.terminals.filter(Boolean);
  if (terminals.length > 0) lines.push(`Terminals: ${terminals.map(code).join(", ")}.`);
  const essential = row.properties.filter((property) => property.essential).map(({ name }) => code(name));
  if (essential.length > 0) lines.push(`Usually stated: ${essential.join(", ")}.`);
  return lines.join("\n\n");
}

/** Meaning, form, place on a data sheet, typical value and assumption of a property. */
export function propertyText(row: PropertyRow): string {
  const symbol = row.symbol === undefined || row.symbol === row.name ? "" : ` (${plain(row.symbol)})`;
  const lines = [`**${row.name}**${symbol}`, meaningOf(row), `Written as ${shapeText(row.shape)}.`];
  if (row.typical) lines.push(`Typical: ${code(row.typical)}`);
  if (row.sheet) lines.push(`On a data sheet: ${plain(row.sheet)}.`);
  if (row.assumed)
    lines.push(
      `Where it is not stated, ${code(row.assumed.text)} is assumed and listed as such: ${plain(row.assumed.reason)}.`,
    );
  return lines.join("\n\n");
}

/** What a value may be, in words. */
export function shapeText(shape: Shape): string {
  switch (shape.is) {
    case "quantity":
      return `a number with its unit: ${unitNames(shape)}`;
    case "range":
      return `a range from low to high with its unit: ${unitNames(shape)}`;
    case "count":
      return "a whole number";
    case "flag":
      return "`yes` or `no`";
    case "words":
      return `one of ${shape.words.map(code).join(", ")}`;
    case "text":
      return "a text between quotation marks";
    case "day":
      return "a day, as `2026-06-12`";
    case "mention":
      return `the name of a ${shape.kinds.join(" or ")}`;
    case "list":
      return `a list between square brackets, each ${shapeText(shape.of)}`;
  }
}

function unitNames(shape: Extract<Shape, { is: "quantity" | "range" }>): string {
  const names = shape.dimensions.flatMap((dimension) => unitsOf(dimension)).map(({ name }) => code(name));
  return names.length === 0 ? "a plain number" : names.join(", ");
}

/** What a rule holds and why it matters. */
export function ruleText(rule: Rule, docs: string | undefined): string {
  const page = pageOf(rule.id, docs);
  const lines = [`**${rule.id}** (rule, ${rule.severity})`, plain(rule.title), plain(rule.why)];
  if (page) lines.push(`[About this rule](${page})`);
  return lines.join("\n\n");
}

/** A number with at most `digits` significant digits, without trailing zeros. */
export function shortNumber(value: number, digits = 5): string {
  return String(Number(value.toPrecision(digits))).replace("-", "−");
}

/** A value in one unit: `0.018 km`. */
export function inUnit(si: number, unit: string): string {
  return `${shortNumber(fromSi(si, unit))} ${displayUnit(unit)}`;
}
