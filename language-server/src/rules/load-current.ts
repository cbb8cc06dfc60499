import type { FeedTree } from "../circuit/feed.js";
import type { Item } from "../design/things.js";
import { acCurrent } from "../physics/ac-current.js";
import { expectedDemand } from "../physics/backup-demand.js";
import type { Figure } from "../physics/figure.js";
import { linesOf } from "./feeding-units.js";
import type { Judge } from "./judge.js";

/** Current of a load per line conductor (A), as its sheet says or by its power. Throws NotKnown where neither is stated. */
export function loadCurrent(load: Item, voltage: Figure, tree: FeedTree, judge: Judge): Figure {
  const stated = judge.quantity(load, "current");
  if (stated) return stated;
  const [power] = judge.need([load, "power"]);
  const lines = linesOf(tree.root.item, judge) === 1 ? 1 : linesOf(load, judge);
  return acCurrent(expectedDemand(power, judge.quantity(load, "demand")), voltage, lines);
}
