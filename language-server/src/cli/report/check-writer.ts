import type { Check, Departed, WhatIf } from "../../assessment/assessment.js";
import { noticeOfCheck } from "../../assessment/notices.js";
import { type Severities, shownSeverity } from "../../assessment/severities.js";
import { label } from "../../design/facts.js";
import type { Figure } from "../../physics/figure.js";
import { sourceText } from "../../physics/working.js";
import type { Finding, Pass } from "../../rules/rule.js";
import type { RuleSet } from "../../rules/rule-set.js";
import { compared, workings } from "./figures.js";
import type { Locator } from "./locate.js";
import type { DepartureReport, FindingReport, PassReport, SwitchedOffReport } from "./report.js";

/** Writes the checks of one design down as plain data. */
export class CheckWriter {
  constructor(
    private readonly ruleSet: RuleSet,
    private readonly locator: Locator,
    private readonly expected: ReadonlySet<Check>,
    private readonly withWorkings: boolean,
    private readonly severities: Severities,
    private readonly whatIf?: WhatIf,
  ) {}

  /** Which rule was held against which thing, and whether the result is of the text alone. */
  named(check: Check): { rule: string; thing: string; hypothetical?: true } {
    const { rule, thing } = check;
    return { rule: rule.id, thing: label(thing), ...(this.whatIf?.isHypothetical(check) && { hypothetical: true }) };
  }

  finding(check: Check, { what, why, todo, value, limit }: Finding): FindingReport {
    return {
      ...this.named(check),
      ...this.shown(check),
      what,
      why,
      todo,
      expected: this.expected.has(check),
      ...compared(value, limit),
      sources: (check.rule.sources[this.ruleSet.id] ?? []).map(sourceText),
      ...this.workings(value, limit),
    };
  }

  /** A finding that the settings hide: what it is, without its place. */
  switchedOff(check: Check, { what, severity }: Finding): SwitchedOffReport {
    return { ...this.named(check), severity: severity ?? check.rule.severity, what };
  }

  departure(check: Check, { finding, departure }: Departed): DepartureReport {
    const { what, value, limit } = finding;
    return {
      ...this.named(check),
      ...this.shown(check),
      what,
      reason: departure.reason,
      departure: this.locator.locate(departure.place),
      ...this.workings(value, limit),
    };
  }

  pass(check: Check, { value, limit, utilisation, against }: Pass): PassReport {
    return {
      ...this.named(check),
      location: this.locator.locate(check.thing.declaration.namePlace),
      ...compared(value, limit),
      utilisation: utilisation !== undefined && Number.isFinite(utilisation) ? utilisation : undefined,
      against,
      ...this.workings(value, limit),
    };
  }

  /** Message, place and severity, the same as an editor shows them. */
  private shown(check: Check): Pick<FindingReport, "severity" | "message" | "location" | "related"> {
    const { severity, message, place, related } = noticeOfCheck(check)!;
    const chosen = shownSeverity(check, this.severities);
    return {
      severity: chosen === undefined || chosen === "off" ? severity : chosen,
      message,
      location: this.locator.locate(place),
      related: related.map((each) => ({ message: each.message, location: this.locator.locate(each.place) })),
    };
  }

  private workings(value?: Figure, limit?: Figure): { workings?: string[] } {
    return this.withWorkings ? { workings: workings(value, limit) } : {};
  }
}
