import { buildCircuit } from "../circuit/build.js";
import { plants as plantsOf } from "../circuit/plants.js";
import { arrayZones } from "../circuit/zones.js";
import { buildDesign, type Design, type SourceFile } from "../design/design.js";
import { wordOf } from "../design/facts.js";
import { Judge } from "../rules/judge.js";
import { ruleSetOf } from "../rules/rule-sets.js";
import { matchDepartures, matchExpectations } from "./answers.js";
import type { Assessment, Check } from "./assessment.js";
import { judgeInstallation, judgePlant, judgeZone } from "./judge-rules.js";
import { AssessmentMemory } from "./memory.js";
import { wiringProblems } from "./wiring.js";
import { zoneSignature } from "./zone-signature.js";

export { AssessmentMemory } from "./memory.js";

/**
 * Computes one design: `files[0]` is the file asked about, the rest what it uses.
 * Deterministic, never throws for any text. With a memory, zones whose every line is unchanged are not computed again.
 */
export function assess(files: readonly SourceFile[], memory = new AssessmentMemory()): Assessment {
  const design = buildDesign(files);
  const circuit = buildCircuit(design);
  const zones = arrayZones(circuit);
  const plants = plantsOf(design, circuit);
  const judge = judgeOf(design);

  const common = [judge.ruleSet, design.site?.declaration];
  const checks: Check[] = [];
  const add = (some: Iterable<Check>): void => {
    for (const check of some) checks.push(check);
  };
  for (const zone of zones)
    add(memory.checks(`array ${zone.id}`, [...common, ...zoneSignature(zone)], () => judgeZone(zone, judge)));
  for (const plant of plants)
    add(memory.checks(`plant ${plant.id}`, [...common, ...plant.signature], () => judgePlant(plant, judge)));
  add(judgeInstallation({ design, circuit, zones, plants }, judge));
  memory.turn();

  const answered = matchDepartures(design, checks);
  const problems = [...design.problems, ...wiringProblems(design, circuit), ...answered.problems];
  const foretold = matchExpectations(design, answered.checks, problems);
  return {
    design,
    circuit,
    zones,
    plants,
    ruleSet: judge.ruleSet,
    judge,
    checks: answered.checks,
    problems: [...problems, ...foretold.problems],
    expected: foretold.expected,
  };
}

function judgeOf(design: Design): Judge {
  const ruleSet = ruleSetOf(design.site && wordOf(design.site, "rules"));
  const limits = design.site?.children.find((child) => child.kind === "limits");
  return new Judge(ruleSet, design.site, design.parts, limits);
}
