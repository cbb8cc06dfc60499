import type { Item, Thing } from "../design/things.js";
import type { Figure } from "../physics/figure.js";
import { formatFigure } from "../physics/working.js";
import type { Related } from "./rule.js";

/** Wording that findings share. */

/** `S1`, `S1 and S2`, `S1, S2 and S3`. */
export function listed(names: readonly string[]): string {
  const last = names[names.length - 1] ?? "";
  return names.length < 2 ? last : `${names.slice(0, -1).join(", ")} and ${last}`;
}

export function idsOf(items: readonly Item[]): string {
  return listed(items.map(({ id }) => id));
}

/** Points at the property that states one side of a comparison. */
export function stated(thing: Thing, property: string, figure: Figure): Related {
  const name = thing.is === "part" ? thing.name : thing.id;
  return { spot: { thing, property }, message: `${name}, ${property}: ${formatFigure(figure)}` };
}
