import type { Mention } from "./model.js";
import { type Item, lacksPart, type Part } from "./things.js";

/** What a written name may turn out to be. */
export type Resolved =
  | { readonly is: "item"; readonly item: Item; readonly terminal: string }
  | { readonly is: "ambiguous"; readonly items: readonly Item[] }
  /** `known` are the names that would have been understood at segment `at` of the path. */
  | { readonly is: "nothing"; readonly at: number; readonly known: readonly string[] }
  /** Of an item whose part does not exist: what it has stands on that sheet. */
  | { readonly is: "unknown" };

/**
 * Names of one design. A bare name finds a top-level item first, then a nested one if only one has that name;
 * each further segment names something nested, at any depth, or a terminal.
 */
export class Names {
  readonly top = new Map<string, Item>();
  readonly parts = new Map<string, Part>();
  /** All parts, as the same array for as long as they are the same parts. */
  partsTable: readonly Part[] = [];
  private nested: Map<string, Item[]> | undefined;

  addTop(item: Item): void {
    this.top.set(item.name, item);
  }

  /** The part that a mention names; parts have names of one word. */
  part(mention: Pick<Mention, "path">): Part | undefined {
    return mention.path.length === 1 ? this.parts.get(mention.path[0] ?? "") : undefined;
  }

  resolve(mention: Pick<Mention, "path">): Resolved {
    const [first = "", ...rest] = mention.path;
    const start = this.top.get(first) ?? this.onlyNested(first);
    if (!start) return { is: "nothing", at: 0, known: [...this.top.keys()] };
    if (Array.isArray(start)) return { is: "ambiguous", items: start };
    let item: Item = start;
    for (const [index, segment] of rest.entries()) {
      const inner = descendants(item, segment);
      const [only, other] = inner;
      if (only && other) return { is: "ambiguous", items: inner };
      if (only) {
        item = only;
        continue;
      }
      const isLast = index === rest.length - 1;
      if (isLast && item.row?.terminals.includes(segment)) return { is: "item", item, terminal: segment };
      if (lacksPart(item)) return { is: "unknown" };
      const known = [...item.children.map((child) => child.name), ...(item.row?.terminals ?? [])].filter(Boolean);
      return { is: "nothing", at: index + 1, known };
    }
    return { is: "item", item, terminal: "" };
  }

  private onlyNested(name: string): Item | Item[] | undefined {
    this.nested ??= nestedByName(this.top.values());
    const found = this.nested.get(name);
    return found && found.length === 1 ? found[0] : found;
  }
}

/** Everything nested, at any depth. Few names need it, so it is made when the first one does. */
function nestedByName(items: Iterable<Item>): Map<string, Item[]> {
  const found = new Map<string, Item[]>();
  const add = (item: Item): void => {
    const same = found.get(item.name);
    if (same) same.push(item);
    else found.set(item.name, [item]);
    for (const child of item.children) add(child);
  };
  for (const item of items) for (const child of item.children) add(child);
  return found;
}

/** Items of that name inside another: its own children first, deeper ones only where no child has the name. */
function descendants(outer: Item, name: string): Item[] {
  const own = outer.children.filter((child) => child.name === name);
  if (own.length > 0) return own;
  return outer.children.flatMap((child) => descendants(child, name));
}
