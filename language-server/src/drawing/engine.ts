import type { ELK } from "elkjs/lib/elk-api.js";

export type { ElkNode } from "elkjs/lib/elk-api.js";

let made: Promise<ELK> | undefined;

/** The layout engine, loaded when the first picture is asked for. */
export function engine(): Promise<ELK> {
  made ??= load();
  return made;
}

/**
 * In a web worker the library takes itself for the worker of its own protocol and would take over our messages: it
 * decides so where there is no document. While it loads, it is given one.
 */
async function load(): Promise<ELK> {
  const scope = globalThis as { document?: unknown };
  const isWithoutDocument = !("document" in scope);
  if (isWithoutDocument) scope.document = {};
  try {
    const library = (await import("elkjs/lib/elk.bundled.js")) as unknown as { default: new () => ELK };
    return new library.default();
  } finally {
    if (isWithoutDocument) delete scope.document;
  }
}
