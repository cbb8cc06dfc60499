import type { Sources } from "../sources.js";

/** A part that some file declares. */
export interface KnownPart {
  readonly name: string;
  readonly kind: string;
  readonly uri: string;
  /** What its comment says of it first. */
  readonly doc?: string;
}

/** Parts of some kinds in all files, by name. */
export function knownParts(sources: Sources, kinds: readonly string[]): KnownPart[] {
  const found: KnownPart[] = [];
  for (const uri of sources.uris())
    for (const { declarations } of sources.fragments(uri))
      for (const declaration of declarations) {
        if (declaration.declares !== "part" || !kinds.includes(declaration.kind)) continue;
        const { name, kind, doc } = declaration;
        found.push({ name, kind, uri, ...(doc !== undefined && { doc: doc.split("\n", 1)[0] }) });
      }
  return found.sort((a, b) => a.name.localeCompare(b.name) || a.uri.localeCompare(b.uri));
}
