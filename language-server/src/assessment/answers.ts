import type { Design } from "../design/design.js";
import { label } from "../design/facts.js";
import type { Block, DepartureDeclaration, ExpectationDeclaration, Mention, Problem } from "../design/model.js";
import { mentionProblem } from "../design/resolve.js";
import { nearest } from "../design/suggest.js";
import type { Place } from "../place.js";
import { rules } from "../rules/index.js";
import type { Assessment, Check } from "./assessment.js";
import { problemIds } from "./problem-ids.js";

const ruleIds = new Set(rules.map((rule) => rule.id));

/**
 * Turns findings that a departure answers into departures (`answers` holds each beside the check it replaces); a
 * departure that answers nothing is a problem itself.
 */
export function matchDepartures(
  design: Design,
  checks: readonly Check[],
): {
  readonly told: readonly Check[];
  readonly answers: ReadonlyMap<Check, Check>;
  readonly problems: readonly Problem[];
} {
  const answers = new Map<Check, Check>();
  if (design.departures.length === 0) return { told: checks, answers, problems: [] };
  const problems: Problem[] = [];
  const byKey = new Map<string, DepartureDeclaration>();
  for (const departure of design.departures) {
    const target = targetId(design, departure.target, problems);
    if (!ruleIds.has(departure.rule)) problems.push(unknownRule(departure.rule, departure.rulePlace, ruleIds));
    else if (target) byKey.set(`${departure.rule} ${target}`, departure);
  }
  const used = new Set<DepartureDeclaration>();
  const told = checks.map((check): Check => {
    if (check.outcome.outcome !== "finding") return check;
    const departure = byKey.get(keyOf(check));
    if (!departure) return check;
    used.add(departure);
    const answer: Check = { ...check, outcome: { outcome: "departure", finding: check.outcome, departure } };
    answers.set(check, answer);
    return answer;
  });
  // While names or units are wrong, or the check could not be made, nobody knows whether the finding has gone away.
  const isUnsure = design.problems.some(({ severity }) => severity === "error");
  const unchecked = new Set(checks.filter(({ outcome }) => outcome.outcome === "not-checked").map(keyOf));
  const date = design.site && dayIn(design.site.declaration, "date")?.day;
  for (const [key, departure] of byKey) {
    if (used.has(departure)) {
      const problem = date && expired(departure, date);
      if (problem) problems.push(problem);
      continue;
    }
    if (isUnsure || unchecked.has(key)) continue;
    problems.push({
      id: "unused-departure",
      severity: "warning",
      message: `There is no finding of ${departure.rule} on ${departure.target?.path.join(".")} to depart from. Delete this line, or look why the finding went away.`,
      place: departure.rulePlace,
      unnecessary: true,
    });
  }
  return { told, answers, problems };
}

function keyOf({ rule, thing }: Check): string {
  return `${rule.id} ${label(thing)}`;
}

/** A departure stays one when its day is past; whoever reads the design is told that nobody has decided it again. */
function expired(departure: DepartureDeclaration, date: string): Problem | undefined {
  const until = dayIn(departure, "until");
  // Days are written as ISO 8601, where the order of the letters is the order of the days.
  if (!until || until.day >= date) return undefined;
  return {
    id: "expired-departure",
    severity: "warning",
    message: `This departure from ${departure.rule} was agreed until ${until.day}; the design is dated ${date}. Decide it again and write a later day, or delete it and mend what is found.`,
    place: until.place,
  };
}

function dayIn({ properties }: Block, name: string): { readonly day: string; readonly place: Place } | undefined {
  const property = properties.find((each) => each.name === name);
  return property?.value?.kind === "day" ? { day: property.value.value, place: property.valuePlace } : undefined;
}

