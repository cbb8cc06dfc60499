import { withCapitalArticle } from "./article.js";
import { checkShape } from "./check-shape.js";
import type { Block, Declaration, ItemDeclaration, Problem, Property } from "./model.js";
import { isPossible } from "./possible.js";
import {
  type KindRow,
  kindRow,
  kindsWithin,
  type PropertyRow,
  partKinds,
  partRow,
  propertyRow,
  topLevelKinds,
} from "./schema/index.js";
import { departureRow, readingRow, runRow } from "./schema/wiring.js";
import { nearest } from "./suggest.js";

const memory = new WeakMap<Declaration, readonly Problem[]>();

/**
 * What is wrong with one declaration by itself, held against the schema: unknown kinds and properties, wrong
 * dimensions, missing units, words outside an enumeration, properties written twice. Computed once per declaration.
 */
export function declarationProblems(declaration: Declaration): readonly Problem[] {
  let problems = memory.get(declaration);
  if (!problems) {
    problems = [...check(declaration)];
    memory.set(declaration, problems);
  }
  return problems;
}

function* check(declaration: Declaration): Generator<Problem> {
  switch (declaration.declares) {
    case "part": {
      const row = partRow(declaration.kind);
      if (row) yield* checkBlock(declaration, row);
      else yield unknownKind(declaration.kind, declaration.kindPlace, partKinds(), "There is no kind of part called");
      break;
    }
    case "item":
      yield* checkItem(declaration);
      break;
    case "run":
      yield* checkBlock(declaration, runRow);
      if (declaration.length && declaration.length.value.dimension !== "length")
        yield* checkShape(
          { is: "quantity", dimensions: ["length"] },
          declaration.length.value,
          declaration.length.place,
          "The length of a run",
          "18 m",
        );
      break;
    case "measured":
      yield* checkBlock(declaration, readingRow);
      break;
    case "departure":
      yield* checkBlock(declaration, departureRow);
      if (declaration.reason.trim() === "")
        yield {
          id: "empty-reason",
          severity: "error",
          message: `A departure needs its reason: a reader must be able to see why ${declaration.rule} was set aside.`,
          place: declaration.rulePlace,
        };
      break;
  }
}

function* checkItem(declaration: ItemDeclaration, outer?: string): Generator<Problem> {
  const row = kindRow(declaration.kind, outer);
  if (!row || row.declaredAs === "part") {
    const known = outer === undefined ? topLevelKinds() : kindsWithin(outer);
    const place =
      outer === undefined ? "There is no kind of item called" : `${withCapitalArticle(outer)} holds no item of kind`;
    yield unknownKind(declaration.kind, declaration.kindPlace, known, place, row?.declaredAs === "part");
    return;
  }
  yield* checkBlock(declaration, row);
}

function* checkBlock(block: Block, row: KindRow): Generator<Problem> {
  const seen = new Map<string, Property>();
  for (const property of block.properties) {
    const earlier = seen.get(property.name);
    if (earlier) {
      yield {
        id: "duplicate-property",
        severity: "error",
        message: `${property.name} is written twice; the first one counts. Delete one of them.`,
        place: property.namePlace,
        related: [{ place: earlier.namePlace, message: "first written here" }],
      };
    } else seen.set(property.name, property);
    const known = propertyRow(row, property.name);
    if (!known) yield unknownProperty(property, row);
    else if (property.value) {
      yield* checkShape(known.shape, property.value, property.valuePlace, property.name, known.typical);
      yield* checkPossible(property, known);
    }
  }
  for (const nested of block.nested) yield* checkItem(nested, row.kind);
}

function* checkPossible(property: Property, row: PropertyRow): Generator<Problem> {
  const { value, name, valuePlace: place } = property;
  if (row.shape.is !== "quantity" && row.shape.is !== "range") return;
  const quantities = value?.kind === "range" ? [value.low, value.high] : value?.kind === "quantity" ? [value] : [];
  const { dimensions } = row.shape;
  for (const quantity of quantities) {
    const { si, dimension, written, unit } = quantity;
    if (!Number.isFinite(si) || !dimensions.includes(dimension) || isPossible(row, quantity)) continue;
    const wanted = row.sign === "negative" ? "is negative" : "cannot be less than nothing";
    const other = `${-written} ${unit}`;
    yield {
      id: "impossible-value",
      severity: "error",
      message: `${name} ${wanted}; this is ${written} ${unit}. Nothing is computed with it: write the figure of the data sheet with its sign.`,
      place,
      suggestions: value?.kind === "quantity" && written !== 0 ? [{ title: `Change to ${other}`, text: other }] : [],
    };
    return;
  }
}

function unknownProperty(property: Property, row: KindRow): Problem {
  const near = nearest(
    property.name,
    row.properties.map((known) => known.name),
  );
  return {
    id: "unknown-property",
    severity: "error",
    message: `${withCapitalArticle(row.title)} has no property ${property.name}.${near ? ` Did you mean ${near}?` : " Delete it, or write it as a comment."}`,
    place: property.namePlace,
    suggestions: near ? [{ title: `Change to ${near}`, text: near }] : [],
  };
}

function unknownKind(
  kind: string,
  place: Problem["place"],
  known: readonly string[],
  lead: string,
  isPart = false,
): Problem {
  const near = nearest(kind, known);
  const offer = isPart
    ? ` ${withCapitalArticle(kind)} is declared as a part: part NAME is ${kind} { … }.`
    : near
      ? ` Did you mean ${near}?`
      : ` Known: ${known.join(", ")}.`;
  return {
    id: "unknown-kind",
    severity: "error",
    message: `${lead} ${kind}.${offer}`,
    place,
    suggestions: near && !isPart ? [{ title: `Change to ${near}`, text: near }] : [],
  };
}
