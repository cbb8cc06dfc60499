import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cannotBeIsolated } from "../../language-server/src/circuit/always-live.js";
import { isUndecided, uselessOnTheWay } from "../../language-server/src/circuit/undecided.js";
import { wired } from "./from-text.js";
import { Dice } from "./random.js";
import { installations } from "./random-circuit.js";

/** Facts that decide whether a device opens what it is wired into, each with the best that it can be. */
const deciding: readonly (readonly [fact: RegExp, best: string])[] = [
  [/poles: \d/g, "poles: 2"],
  [/off-position: \w+/g, "off-position: yes"],
  [/built-in-dc-isolator: \w+/g, "built-in-dc-isolator: yes"],
];

/** An installation with some of its facts left out, and the same one with the best in their places. */
function withDoubts(text: string, seed: number): { readonly doubtful: string; readonly best: string } {
  const leftOut = (withBest: boolean): string => {
    const dice = new Dice(seed);
    let result = text;
    for (const [fact, best] of deciding)
      result = result.replace(fact, (written) => (dice.once(3) ? (withBest ? best : "") : written));
    // The generator never says whether a battery has a switch of its own.
    return withBest ? result.replace("battery B1 {}", "battery B1 { built-in-isolator: yes }") : result;
  };
  return { doubtful: leftOut(false), best: leftOut(true) };
}

describe("a source that no set of devices keeps off", () => {
  test("is undecided exactly where the best of the missing facts would keep it off", () => {
    let undecided = 0;
    fc.assert(
      fc.property(installations({ min: 1, max: 12 }), fc.integer(), (text, seed) => {
        const { doubtful, best } = withDoubts(text, seed);
        const house = wired(doubtful);
        const sure = wired(best);
        for (const item of house.design.items) {
          const certain = new Set(
            cannotBeIsolated(sure.circuit, sure.item(item.id)).map(
              ({ terminal, arrival }) => `${arrival.source.id} at ${terminal.id}`,
            ),
          );
          for (const each of cannotBeIsolated(house.circuit, item)) {
            const isOpen = isUndecided(house.circuit, each);
            if (isOpen) undecided++;
            expect(isOpen).toBe(!certain.has(`${each.arrival.source.id} at ${each.terminal.id}`));
            const named = uselessOnTheWay(house.circuit, each).some(({ missing }) => missing !== undefined);
            if (isOpen) expect(named, "a fact that decides is named").toBe(true);
          }
        }
      }),
      { numRuns: 150, seed: 7 },
    );
    expect(undecided, "cases in which a missing fact decides").toBeGreaterThan(50);
  });
});
