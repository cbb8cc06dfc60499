import type { Design } from "../../design/design.js";
import { nextNameOf } from "../completion/free-names.js";
import { withNested } from "../completion/names-offers.js";

/** Names that are free in every design a file belongs to, in the letters that these use; none is given twice. */
export class FreshNames {
  private readonly taken = new Set<string>();

  constructor(private readonly designs: readonly Design[]) {
    for (const design of designs) {
      for (const { name } of withNested(design.items)) this.taken.add(name);
      for (const { id } of design.runs) this.taken.add(id);
      for (const name of design.parts.keys()) this.taken.add(name);
    }
  }

  /** The next name of a kind: W13 after W12. */
  next(kind: string): string {
    const proposed = this.designs[0] ? nextNameOf(this.designs[0], kind) : `${kind}1`;
    const [, letters = proposed, digits = "1"] = /^(.*?)(\d+)$/.exec(proposed) ?? [];
    for (let number = Number(digits); ; number++) if (this.take(`${letters}${number}`)) return `${letters}${number}`;
  }

  /** A name that says something; the same with a letter behind it where it is taken. */
  speaking(name: string): string {
    if (this.take(name)) return name;
    for (let code = "B".charCodeAt(0); code <= "Z".charCodeAt(0); code++) {
      const other = `${name}${String.fromCharCode(code)}`;
      if (this.take(other)) return other;
    }
    for (let number = 2; ; number++) if (this.take(`${name}-${number}`)) return `${name}-${number}`;
  }

  private take(name: string): boolean {
    if (this.taken.has(name)) return false;
    this.taken.add(name);
    return true;
  }
}
