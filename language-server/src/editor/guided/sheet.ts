import {
  type KindRow,
  kindRow,
  kindsWithin,
  meaningOf,
  type PropertyRow,
  partKinds,
  partRow,
} from "../../design/schema/index.js";
import { shapeText } from "../markdown.js";

/** A kind of part that comes with a data sheet. */
export interface SheetKind {
  readonly kind: string;
  readonly title: string;
  readonly help: string;
}

/** One line of a data sheet, as a question. */
export interface SheetQuestion {
  readonly property: string;
  readonly symbol?: string;
  /** What it means. */
  readonly help: string;
  /** Under which words a sheet prints it. */
  readonly sheet?: string;
  readonly typical?: string;
  /** What an answer looks like: "a number with its unit: V, kV". */
  readonly form: string;
  /** Answers to choose from, where there is nothing else. */
  readonly choices?: readonly string[];
  readonly isEssential: boolean;
}

/** What a sheet says of one side of the thing: a tracker, a port. */
export interface SheetBlock extends SheetKind {
  /** There may be several, each with a name: `tracker pv1`, `tracker pv2`. */
  readonly isNamed: boolean;
  readonly questions: readonly SheetQuestion[];
}

export interface Sheet extends SheetKind {
  readonly questions: readonly SheetQuestion[];
  readonly blocks: readonly SheetBlock[];
}

/** Where the sheet itself is named; asked for at the end. Whatever has a sheet has this property. */
export const sheetProperty = "reference";

/** Kinds that have a data sheet, in the order of the reference page. */
export function sheetKinds(): SheetKind[] {
  return partKinds().flatMap((kind) => {
    const row = partRow(kind);
    return row && hasSheet(row) ? [{ kind, title: row.title, help: unmarked(row.help) }] : [];
  });
}

/** What a data sheet of some kind is asked for, what is needed most first; undefined for a kind that has none. */
export function sheetOf(kind: string): Sheet | undefined {
  const row = partRow(kind);
  if (!row || !hasSheet(row)) return undefined;
  const { title, help } = row;
  return {
    kind,
    title,
    help,
    questions: questionsOf(row),
    blocks: kindsWithin(kind).flatMap((each) => blockOf(each, kind)),
  };
}

/** The property that a question of a sheet is about. */
export function sheetRow(kind: string, block: string | undefined): KindRow | undefined {
  return block === undefined ? partRow(kind) : kindRow(block, kind);
}

function hasSheet({ properties }: KindRow): boolean {
  return properties.some(({ name }) => name === sheetProperty);
}

/** Sides of the thing itself; devices that may be fitted inside have sheets of their own. */
function blockOf(kind: string, outer: string): SheetBlock[] {
  const row = kindRow(kind, outer);
  if (!row?.within?.includes(outer) || row.terminals.length === 0 || hasSheet(row)) return [];
  const { title, help, declaredAs } = row;
  return [{ kind, title, help, isNamed: declaredAs === "item", questions: questionsOf(row) }];
}

function questionsOf({ properties }: KindRow): SheetQuestion[] {
  const asked = properties.filter(
    ({ name, onSite, shape }) => !onSite && name !== sheetProperty && shape.is !== "mention",
  );
  const isEssential = (row: PropertyRow): boolean => row.essential === true;
  return [...asked.filter(isEssential), ...asked.filter((row) => !isEssential(row))].map(question);
}

function question(row: PropertyRow): SheetQuestion {
  const { name, symbol, sheet, typical, shape, essential } = row;
  const choices = shape.is === "words" ? shape.words : shape.is === "flag" ? ["yes", "no"] : undefined;
  return {
    property: name,
    help: unmarked(meaningOf(row)),
    form: unmarked(shapeText(shape)),
    isEssential: essential === true,
    ...(symbol !== undefined && symbol !== name && { symbol }),
    ...(sheet !== undefined && { sheet }),
    ...(typical !== undefined && { typical }),
    ...(choices && { choices }),
  };
}

/** Questions and lists show a text as it is. */
function unmarked(markdown: string): string {
  return markdown.replaceAll("`", "");
}
