import { fedThrough, isOnlyInWords } from "../circuit/beyond.js";
import type { Terminal } from "../circuit/circuit.js";
import { type FeedTree, pathTo } from "../circuit/feed.js";
import { designCurrent } from "../physics/ac-current.js";
import { throughCurrent } from "../physics/board-current.js";
import type { Figure } from "../physics/figure.js";
import { unitsThrough } from "./feeding-units.js";
import { type Judge, NotKnown } from "./judge.js";
import { exportCurrent, unitCurrents } from "./port-currents.js";
import type { Outcome } from "./rule.js";
import { protectionAlong } from "./supply-way.js";

/** The largest current that a conductor may carry, and what is not known of it. */
export interface ThroughCurrent {
  /** A per line conductor; undefined where nothing is known. */
  readonly current?: Figure;
  readonly unknown: readonly Outcome[];
}

/**
 * What may flow through a place: where only inverters and generating units lie beyond it, what they send and draw; where
 * anything takes power there, all that the protective device ahead lets through, or all that is fed back, if that is
 * more. Throws NotKnown where a rating is missing.
 */
export function currentThrough(tree: FeedTree, terminal: Terminal, judge: Judge): ThroughCurrent {
  const units = unitsThrough(tree, terminal);
  if (!takesPower(tree, terminal)) {
    if (units.length === 0) return { unknown: [] };
    const { currents, unknown } = unitCurrents(units, tree, judge);
    return { current: designCurrent(currents)?.current, unknown };
  }
  const exported = exportCurrent(units, tree, judge);
  return { current: throughCurrent(ratingAhead(tree, terminal, judge), exported ? [exported] : []), unknown: [] };
}

/** Whether anything but inverters and generating units hangs beyond a place. */
export function takesPower(tree: FeedTree, terminal: Terminal): boolean {
  return fedThrough(tree, terminal).some(
    (each) => each.item.kind === "board" || each.item.kind === "load" || isOnlyInWords(each),
  );
}

/** Rating (A) of the nearest protective device towards the root, or what the root itself lets through. */
function ratingAhead(tree: FeedTree, terminal: Terminal, judge: Judge): Figure {
  const ahead = protectionAlong(pathTo(tree, terminal) ?? { hops: [] }).at(-1);
  if (ahead) return judge.need([ahead, "rated-current"])[0];
  const { item } = tree.root;
  if (item.kind === "supply") return judge.need([item, "service-fuse"])[0];
  if (item.kind === "backup")
    return judge.quantity(item, "pass-through-current") ?? judge.need([item, "max-current"])[0];
  throw new NotKnown([], "no supply feeds it: what may flow there is not known");
}
