import type { Declaration } from "./model.js";

const originals = new WeakMap<Declaration, Declaration>();

/** The declaration as the text has it, for one in which somebody supposes something else; any other is itself. */
export function asWritten<D extends Declaration>(declaration: D): D {
  return (originals.get(declaration) as D | undefined) ?? declaration;
}

/** Notes that one declaration is another with something supposed in it. */
export function stemsFrom(supposed: Declaration, declaration: Declaration): void {
  originals.set(supposed, asWritten(declaration));
}
