import { fact, flagOf, given, givenRange, isKnown, isMisread, textOf, wordOf } from "../design/facts.js";
import type { Part, Thing } from "../design/things.js";
import type { Figure, Given, Origin } from "../physics/figure.js";
import type { Finding, Missing, NotApplicable, NotChecked, Pass, Related } from "./rule.js";
import type { RuleSet } from "./rule-set.js";

/**
 * Thrown by the `need…` readers and caught by the assessment: the check becomes "not checked". No Error, because what
 * is not known is no failure, and a half-written design lacks thousands of facts: a stack for each is dear.
 */
export class NotKnown {
  constructor(
    readonly missing: readonly Missing[],
    /** For what no property can say. */
    readonly reason?: string,
  ) {}

  outcome(): NotChecked {
    return { outcome: "not-checked", missing: this.missing, reason: this.reason };
  }
}

/** A word that decides how a rule judges, and who chose it. */
export interface ChosenWord {
  readonly word: string;
  /** With the reason of the rule set, or the place where the site says otherwise. */
  readonly origin: Origin;
}

/**
 * What a rule may ask while it judges: facts of things, facts of the site, figures of the rule set.
 * The `need…` readers stop the check when something is unknown; the plain ones return undefined where nothing is
 * stated, and stop it where what is stated cannot be read.
 */
export class Judge {
  constructor(
    readonly ruleSet: RuleSet,
    /** The site block; undefined in a file without one. Its absence makes every site fact unknown. */
    readonly site: Thing | undefined,
    /** Parts in scope, for fixes that choose another one. */
    readonly parts: ReadonlyMap<string, Part>,
    /** Site's own values for limits of the rule set, by property name. */
    private readonly limits: Thing | undefined,
    private readonly isLenient = false,
  ) {}

  /** Several quantities at once, so that everything missing is named together. */
  need<const Wanted extends readonly (readonly [Thing, string])[]>(...wanted: Wanted): { [K in keyof Wanted]: Given } {
    const missing: Missing[] = [];
    const found = wanted.map(([thing, property]) => {
      const figure = given(thing, property);
      if (!figure) missing.push({ thing, property });
      return figure;
    });
    if (missing.length > 0) throw new NotKnown(missing);
    return found as { [K in keyof Wanted]: Given };
  }
  needRange(thing: Thing, property: string): { low: Given; high: Given } {
    return givenRange(thing, property) ?? this.unknown(thing, property);
  }
  needWord(thing: Thing, property: string): string {
    return wordOf(thing, property) ?? this.unknown(thing, property);
  }
  needFlag(thing: Thing, property: string): boolean {
    return flagOf(thing, property) ?? this.unknown(thing, property);
  }
  needText(thing: Thing, property: string): string {
    return textOf(thing, property) ?? this.unknown(thing, property);
  }
  quantity(thing: Thing, property: string): Given | undefined {
    return given(thing, property) ?? this.unstated(thing, property);
  }
  range(thing: Thing, property: string): { low: Given; high: Given } | undefined {
    return givenRange(thing, property) ?? this.unstated(thing, property);
  }
  word(thing: Thing, property: string): string | undefined {
    return wordOf(thing, property) ?? this.unstated(thing, property);
  }
  flag(thing: Thing, property: string): boolean | undefined {
    return flagOf(thing, property) ?? this.unstated(thing, property);
  }
  text(thing: Thing, property: string): string | undefined {
    return textOf(thing, property) ?? this.unstated(thing, property);
  }
  /** For choosing among parts and for showing figures: what cannot be read is then no more than absent. */
  leniently(): Judge {
    return new Judge(this.ruleSet, this.site, this.parts, this.limits, true);
  }
  private unstated(thing: Thing, property: string): undefined {
    return !this.isLenient && isMisread(thing, property) ? this.unknown(thing, property) : undefined;
  }
  /** Whether anything that the property can be is stated or assumed for it. */
  knows(thing: Thing, property: string): boolean {
    return isKnown(thing, property);
  }

  /** A fact of the site. */
  siteQuantity(property: string): Given | undefined {
    return this.site && given(this.site, property);
  }
  needSite(property: string): Given {
    return this.siteQuantity(property) ?? this.unknownOfSite(property);
  }
  needSiteWord(property: string): string {
    return this.siteWord(property) ?? this.unknownOfSite(property);
  }
  siteWord(property: string): string | undefined {
    return this.site && wordOf(this.site, property);
  }

  /** A limit of the rule set, or the site's own value for it. */
  limit(name: string): Given {
    const own = this.limits && given(this.limits, name);
    return own ?? this.ruleSet.limit(name);
  }

  /** Where the site sets a limit of its own; empty where the rule set's stands. For pointing at it from a finding. */
  limitSet(name: string, message: string): Related[] {
    const { limits } = this;
    return limits && fact(limits, name) ? [{ spot: { thing: limits, property: name }, message }] : [];
  }

  /** A choice on which practitioners differ: the rule set's word with its reason, or the site's own. */
  setting(name: string): ChosenWord {
    const { word, source, reason } = this.ruleSet.setting(name);
    const own = this.limits && wordOf(this.limits, name);
    if (own === undefined || !this.limits) return { word, origin: { kind: "rule-set", text: reason, source } };
    const origin = fact(this.limits, name)?.origin ?? { kind: "stated", text: name };
    return { word: own, origin };
  }

  unknown(thing: Thing, property: string): never {
    throw new NotKnown([{ thing, property }]);
  }
  private unknownOfSite(property: string): never {
    if (this.site) throw new NotKnown([{ thing: this.site, property }]);
    throw new NotKnown([], `there is no site, so its ${property} is not known`);
  }

  /** A comparison that holds. Utilisation is value / limit. */
  pass(value: Figure, limit?: Figure, against?: string): Pass {
    const utilisation = limit && limit.value !== 0 ? value.value / limit.value : undefined;
    return { outcome: "pass", value, limit, utilisation, against };
  }
  /** A comparison with a lower bound that holds: the bound over the value is the share that is used. */
  passAtLeast(value: Figure, bound: Figure, against?: string): Pass {
    const utilisation = value.value === 0 ? undefined : bound.value / value.value;
    return { outcome: "pass", value, limit: bound, utilisation, against };
  }
  /** A yes-or-no check that holds; `what` says what does. */
  holds(what: string): Pass {
    return { outcome: "pass", against: what };
  }
  finding(finding: Omit<Finding, "outcome">): Finding {
    return { outcome: "finding", ...finding };
  }
  notApplicable(reason: string): NotApplicable {
    return { outcome: "not-applicable", reason };
  }
  notChecked(reason: string, ...missing: Missing[]): NotChecked {
    return { outcome: "not-checked", missing, reason };
  }
}
