import { given } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { designCurrent } from "../physics/ac-current.js";
import { joinedCurrent, throughCurrent } from "../physics/board-current.js";
import { formatValue } from "../physics/display.js";
import type { Derived, Figure, Given } from "../physics/figure.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { capacityOfLine, carryingCables, loadedConductors } from "./ac-cables.js";
import type { JoinedPart } from "./board-parts.js";
import { unitNames } from "./feeding-units.js";
import { fuseAtMost } from "./fuse-ratings.js";
import type { Judge } from "./judge.js";
import { MissingFacts } from "./missing-facts.js";
import { partFixes, percent } from "./part-fixes.js";
import { stated } from "./phrases.js";
import { exportCurrent, unitCurrents } from "./port-currents.js";
import type { Fix, Outcome, Related } from "./rule.js";
import { eachOf } from "./several.js";

/** Holds what supply and generators can put through a part against what it is rated for. */
export function joinedComparison(part: JoinedPart, judge: Judge): Outcome | readonly Outcome[] {
  const { loads } = part;
  if (loads.are === "there") return withLoads(part, judge);
  if (loads.are === "none") return ofUnitsOnly(part, judge);
  // It holds whether or not there are loads, or fails either way, or somebody has to say.
  const [worst] = eachOf(() => withLoads(part, judge));
  const best = ofUnitsOnly(part, judge);
  if (worst?.outcome !== "finding" || best.some(({ outcome }) => outcome !== "pass")) return worst ?? best;
  return judge.notChecked(`whether loads hang on ${loads.board.id} besides is not said`, {
    thing: loads.board,
    property: "existing",
  });
}

function withLoads(part: JoinedPart, judge: Judge): Outcome {
  const missing = new MissingFacts();
  const limit = missing.orElse(() => ratingOf(part, judge));
  const supply = missing.orElse(() => supplyRating(part.limiter, judge));
  // On a bar all meet; through a part in series some send while the others are drawn on.
  const joining = missing.orElse(() => exportCurrent(part.joining, part.tree, judge));
  const sending = part.is === "bar" ? undefined : missing.orElse(() => exportCurrent(part.sending, part.tree, judge));
  missing.stop();
  const current = joining ? joinedCurrent(supply!, [joining]) : throughCurrent(supply!, sending ? [sending] : []);
  return compare({ part, current, limit: limit!, supply: supply!, added: joining }, judge);
}

/** Where nothing else hangs behind a part, it carries what the units there send or draw. */
function ofUnitsOnly(part: JoinedPart, judge: Judge): Outcome[] {
  const missing = new MissingFacts();
  const limit = missing.orElse(() => ratingOf(part, judge));
  const { currents, unknown } = unitCurrents(part.sending, part.tree, judge);
  const current = designCurrent(currents)?.current;
  if (!limit || !current) return [...missing.outcomes(), ...unknown];
  return [compare({ part, current, limit }, judge), ...unknown];
}

function compare(sum: Sum, judge: Judge): Outcome {
  const { part, current, limit } = sum;
  return current.value <= limit.value ? judge.pass(current, limit, part.is) : tooMuch(sum, judge);
}

function ratingOf({ thing, line, tree }: JoinedPart, judge: Judge): Figure {
  if (line) return capacityOfLine(line, tree, judge).current;
  return judge.need([thing, "rated-current"])[0];
}

function supplyRating(limiter: Item, judge: Judge): Given {
  return judge.need([limiter, ratingProperty(limiter)])[0];
}

function ratingProperty({ kind }: Item): string {
  return kind === "supply" ? "service-fuse" : "rated-current";
}

interface Sum {
  readonly part: JoinedPart;
  readonly current: Derived;
  readonly limit: Figure;
  /** The rating of what limits the supply, where loads may draw on it. */
  readonly supply?: Given;
  /** What joins beside the supply; undefined where one of the two alone is too much. */
  readonly added?: Figure;
}

function tooMuch(sum: Sum, judge: Judge): Outcome {
  const { part, current, limit, supply, added } = sum;
  const { thing, limiter } = part;
  const [loads, rated] = formatApart(current, limit);
  const has = part.line ? "it carries" : "it is rated";
  return judge.finding({
    what: `${capital(who(sum))} load ${part.is === "bar" ? `the bar of ${thing.id}` : thing.id} with ${loads}; ${has} ${rated}.`,
    why: added
      ? "Loads may draw the sum, and no device sees it: the part overheats without anything opening."
      : "It overheats without anything opening.",
    todo: advice(sum),
    spot: { thing, word: part.is === "tails" ? "cable" : "part" },
    value: current,
    limit,
    related: [...(supply ? [stated(limiter, ratingProperty(limiter), supply)] : []), ...unitsStated(part, judge)],
    fixes: (asked) => stronger(sum, asked),
  });
}

/** `the service fuse of GRID (80 A) and INV (21.7 A) can together`. */
function who({ part, supply, added }: Sum): string {
  const units = unitNames(added ? part.joining : part.sending);
  const fuse = supply && `${limiterName(part.limiter)} (${formatFigure(supply)})`;
  if (fuse && added) return `${fuse} and ${units} (${formatFigure(added)}) can together`;
  return fuse ? `${fuse} or ${units} can` : `${units} can`;
}

function limiterName(limiter: Item): string {
  return limiter.kind === "supply" ? `the service fuse of ${limiter.id}` : limiter.id;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function advice({ part, limit, added }: Sum): string {
  const larger = part.is === "bar" ? "fit a board that is rated for it" : "fit one that is rated for it";
  if (!added) return `${capital(larger)}.`;
  const left = limit.value - added.value;
  const most = left > 0 ? formatValue(left, "current", "A", 3) : undefined;
  const standard = fuseAtMost(left);
  const smaller =
    part.limiter.kind === "supply"
      ? `ask the distributor for a service fuse of at most ${most}${standard ? ` (the next standard rating is ${standard} A)` : ""}`
      : `fit a device of at most ${most} ahead of it`;
  const split = "give the generator a board of its own, split at the tails";
  return `${capital([...(most ? [smaller] : []), split].join(", "))}, or ${larger}.`;
}

function unitsStated({ joining, sending }: JoinedPart, judge: Judge): Related[] {
  return [...new Set([...joining, ...sending])].flatMap(({ item }) => {
    const current = judge.quantity(item, "max-current");
    return current ? [stated(item, "max-current", current)] : [];
  });
}

function stronger({ part, current }: Sum, judge: Judge): readonly Fix[] {
  const { thing, line, tree } = part;
  if (thing.is === "run") return line ? carryingCables(line, loadedConductors(line, tree, judge), current, judge) : [];
  return partFixes(judge, {
    thing,
    properties: ["rated-current"],
    preview: (other) => {
      const rating = given(other, "rated-current");
      if (!rating || rating.value < current.value || !["ways", "poles"].every((name) => isNoLess(other, thing, name)))
        return undefined;
      return `${formatFigure(rating)}, ${percent(current.value / rating.value)}`;
    },
    order: (other) => given(other, "rated-current")?.value ?? 0,
  });
}

function isNoLess(other: Parameters<typeof given>[0], thing: Item, name: string): boolean {
  return (given(other, name)?.value ?? 0) >= (given(thing, name)?.value ?? 0);
}
