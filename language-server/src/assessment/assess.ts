import type { Zone } from "../circuit/array.js";
import { buildCircuit } from "../circuit/build.js";
import { arrayZones } from "../circuit/zones.js";
import { buildDesign, type Design, type SourceFile } from "../design/design.js";
import { wordOf } from "../design/facts.js";
import type { Thing } from "../design/things.js";
import { rules } from "../rules/index.js";
import { Judge, NotKnown } from "../rules/judge.js";
import type { Outcome, Rule } from "../rules/rule.js";
import type { RuleSet } from "../rules/rule-set.js";
import { ruleSetOf } from "../rules/rule-sets.js";
import { matchDepartures, matchExpectations } from "./answers.js";
import type { Assessment, Check } from "./assessment.js";
import { wiringProblems } from "./wiring.js";

/** What the last assessment of a file computed, zone by zone, so that an edit costs only the zones it reaches. */
export class AssessmentMemory {
  readonly zones = new Map<string, { readonly signature: readonly unknown[]; readonly checks: readonly Check[] }>();
}

/**
 * Computes one design: `files[0]` is the file asked about, the rest what it uses.
 * Deterministic, never throws for any text. With a memory, zones whose every line is unchanged are not computed again.
 */
export function assess(files: readonly SourceFile[], memory = new AssessmentMemory()): Assessment {
  const design = buildDesign(files);
  const circuit = buildCircuit(design);
  const zones = arrayZones(circuit);
  const ruleSet = ruleSetOf(design.site && wordOf(design.site, "rules"));
  const judge = judgeOf(design, ruleSet);

  const checks: Check[] = [];
  const kept = new Set<string>();
  for (const zone of zones) {
    const signature = signatureOf(zone, ruleSet, design);
    const known = memory.zones.get(zone.id);
    const zoneChecks =
      known && sameElements(known.signature, signature) ? known.checks : [...judgeZone(zone, judge, ruleSet)];
    memory.zones.set(zone.id, { signature, checks: zoneChecks });
    kept.add(zone.id);
    for (const check of zoneChecks) checks.push(check);
  }
  for (const id of memory.zones.keys()) if (!kept.has(id)) memory.zones.delete(id);

  const answered = matchDepartures(design, checks);
  const problems = [...design.problems, ...wiringProblems(design, circuit), ...answered.problems];
  const foretold = matchExpectations(design, answered.checks, problems);
  return {
    design,
    circuit,
    zones,
    ruleSet,
    judge,
    checks: answered.checks,
    problems: [...problems, ...foretold.problems],
    expected: foretold.expected,
  };
}

function judgeOf(design: Design, ruleSet: RuleSet): Judge {
  const limits = design.site?.children.find((child) => child.kind === "limits");
  return new Judge(ruleSet, design.site, design.parts, limits);
}

/** Every declaration that a zone's checks can read. Declarations keep their identity while their text is unchanged. */
function signatureOf(zone: Zone, ruleSet: RuleSet, design: Design): unknown[] {
  const signature: unknown[] = [ruleSet, design.site?.declaration];
  const add = (thing: Thing): void => {
    signature.push(thing.declaration);
    if (thing.is === "run") signature.push(thing.cable?.declaration);
    else if (thing.is === "item") {
      signature.push(thing.part?.declaration);
      for (const child of thing.children) add(child);
    }
  };
  if (zone.inverter) add(zone.inverter);
  for (const array of zone.arrays) {
    signature.push(array.id);
    for (const { string, steps } of array.strings) {
      add(string);
      for (const step of steps) add(step);
      signature.push(steps.length);
    }
    for (const { spd, at } of array.surge) {
      add(spd);
      signature.push(at?.id);
    }
    // Every device and run that is joined to the array, each once: a link is met from both its terminals, and a
    // combiner's inside is one link for each of its inputs.
    let last: Thing | undefined;
    for (const terminal of array.terminals) {
      for (const link of terminal.links) {
        if (link.a !== terminal || link.by === last) continue;
        last = link.by;
        add(last);
      }
    }
  }
  return signature;
}

function sameElements(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let index = 0; index < a.length; index++) if (a[index] !== b[index]) return false;
  return true;
}

function* judgeZone(zone: Zone, judge: Judge, ruleSet: RuleSet): Generator<Check> {
  for (const rule of rules) {
    if (!rule.sources[ruleSet.id]) continue;
    for (const subject of rule.subjects(zone)) {
      const thing = rule.thing(subject);
      for (const outcome of outcomes(rule, subject, judge)) yield { rule, thing, outcome };
    }
  }
}

function outcomes(rule: Rule, subject: unknown, judge: Judge): readonly Outcome[] {
  try {
    const judged = rule.judge(subject, judge);
    return Array.isArray(judged) ? judged : [judged as Outcome];
  } catch (error) {
    if (error instanceof NotKnown) return [error.outcome()];
    throw error;
  }
}
