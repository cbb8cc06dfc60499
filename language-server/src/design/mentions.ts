import { withArticle } from "./article.js";
import type { Mention, Problem, Property } from "./model.js";
import type { Names } from "./names.js";
import { mentionProblem } from "./resolve.js";
import { type KindRow, propertyRow } from "./schema/index.js";
import type { Item, Run } from "./things.js";

/**
 * Properties whose value names something: `around: W12`, `at: INV.backup`. What they name must exist and be of the kind.
 * A pole arrangement is named within its own device; the rules that need its rating say when there is none.
 */
export function checkNamedValues(
  items: readonly Item[],
  names: Names,
  runs: ReadonlyMap<string, Run>,
  problems: Problem[],
): void {
  for (const item of items) {
    if (item.row && namesThings(item.row)) {
      for (const property of item.declaration.properties) {
        const problem = namedValueProblem(property, item.row, names, runs);
        if (problem) problems.push(problem);
      }
    }
    checkNamedValues(item.children, names, runs, problems);
  }
}

const memory = new WeakMap<KindRow, boolean>();

function namesThings(row: KindRow): boolean {
  let known = memory.get(row);
  if (known === undefined) {
    known = row.properties.some(({ shape }) => shape.is === "mention" && !shape.kinds.includes("arrangement"));
    memory.set(row, known);
  }
  return known;
}

function namedValueProblem(
  property: Property,
  row: KindRow,
  names: Names,
  runs: ReadonlyMap<string, Run>,
): Problem | undefined {
  const shape = propertyRow(row, property.name)?.shape;
  if (shape?.is !== "mention" || property.value?.kind !== "word" || shape.kinds.includes("arrangement"))
    return undefined;
  const { value } = property.value;
  const wanted = shape.kinds.join(" or ");
  const run = runs.get(value);
  const mention: Mention = { path: value.split("."), place: property.valuePlace, places: [] };
  const resolved = names.resolve(mention);
  const found = run ?? (resolved.is === "item" ? resolved.item : undefined);
  if (!found) {
    if (resolved.is === "ambiguous" || resolved.is === "unknown") return undefined;
    const known = shape.kinds.includes("run") ? runs.keys() : resolved.is === "nothing" ? resolved.known : [];
    return mentionProblem(mention, resolved.is === "nothing" ? resolved.at : 0, known, wanted);
  }
  if (shape.kinds.includes(found.kind)) return undefined;
  return {
    id: "wrong-kind",
    severity: "error",
    message: `${value} is ${withArticle(found.kind)}; ${property.name} names ${withArticle(wanted)}. Name ${withArticle(wanted)}.`,
    place: property.valuePlace,
    related: [{ place: found.declaration.namePlace, message: `${value} is declared here` }],
  };
}
