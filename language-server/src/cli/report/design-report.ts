import { foretold } from "../../assessment/answers.js";
import type { Assessment, Check } from "../../assessment/assessment.js";
import { hasMargin } from "../../assessment/margin.js";
import { type Severities, shownSeverity } from "../../assessment/severities.js";
import type { SourceFile } from "../../design/design.js";
import { label } from "../../design/facts.js";
import type { Chunk } from "../../place.js";
import type { NotChecked } from "../../rules/rule.js";
import type { RuleSet } from "../../rules/rule-set.js";
import { assumptionReports } from "./assumptions.js";
import { CheckWriter } from "./check-writer.js";
import type { Locator } from "./locate.js";
import { ownLimits } from "./own-limits.js";
import type {
  DepartureReport,
  DesignReport,
  FindingReport,
  NotApplicableReport,
  NotCheckedReport,
  PassReport,
  RuleSetReport,
  SwitchedOffReport,
} from "./report.js";
import { whatIfReport } from "./what-if.js";

/** A design with what it was read from; `files[0]` is the file asked about. */
export interface AssessedDesign {
  readonly files: readonly SourceFile[];
  readonly assessment: Assessment;
}

export interface ReportOptions {
  /** Whether findings and passes bring the sum they were worked out with. */
  readonly workings: boolean;
  /** What findings are shown as, by the file that a design begins in. */
  readonly severities: (entry: string) => Severities;
}

/** Everything about one design but the problems of its text, which belong to the files they stand in. */
export function designReport(
  { files, assessment }: AssessedDesign,
  locator: Locator,
  options: ReportOptions,
): Omit<DesignReport, "problems"> {
  const { design, ruleSet } = assessment;
  const severities = options.severities(design.entry);
  const { checks: expected } = foretold(assessment);
  const writer = new CheckWriter(ruleSet, locator, expected, options.workings, severities, assessment.whatIf);
  const switched: SwitchedOffReport[] = [];
  const broken = brokenChunks(files);
  const isRead = (check: Check): boolean => !broken.has(check.thing.declaration.place.chunk);
  const checked = assessment.checks.filter(isRead);
  const findings: FindingReport[] = [];
  const departures: DepartureReport[] = [];
  const passes: PassReport[] = [];
  const margins: PassReport[] = [];
  const notApplicable: NotApplicableReport[] = [];
  const own = ownLimits(assessment);
  const notChecked = assessment.checks.filter((check) => !isRead(check)).map((check) => unread(check, writer));
  for (const check of checked) {
    const { outcome } = check;
    switch (outcome.outcome) {
      case "finding":
        if (shownSeverity(check, severities) === "off") switched.push(writer.switchedOff(check, outcome));
        else findings.push(writer.finding(check, outcome));
        break;
      case "departure":
        departures.push(writer.departure(check, outcome));
        break;
      case "pass":
        passes.push(writer.pass(check, outcome));
        if (outcome.value && outcome.limit && hasMargin(outcome.value, outcome.limit)) margins.push(passes.at(-1)!);
        break;
      case "not-applicable":
        notApplicable.push({ ...writer.named(check), reason: outcome.reason });
        break;
      case "not-checked":
        notChecked.push({ ...writer.named(check), ...missing(outcome) });
        break;
    }
  }
  return {
    kind: "design",
    file: locator.name(design.entry),
    site: design.site?.declaration.title,
    uses: files.slice(1).map(({ uri }) => locator.name(uri)),
    incomplete: broken.size > 0,
    ruleSet: ruleSetReport(ruleSet),
    ...(own.length > 0 && { ownLimits: own }),
    outcomes: {
      passes: passes.length,
      findings: findings.length + switched.length,
      departures: departures.length,
      notApplicable: notApplicable.length,
      notChecked: notChecked.length,
    },
    tightest: tightest(margins),
    ...(switched.length > 0 && { switchedOff: switched }),
    findings,
    departures,
    passes,
    notApplicable,
    notChecked,
    assumptions: assumptionReports(design, checked),
    ...(assessment.whatIf && { whatIf: whatIfReport(assessment.whatIf) }),
  };
}

/** Chunks whose text has an error: what was understood of them may be half of what was meant. */
function brokenChunks(files: readonly SourceFile[]): ReadonlySet<Chunk> {
  const broken = new Set<Chunk>();
  for (const { fragments } of files) for (const fragment of fragments) if (fragment.broken) broken.add(fragment.chunk);
  return broken;
}

function unread(check: Check, writer: CheckWriter): NotCheckedReport {
  return {
    ...writer.named(check),
    missing: [],
    reason: `the declaration of ${label(check.thing)} has an error of the text`,
  };
}

function missing(outcome: NotChecked): Pick<NotCheckedReport, "missing" | "reason"> {
  return {
    missing: outcome.missing.map(({ thing, property }) => ({ thing: label(thing), property })),
    reason: outcome.reason,
  };
}

function ruleSetReport({ id, title, editions }: RuleSet): RuleSetReport {
  return { id, title, editions: editions.map((each) => ({ title: each.title, edition: each.edition })) };
}

/** The first of the passes that use most of their limit. */
function tightest(passes: readonly PassReport[]): PassReport | undefined {
  let found: PassReport | undefined;
  for (const pass of passes)
    if (pass.utilisation !== undefined && pass.utilisation > (found?.utilisation ?? 0)) found = pass;
  return found;
}
