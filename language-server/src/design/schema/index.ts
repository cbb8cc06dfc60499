import { arrayKinds } from "./array.js";
import { mainsKinds } from "./mains.js";
import type { KindRow, PropertyRow } from "./row.js";
import { siteKinds } from "./site.js";
import { departureRow, readingRow, runRow } from "./wiring.js";

export * from "./row.js";
export { methods } from "./wiring.js";

/** Every kind of thing the language knows, in the order in which the reference page shows them. */
export const kindRows: readonly KindRow[] = [
  ...siteKinds,
  ...arrayKinds,
  ...mainsKinds,
  runRow,
  readingRow,
  departureRow,
];

const topLevel = new Map<string, KindRow>();
const nested = new Map<string, KindRow>();
for (const row of kindRows) {
  if (row.within) for (const outer of row.within) nested.set(`${outer}/${row.kind}`, row);
  else topLevel.set(row.kind, row);
}
// A kind that has no row of its own for a place inside another is the same thing as at the top level.
const nests: Readonly<Record<string, readonly string[]>> = {
  board: ["isolator", "rcd", "breaker", "rcbo", "spd", "meter", "fuse", "link"],
  rcd: ["breaker", "rcbo", "spd"],
  combiner: ["fuse", "isolator", "spd"],
  battery: ["isolator", "breaker", "fuse"],
  inverter: ["link"],
};
for (const [outer, kinds] of Object.entries(nests)) {
  for (const kind of kinds) {
    const row = nested.get(`${outer}/${kind}`) ?? topLevel.get(kind);
    if (row) nested.set(`${outer}/${kind}`, row);
  }
}

/** The row of a kind, at the top level or inside another kind; undefined where it may not stand. */
export function kindRow(kind: string, within?: string): KindRow | undefined {
  return within === undefined ? topLevel.get(kind) : nested.get(`${within}/${kind}`);
}

/** The row of a kind declared by `part NAME is KIND`: kinds that only live inside a board have parts as well. */
export function partRow(kind: string): KindRow | undefined {
  const row =
    topLevel.get(kind) ?? kindRows.find((candidate) => candidate.kind === kind && candidate.declaredAs === "both");
  return row && (row.declaredAs === "part" || row.declaredAs === "both") ? row : undefined;
}

/** Kinds that may stand inside another. */
export function kindsWithin(outer: string): string[] {
  const prefix = `${outer}/`;
  return [...nested.keys()].filter((key) => key.startsWith(prefix)).map((key) => key.slice(prefix.length));
}

/** Kinds that may be declared at the top level as items or blocks. */
export function topLevelKinds(): string[] {
  return [...topLevel.values()]
    .filter((row) => row.declaredAs !== "part" && !["run", "measured", "departure"].includes(row.kind))
    .map((row) => row.kind);
}

/** Kinds that a part may be of. */
export function partKinds(): string[] {
  return [
    ...new Set(kindRows.filter((row) => row.declaredAs === "part" || row.declaredAs === "both").map((row) => row.kind)),
  ];
}

const propertyIndex = new WeakMap<KindRow, Map<string, PropertyRow>>();

/** One property of a kind, by name. */
export function propertyRow(row: KindRow, name: string): PropertyRow | undefined {
  let index = propertyIndex.get(row);
  if (!index) {
    index = new Map(row.properties.map((property) => [property.name, property]));
    propertyIndex.set(row, index);
  }
  return index.get(name);
}
