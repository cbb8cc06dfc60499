import { NotKnown } from "./judge.js";
import type { Missing, NotChecked } from "./rule.js";

/** What one check over many things lacks: each property named once, however many of them need it. */
export class MissingFacts {
  private readonly missing: Missing[] = [];
  private readonly reasons = new Set<string>();

  /** The result of some work, or undefined where it stopped at something that is not known. */
  orElse<Result>(work: () => Result): Result | undefined {
    try {
      return work();
    } catch (error) {
      if (!(error instanceof NotKnown)) throw error;
      for (const { thing, property } of error.missing)
        if (!this.missing.some((known) => known.thing === thing && known.property === property))
          this.missing.push({ thing, property });
      if (error.reason) this.reasons.add(error.reason);
      return undefined;
    }
  }

  /** One outcome for all that was missing; none where nothing was. */
  outcomes(): NotChecked[] {
    if (this.missing.length === 0 && this.reasons.size === 0) return [];
    const reason = this.reasons.size > 0 ? [...this.reasons].join("; ") : undefined;
    return [{ outcome: "not-checked", missing: this.missing, reason }];
  }

  /** Stops the check where anything was missing, with all of it. */
  stop(): void {
    if (this.missing.length > 0 || this.reasons.size > 0) throw this.asNotKnown();
  }
  asNotKnown(): NotKnown {
    const [all] = this.outcomes();
    return new NotKnown(all?.missing ?? [], all?.reason);
  }
}
