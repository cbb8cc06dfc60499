import type { Check } from "./assessment.js";

interface Known {
  readonly signature: readonly unknown[];
  readonly checks: readonly Check[];
}

/** What the last assessment of a file computed, view by view, so that an edit costs only the views it reaches. */
export class AssessmentMemory {
  private known = new Map<string, Known>();
  private next = new Map<string, Known>();

  /** The checks of a view: those of the last time where every element of its signature is the same object. */
  checks(id: string, signature: readonly unknown[], judge: () => Iterable<Check>): readonly Check[] {
    const last = this.known.get(id);
    const checks = last && sameElements(last.signature, signature) ? last.checks : [...judge()];
    this.next.set(id, { signature, checks });
    return checks;
  }

  /** Forgets the views that were not asked for since the last call. */
  turn(): void {
    this.known = this.next;
    this.next = new Map();
  }
}

function sameElements(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let index = 0; index < a.length; index++) if (a[index] !== b[index]) return false;
  return true;
}
