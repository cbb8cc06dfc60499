import type { Circuit } from "../circuit/circuit.js";
import { mergeCircuits } from "../circuit/merge.js";
import { separate } from "../circuit/separate.js";
import { buildDesign, type Design, type SourceFile } from "../design/design.js";
import { wordOf } from "../design/facts.js";
import { Judge } from "../rules/judge.js";
import { ruleSetOf } from "../rules/rule-sets.js";
import { matchDepartures, matchExpectations } from "./answers.js";
import { type AssessedPiece, assessPiece, pieceSignature, tells } from "./assess-piece.js";
import type { Assessment, Check } from "./assessment.js";
import { judgeInstallation } from "./judge-rules.js";
import { Remembered } from "./memory.js";

/** Pieces of a design as they were computed the last time. */
export class AssessmentMemory extends Remembered<AssessedPiece> {}

/**
 * Computes one design: `files[0]` is the file asked about, the rest what it uses.
 * Deterministic, never throws for any text. With a memory, what no edit has reached is not computed again.
 */
export function assess(files: readonly SourceFile[], memory = new AssessmentMemory()): Assessment {
  const design = buildDesign(files);
  const judge = judgeOf(design);
  const shared: unknown[] = [judge.ruleSet, design.site];
  for (const item of design.items) if (item.kind === "earthing" || item.kind === "electrode") shared.push(item);
  const assessed = separate(design).map((piece) =>
    memory.get(piece.id, pieceSignature(piece, shared), (last) => assessPiece(piece, design, judge, last)),
  );
  memory.turn();

  const zones = assessed.flatMap((piece) => piece.zones);
  const plants = assessed.flatMap((piece) => piece.plants);
  let whole: Circuit | undefined;
  const circuit = (): Circuit => {
    whole ??= mergeCircuits(assessed.map((piece) => piece.circuit));
    return whole;
  };
  const installation = {
    design,
    zones,
    plants,
    get circuit() {
      return circuit();
    },
  };
  const ofWhole = [...judgeInstallation(installation, judge)];
  const raw = assessed.flatMap((piece) => piece.told);
  for (const check of ofWhole) if (tells(check)) raw.push(check);
  const { told, answers, problems: unanswering } = matchDepartures(design, raw);
  const problems = [...design.problems, ...assessed.flatMap((piece) => piece.problems), ...unanswering];
  const foretold = matchExpectations(design, told, problems);

  const judged = [...assessed.map((piece) => piece.checks), ofWhole];
  let all: readonly Check[] | undefined;
  const checks = (): readonly Check[] => {
    all ??= judged.flat().map((check) => answers.get(check) ?? check);
    return all;
  };
  return {
    design,
    zones,
    plants,
    get circuit() {
      return circuit();
    },
    ruleSet: judge.ruleSet,
    judge: judge.leniently(),
    judged,
    get checks() {
      return checks();
    },
    told,
    problems: [...problems, ...foretold.problems],
    expected: foretold.expected,
  };
}

function judgeOf(design: Design): Judge {
  const ruleSet = ruleSetOf(design.site && wordOf(design.site, "rules"));
  const limits = design.site?.children.find((child) => child.kind === "limits");
  return new Judge(ruleSet, design.site, design.parts, limits);
}
