import { statedOrigin } from "../design/facts.js";
import type { Part, Run, Thing } from "../design/things.js";
import type { Given } from "../physics/figure.js";
import { type Judge, NotKnown } from "./judge.js";
import type { Missing } from "./rule.js";

/** What the sentence of a run says: its length and its cable. */

/** The cable that a run is laid in. Throws NotKnown where its sentence names none that exists. */
export function cableOf(run: Run): Part {
  if (run.cable) return run.cable;
  throw new NotKnown([{ thing: run, property: "cable" }]);
}

/** One-way length of a run, m; undefined where its sentence gives none. */
export function lengthOf(run: Run): Given | undefined {
  const written = run.declaration.length;
  if (written?.value.dimension !== "length" || !(written.value.si >= 0)) return undefined;
  const { si, dimension, unit } = written.value;
  const origin = statedOrigin(`${run.id}, length`, written.place, written.whatIf);
  return { kind: "given", symbol: "L", value: si, dimension, unit, origin };
}

export function neededLength(run: Run): Given {
  const length = lengthOf(run);
  if (length) return length;
  throw new NotKnown([{ thing: run, property: "length" }]);
}

/** Stops the check unless all these facts are known, and names all that are not. */
export function needFacts(judge: Judge, ...wanted: readonly (readonly [Thing, string])[]): void {
  let missing: Missing[] | undefined;
  for (const [thing, property] of wanted) {
    if (judge.knows(thing, property)) continue;
    missing ??= [];
    missing.push({ thing, property });
  }
  if (missing) throw new NotKnown(missing);
}
