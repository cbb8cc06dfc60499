import { nameSource } from "@sunwright/grammar";
import * as l10n from "@vscode/l10n";
import { declarationProblems } from "../../design/check.js";
import type { Block, Problem, Property } from "../../design/model.js";
import { kindRow, type PropertyRow, partRow, propertyRow } from "../../design/schema/index.js";
import type { ReadText } from "./read-text.js";
import { sheetRow } from "./sheet.js";

/** Which line of which sheet, or of which item, an answer belongs to. */
export interface Asked {
  readonly kind: string;
  /** Kind of the block it stands in: `tracker`. */
  readonly block?: string;
  readonly property: string;
}

const wholeName = new RegExp(`^${nameSource}$`);

/** Why an answer cannot be written as it stands; undefined where it can. The language itself says so. */
export function answerProblem({ kind, block, property }: Asked, answer: string, read: ReadText): string | undefined {
  const isPart = partRow(kind) !== undefined;
  const owner = isPart ? sheetRow(kind, block) : kindRow(kind);
  const row = owner && propertyRow(owner, property);
  if (!owner || !row) return l10n.t("There is no property {0} here.", property);
  const inner = `${property}: ${asWritten(row, answer)}\n`;
  const body = block === undefined ? inner : `${block}${owner.declaredAs === "item" ? " A" : ""} {\n${inner}}\n`;
  const fragments = read(`${isPart ? `part A is ${kind}` : `${kind} A`} {\n${body}}\n`);
  const [made, ...more] = fragments.flatMap(({ declarations }) => declarations);
  // What closes a brace or opens a comment would be more than an answer.
  const isWhole = fragments.length === 1 && !fragments.some(({ broken }) => broken);
  if (!isWhole || !made || !("nested" in made) || more.length > 0) return noValue(row);
  const [problem] = [...fragments.flatMap(({ problems }) => problems), ...declarationProblems(made)];
  if (problem) return sentence(problem);
  return isOnly(made, property, block) ? undefined : noValue(row);
}

function noValue({ name, typical }: PropertyRow): string {
  return typical === undefined
    ? l10n.t("This is no value of {0}.", name)
    : l10n.t("This is no value. {0} is written as {1}.", name, typical);
}

/** Why a word cannot be the name of a part. */
export function nameProblem(name: string): string | undefined {
  if (wholeName.test(name)) return undefined;
  return name === ""
    ? l10n.t("A part needs a name: letters and digits, as in Hollin430.")
    : l10n.t("{0} is no name. A name begins with a letter and has letters, digits, _ and inner hyphens.", name);
}

/** An answer as it stands in the text: quotation marks and brackets are nothing that a reader of a sheet thinks of. */
export function asWritten({ shape }: Pick<PropertyRow, "shape">, answer: string): string {
  const trimmed = answer.trim();
  if (shape.is === "text") return quoted(trimmed);
  if (shape.is === "list" && !trimmed.startsWith("[")) return `[${trimmed}]`;
  return trimmed;
}

/** A text between quotation marks; those in it become single ones, as on paper. */
export function quoted(text: string): string {
  const inner = /^"([^"]*)"$/.exec(text)?.[1] ?? text;
  return `"${inner.replaceAll('"', "'").replace(/[\\\s]+/g, " ")}"`;
}

function isOnly(part: Block, property: string, block: string | undefined): boolean {
  const nested = part.nested[0];
  if (block === undefined) return nested === undefined && only(part.properties, property);
  return part.properties.length === 0 && part.nested.length === 1 && !!nested && only(nested.properties, property);
}

function only(properties: readonly Property[], name: string): boolean {
  return properties.length === 1 && properties[0]?.name === name && properties[0].value !== undefined;
}

/** What is wrong, and what may have been meant. */
function sentence({ message, suggestions = [] }: Problem): string {
  const meant = suggestions.map(({ text }) => text);
  return meant.length === 0 ? message : `${message} ${l10n.t("Perhaps {0}?", meant.join(l10n.t(" or ")))}`;
}
