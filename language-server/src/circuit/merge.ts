import type { Circuit } from "./circuit.js";

/** Circuits of pieces that nothing joins, as one; put together only when somebody asks for the whole. */
export function mergeCircuits(circuits: readonly Circuit[]): Circuit {
  if (circuits.length === 1) return circuits[0]!;
  const terminals = new Map(circuits.flatMap((circuit) => [...circuit.terminals]));
  return {
    terminals,
    links: circuits.flatMap(({ links }) => links),
    converters: circuits.flatMap(({ converters }) => converters),
    sources: circuits.flatMap(({ sources }) => sources),
  };
}
