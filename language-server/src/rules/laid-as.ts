import type { Run } from "../design/things.js";
import type { Figure } from "../physics/figure.js";
import { insulationFactor } from "../physics/thermal-insulation.js";
import type { Judge } from "./judge.js";
import { needFacts } from "./run-facts.js";

/** How the tables see a run, once the thermal insulation that touches it is counted. */
export interface LaidAs {
  /** The word of `method` whose column is read. */
  readonly method: string;
  /** Ci, a ratio, where insulation surrounds a length of the run. */
  readonly insulation?: Figure;
}

const inFreeAir = ["free-in-air", "tray"];

/**
 * Insulation on one side leaves a run as well off as one in an insulated wall. Insulation all round takes a share by its
 * length, and free air is no help any more. A run of which nothing is said is taken as it is laid.
 */
export function laidAs(run: Run, judge: Judge): LaidAs {
  const method = judge.needWord(run, "method");
  const touching = judge.word(run, "thermal-insulation");
  if (touching === "one-side" && method !== "in-insulation") return { method: "conduit-in-insulated-wall" };
  if (touching !== "surrounded" || method === "in-insulation") return { method };
  needFacts(judge, [run, "surrounded-length"]);
  const [length] = judge.need([run, "surrounded-length"]);
  const insulation = insulationFactor(judge.ruleSet.ac.thermalInsulation, length);
  return { method: inFreeAir.includes(method) ? "clipped-direct" : method, insulation };
}