/** Holds `expect` lines against what was found: for training designs and for this project's own fixtures. */
export function matchExpectations(
  design: Design,
  checks: readonly Check[],
  problems: readonly Problem[],
): { readonly expected: Assessment["expected"]; readonly problems: readonly Problem[] } {
  const own: Problem[] = [];
  const expected = design.expectations.map((expectation) => {
    const met = isMet(expectation, design, checks, problems, own);
    return { expectation, met };
  });
  for (const { expectation, met } of expected) {
    if (met) continue;
    own.push({
      id: "unmet-expectation",
      severity: "warning",
      message: `Nothing was found of ${expectation.rule} on ${expectation.target?.path.join(".") ?? "it"}, though it is expected here.`,
      place: expectation.rulePlace,
    });
  }
  return { expected, problems: own };
}

function isMet(
  expectation: ExpectationDeclaration,
  design: Design,
  checks: readonly Check[],
  problems: readonly Problem[],
  own: Problem[],
): boolean {
  const { rule, target } = expectation;
  if (!ruleIds.has(rule) && !problemIds.has(rule)) {
    own.push(unknownRule(rule, expectation.rulePlace, [...ruleIds, ...problemIds]));
    return false;
  }
  if (problemIds.has(rule)) return problems.some((problem) => foretellsProblem(expectation, design, problem));
  const id = targetId(design, target, own);
  return checks.some((check) => foretellsCheck(expectation, id, check));
}

function foretellsProblem({ rule, target }: ExpectationDeclaration, design: Design, problem: Problem): boolean {
  return problem.id === rule && (!target || inside(design, target, problem.place));
}

function foretellsCheck({ rule }: ExpectationDeclaration, id: string | undefined, check: Check): boolean {
  return check.rule.id === rule && check.outcome.outcome === "finding" && label(check.thing) === id;
}

/** The findings and problems that some `expect` line foretold. */
export function foretold(assessment: Assessment): { checks: ReadonlySet<Check>; problems: ReadonlySet<Problem> } {
  const { design } = assessment;
  const checks = new Set<Check>();
  const problems = new Set<Problem>();
  for (const { expectation, met } of assessment.expected) {
    if (!met) continue;
    for (const problem of assessment.problems)
      if (foretellsProblem(expectation, design, problem)) problems.add(problem);
    const id = targetId(design, expectation.target, []);
    for (const check of assessment.told) if (foretellsCheck(expectation, id, check)) checks.add(check);
  }
  return { checks, problems };
}

/** Whether a place lies in the declaration that a mention names. */
function inside(design: Design, target: Mention, place: Place): boolean {
  const declaration = declarationOf(design, target);
  return (
    declaration !== undefined &&
    declaration.chunk === place.chunk &&
    declaration.from <= place.from &&
    place.to <= declaration.to
  );
}

function declarationOf(design: Design, target: Mention): Place | undefined {
  const name = target.path.join(".");
  const run = design.runs.find((candidate) => candidate.id === name);
  if (run) return run.declaration.place;
  const resolved = design.names.resolve(target);
  if (resolved.is === "item") return resolved.item.declaration.place;
  return design.parts.get(name)?.declaration.place;
}

function targetId(design: Design, target: Mention | undefined, problems: Problem[]): string | undefined {
  if (!target) return undefined;
  const name = target.path.join(".");
  const run = design.runs.find((candidate) => candidate.id === name);
  if (run) return run.id;
  const resolved = design.names.resolve(target);
  if (resolved.is === "item") return resolved.item.id;
  if (design.parts.has(name)) return name;
  if (resolved.is === "unknown") return undefined;
  const known = [...design.names.top.keys(), ...design.runs.map((candidate) => candidate.id)];
  problems.push(mentionProblem(target, 0, known, "item or run"));
  return undefined;
}

function unknownRule(id: string, place: Place, known: Iterable<string>): Problem {
  const near = nearest(id, known);
  return {
    id: "unknown-rule",
    severity: "error",
    message: `There is no rule ${id}.${near ? ` Did you mean ${near}?` : ""}`,
    place,
    suggestions: near ? [{ title: `Change to ${near}`, text: near }] : [],
  };
}
