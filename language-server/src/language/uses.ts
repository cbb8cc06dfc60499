import type { Fragment, UseDeclaration } from "../design/model.js";
import { resolveUse } from "./files.js";

/** A `use` line with the file it means. */
export interface Use {
  readonly declaration: UseDeclaration;
  readonly fragment: Fragment;
  readonly target: string;
}

/** The `use` lines of a file, in the order of its text. */
export function usesOf(uri: string, fragments: readonly Fragment[]): Use[] {
  const uses: Use[] = [];
  for (const fragment of fragments) {
    for (const declaration of fragment.declarations) {
      if (declaration.declares !== "use") continue;
      uses.push({ declaration, fragment, target: resolveUse(uri, declaration.path) });
    }
  }
  return uses;
}

/** Which file uses which, and what follows from it. Files that are used but not known are part of the graph. */
export class UseGraph {
  private readonly targets = new Map<string, readonly string[]>();
  private readonly users = new Map<string, Set<string>>();

  /** Replaces what a file uses. */
  set(uri: string, targets: readonly string[]): void {
    for (const target of this.targets.get(uri) ?? []) {
      const users = this.users.get(target);
      users?.delete(uri);
      if (users?.size === 0) this.users.delete(target);
    }
    if (targets.length === 0) this.targets.delete(uri);
    else this.targets.set(uri, targets);
    for (const target of targets) {
      const users = this.users.get(target);
      if (users) users.add(uri);
      else this.users.set(target, new Set([uri]));
    }
  }

  uses(uri: string): readonly string[] {
    return this.targets.get(uri) ?? [];
  }

  usedBy(uri: string): string[] {
    return [...(this.users.get(uri) ?? [])];
  }

  /** The file and everything it uses, directly or not, in the order of the `use` lines. */
  reach(uri: string): string[] {
    return walk(uri, (file) => this.uses(file));
  }

  /** The file and everything that uses it, directly or not. */
  reachedBy(uri: string): string[] {
    return walk(uri, (file) => this.users.get(file) ?? []);
  }
}

function walk(start: string, next: (file: string) => Iterable<string>): string[] {
  const found = new Set([start]);
  // A set gives out what is added while it is walked.
  for (const file of found) for (const other of next(file)) found.add(other);
  return [...found];
}
