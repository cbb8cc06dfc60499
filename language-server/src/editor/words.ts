import type {
  Block,
  Declaration,
  DepartureDeclaration,
  ItemDeclaration,
  Mention,
  PartDeclaration,
  Property,
  Quantity,
  ReadingDeclaration,
  RunDeclaration,
  UseDeclaration,
} from "../design/model.js";
import { type KindRow, kindRow, type PropertyRow, partRow, propertyRow } from "../design/schema/index.js";
import { departureRow, readingRow, runRow } from "../design/schema/wiring.js";
import type { Place } from "../place.js";

/** A declaration with a block of properties, and its row of the schema. */
export interface Owner {
  readonly declaration: PartDeclaration | ItemDeclaration | RunDeclaration | ReadingDeclaration | DepartureDeclaration;
  readonly row?: KindRow;
}

/** What a name is mentioned for. */
export type Role =
  | "part"
  | "from"
  | "to"
  | "cable"
  | "serves"
  | "target"
  /** A property's value that names something of the design: `around: W12`, `at: INV.backup`. */
  | "named"
  /** A property's value that names something within its own device: a pole arrangement. */
  | "value";

/** One word of a declaration that says something by itself. */
export type Word =
  | { readonly is: "use"; readonly declaration: UseDeclaration }
  | { readonly is: "kind"; readonly declaration: PartDeclaration | ItemDeclaration; readonly row?: KindRow }
  | { readonly is: "name"; readonly declaration: PartDeclaration | ItemDeclaration | RunDeclaration }
  | { readonly is: "count"; readonly declaration: ItemDeclaration }
  | { readonly is: "length"; readonly declaration: RunDeclaration; readonly quantity: Quantity }
  | { readonly is: "mention"; readonly mention: Mention; readonly role: Role }
  | { readonly is: "rule"; readonly rule: string; readonly target?: Mention }
  | { readonly is: "property"; readonly property: Property; readonly row?: PropertyRow }
  | { readonly is: "value"; readonly property: Property; readonly row?: PropertyRow };

export interface WordInText {
  readonly word: Word;
  readonly place: Place;
  /** The declarations whose braces the word stands in, outermost first; the one it heads is the last. */
  readonly owners: readonly Owner[];
}

/** Every word of a declaration with what it is: what stands at the cursor and what a rename touches come from here. */
export function* wordsOf(declaration: Declaration): Generator<WordInText> {
  switch (declaration.declares) {
    case "use":
      yield { word: { is: "use", declaration }, place: declaration.pathPlace, owners: [] };
      break;
    case "part": {
      const row = partRow(declaration.kind);
      const owners: Owner[] = [{ declaration, row }];
      yield { word: { is: "name", declaration }, place: declaration.namePlace, owners };
      yield { word: { is: "kind", declaration, row }, place: declaration.kindPlace, owners };
      yield* wordsOfBlock(declaration, owners, declaration.kind);
      break;
    }
    case "item":
      yield* wordsOfItem(declaration, [], undefined);
      break;
    case "run":
      yield* wordsOfRun(declaration);
      break;
    case "measured": {
      const owners: Owner[] = [{ declaration, row: readingRow }];
      yield mentioned(declaration.target, "target", owners);
      yield* wordsOfBlock(declaration, owners, "measured");
      break;
    }
    case "departure": {
      const owners: Owner[] = [{ declaration, row: departureRow }];
      const { rule, rulePlace, target } = declaration;
      yield { word: { is: "rule", rule, target }, place: rulePlace, owners };
      if (target) yield mentioned(target, "target", owners);
      yield* wordsOfBlock(declaration, owners, "departure");
      break;
    }
    case "expect": {
      const { rule, rulePlace, target } = declaration;
      yield { word: { is: "rule", rule, target }, place: rulePlace, owners: [] };
      if (target) yield mentioned(target, "target", []);
      break;
    }
  }
}

function* wordsOfItem(
  declaration: ItemDeclaration,
  outer: readonly Owner[],
  within: string | undefined,
): Generator<WordInText> {
  const row = kindRow(declaration.kind, within);
  const owners: Owner[] = [...outer, { declaration, row }];
  yield { word: { is: "kind", declaration, row }, place: declaration.kindPlace, owners };
  if (declaration.namePlace.from !== declaration.kindPlace.from)
    yield { word: { is: "name", declaration }, place: declaration.namePlace, owners };
  if (declaration.count) yield { word: { is: "count", declaration }, place: declaration.count.place, owners };
  if (declaration.part) yield mentioned(declaration.part, "part", owners);
  if (declaration.serves && "path" in declaration.serves) yield mentioned(declaration.serves, "serves", owners);
  yield* wordsOfBlock(declaration, owners, declaration.kind);
}

function* wordsOfRun(declaration: RunDeclaration): Generator<WordInText> {
  const owners: Owner[] = [{ declaration, row: runRow }];
  yield { word: { is: "name", declaration }, place: declaration.namePlace, owners };
  if (declaration.from) yield mentioned(declaration.from, "from", owners);
  if (declaration.to) yield mentioned(declaration.to, "to", owners);
  if (declaration.length) {
    const { value: quantity, place } = declaration.length;
    yield { word: { is: "length", declaration, quantity }, place, owners };
  }
  if (declaration.cable) yield mentioned(declaration.cable, "cable", owners);
  yield* wordsOfBlock(declaration, owners, "run");
}

function* wordsOfBlock(block: Block, owners: readonly Owner[], kind: string): Generator<WordInText> {
  const outer = owners[owners.length - 1]?.row;
  for (const property of block.properties) {
    const row = outer && propertyRow(outer, property.name);
    yield { word: { is: "property", property, row }, place: property.namePlace, owners };
    const named = row && namedIn(property, row);
    if (named) {
      yield mentioned(named.mention, named.role, owners);
    } else if (property.value) {
      yield { word: { is: "value", property, row }, place: property.valuePlace, owners };
    }
  }
  for (const nested of block.nested) yield* wordsOfItem(nested, owners, kind);
}

/** The name that a property's value is; undefined for other values. */
function namedIn(
  { value, valuePlace }: Property,
  { shape }: PropertyRow,
): { readonly mention: Mention; readonly role: Role } | undefined {
  if (value?.kind !== "word" || shape.is !== "mention") return undefined;
  const own = { path: [value.value], place: valuePlace, places: [valuePlace] };
  if (shape.kinds.includes("arrangement")) return { mention: own, role: "value" };
  // With blanks or a comment between the segments it is not known where each of them stands.
  if (valuePlace.to - valuePlace.from !== value.value.length) return { mention: { ...own, places: [] }, role: "named" };
  const path = value.value.split(".");
  const places: Place[] = [];
  let from = valuePlace.from;
  for (const segment of path) {
    places.push({ ...valuePlace, from, to: from + segment.length });
    from += segment.length + 1;
  }
  return { mention: { path, place: valuePlace, places }, role: "named" };
}

function mentioned(mention: Mention, role: Role, owners: readonly Owner[]): WordInText {
  return { word: { is: "mention", mention, role }, place: mention.place, owners };
}
