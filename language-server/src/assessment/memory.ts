/**
 * What the last assessment of a file computed, so that an edit costs only what it reaches. Each entry is known by a
 * name and a signature: everything its computation may read, as objects that stay the same while their text does.
 */
export class Remembered<Result> {
  private known = new Map<string, { readonly signature: readonly unknown[]; readonly result: Result }>();
  private next: typeof this.known = new Map();

  /** The result of the last time where every element of the signature is the same object, else a new one. */
  get(name: string, signature: readonly unknown[], compute: (last: Result | undefined) => Result): Result {
    const last = this.known.get(name);
    if (last && sameElements(last.signature, signature)) {
      this.next.set(name, last);
      return last.result;
    }
    const result = compute(last?.result);
    this.next.set(name, { signature, result });
    return result;
  }

  /** Forgets what was not asked for since the last call. */
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
