import type { Assessment } from "../assessment/assessment.js";
import { hypothesisText } from "../design/what-if/hypothesis.js";
import { UsageError } from "./arguments.js";

/** What `--set` asked for and cannot be supposed. Of many designs it is enough that one has something of that name. */
export class Refusals {
  private readonly applied = new Set<string>();
  private readonly missing = new Map<string, string>();

  /** Throws `UsageError` for what makes no sense where its target is. */
  add({ whatIf }: Assessment): void {
    if (!whatIf) return;
    const refused = new Set<string>();
    for (const { hypothesis, because, message } of whatIf.refusals) {
      if (because === "no-sense") throw new UsageError(`--set ${message}`);
      const key = hypothesisText(hypothesis);
      refused.add(key);
      if (!this.missing.has(key)) this.missing.set(key, message);
    }
    for (const key of whatIf.asked) if (!refused.has(key)) this.applied.add(key);
  }

  /** Throws `UsageError` for what no design has a place for. */
  check(): void {
    for (const [key, message] of this.missing) if (!this.applied.has(key)) throw new UsageError(`--set ${message}`);
  }
}
