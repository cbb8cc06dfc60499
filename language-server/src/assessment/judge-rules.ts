import type { Zone } from "../circuit/array.js";
import type { Installation } from "../circuit/installation.js";
import type { Piece } from "../circuit/piece.js";
import type { Plant } from "../circuit/plant.js";
import { rules } from "../rules/index.js";
import { type Judge, NotKnown } from "../rules/judge.js";
import type { Outcome, Rule } from "../rules/rule.js";
import type { Check } from "./assessment.js";

/** Holds every rule about array zones against one of them. */
export function* judgeZone(zone: Zone, judge: Judge): Generator<Check> {
  for (const rule of rules)
    if (rule.over === undefined || rule.over === "array") yield* judgeSubjects(rule, rule.subjects(zone), judge);
}

/** Holds every rule about plants against one of them. */
export function* judgePlant(plant: Plant, judge: Judge): Generator<Check> {
  for (const rule of rules) {
    if (rule.over === "plant") yield* judgeSubjects(rule, rule.subjects(plant), judge);
    if (rule.alsoInPlants) yield* judgeSubjects(rule, rule.alsoInPlants(plant), judge);
  }
}

/** Holds every rule about what is wired together against it. */
export function* judgePiece(piece: Piece, judge: Judge): Generator<Check> {
  for (const rule of rules) if (rule.over === "piece") yield* judgeSubjects(rule, rule.subjects(piece), judge);
}

/** Holds every rule about the whole against it. */
export function* judgeInstallation(installation: Installation, judge: Judge): Generator<Check> {
  for (const rule of rules)
    if (rule.over === "installation") yield* judgeSubjects(rule, rule.subjects(installation), judge);
}

function* judgeSubjects(rule: Rule, subjects: Iterable<unknown>, judge: Judge): Generator<Check> {
  if (!rule.sources[judge.ruleSet.id]) return;
  for (const subject of subjects) {
    const thing = rule.thing(subject);
    for (const outcome of outcomes(rule, subject, judge)) yield { rule, thing, outcome };
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
