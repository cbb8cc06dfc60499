import { fact, wordOf } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { NotKnown } from "./judge.js";

/** The ways an isolator's poles may be wired, as its sheet lists them. */
export function arrangementsOf(isolator: Item): readonly Item[] {
  return isolator.children.filter((child) => child.kind === "arrangement");
}

/**
 * What states the ratings of an isolator as it is wired: its pole arrangement, or the isolator itself where its sheet
 * knows one rating only. Throws NotKnown where a sheet lists arrangements and the design does not say which is used.
 */
export function ratedAs(isolator: Item): Item {
  const name = wordOf(isolator, "arrangement");
  if (name !== undefined) {
    const chosen = arrangementsOf(isolator).find((arrangement) => arrangement.name === name);
    if (chosen) return chosen;
    throw new NotKnown([], `${isolator.id} has no pole arrangement called ${name}`);
  }
  if (fact(isolator, "rated-voltage") || arrangementsOf(isolator).length === 0) return isolator;
  throw new NotKnown([{ thing: isolator, property: "arrangement" }]);
}
