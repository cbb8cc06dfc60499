import type { Zone } from "../circuit/array.js";
import { buildCircuit } from "../circuit/build.js";
import type { Circuit } from "../circuit/circuit.js";
import type { Plant } from "../circuit/plant.js";
import { plants as plantsOf } from "../circuit/plants.js";
import type { SeparateWiring } from "../circuit/separate.js";
import { arrayZones } from "../circuit/zones.js";
import type { Design } from "../design/design.js";
import type { Problem } from "../design/model.js";
import type { Judge } from "../rules/judge.js";
import type { Check } from "./assessment.js";
import { judgePiece, judgePlant, judgeZone } from "./judge-rules.js";
import { Remembered } from "./memory.js";
import { wiringProblems } from "./wiring.js";
import { zoneSignature } from "./zone-signature.js";

/** Everything computed about one piece of a design. */
export interface AssessedPiece {
  readonly circuit: Circuit;
  readonly zones: readonly Zone[];
  readonly plants: readonly Plant[];
  readonly checks: readonly Check[];
  /** Those of them that are findings or could not be made. */
  readonly told: readonly Check[];
  readonly problems: readonly Problem[];
  /** Checks by view, for the next time: an edit on one roof of a house leaves the other roofs' checks as they are. */
  readonly views: Remembered<readonly Check[]>;
}

/** What a piece's results depend on beside the rule set and the site. */
export function pieceSignature({ items, runs, serves }: SeparateWiring, shared: readonly unknown[]): unknown[] {
  return [...shared, ...items, ...runs, ...serves.values()];
}

/** Builds the circuit of a piece and holds every rule about arrays and plants against it. */
export function assessPiece(
  piece: SeparateWiring,
  whole: Design,
  judge: Judge,
  last: AssessedPiece | undefined,
): AssessedPiece {
  const design: Design = { ...whole, items: piece.items, runs: piece.runs, serves: piece.serves };
  const circuit = buildCircuit(design);
  const zones = arrayZones(circuit);
  const plants = plantsOf(design, circuit, whole);
  const views = last?.views ?? new Remembered<readonly Check[]>();
  const common = [judge.ruleSet, whole.site?.declaration];
  const checks = [
    ...zones.flatMap((zone) =>
      views.get(`array ${zone.id}`, [...common, ...zoneSignature(zone)], () => [...judgeZone(zone, judge)]),
    ),
    ...plants.flatMap((plant) =>
      views.get(`plant ${plant.id}`, [...common, ...plant.signature], () => [...judgePlant(plant, judge)]),
    ),
    ...judgePiece({ circuit, zones, plants }, judge),
  ];
  views.turn();
  return {
    circuit,
    zones,
    plants,
    checks,
    told: checks.filter(tells),
    problems: wiringProblems(design, circuit),
    views,
  };
}

/** Whether a check has something to tell beyond that all is well. */
export function tells({ outcome }: Check): boolean {
  return outcome.outcome !== "pass" && outcome.outcome !== "not-applicable";
}
