import type { Problem } from "./model.js";
import type { Names } from "./names.js";
import { ambiguousProblem, mentionProblem } from "./resolve.js";
import type { Item } from "./things.js";

/** What each way serves, where `serves` names an item and not only words. */
export function resolveServes(items: readonly Item[], names: Names, problems: Problem[]): Map<Item, Item> {
  const found = new Map<Item, Item>();
  const visit = (item: Item): void => {
    const { serves } = item.declaration;
    if (serves && "path" in serves) {
      const resolved = names.resolve(serves);
      if (resolved.is === "item") found.set(item, resolved.item);
      else if (resolved.is === "ambiguous") problems.push(ambiguousProblem(serves, resolved.items));
      else if (resolved.is === "nothing") problems.push(mentionProblem(serves, resolved.at, resolved.known, "item"));
    }
    for (const child of item.children) visit(child);
  };
  for (const item of items) visit(item);
  return found;
}
