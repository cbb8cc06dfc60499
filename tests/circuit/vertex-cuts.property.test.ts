import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CutGraph, minimalCuts, reach, smallestCut } from "../../language-server/src/circuit/vertex-cuts.js";
import { Dice } from "./random.js";

/** A directed graph of up to 14 vertices; 0 is where everything comes from, 1 where nothing may arrive. */
const graphs: fc.Arbitrary<CutGraph> = fc.integer().map((seed) => {
  const dice = new Dice(seed);
  const size = dice.between(3, 14);
  const out: number[][] = Array.from({ length: size }, () => []);
  const into: number[][] = Array.from({ length: size }, () => []);
  for (let arcs = dice.between(size, 3 * size); arcs > 0; arcs--) {
    const [tail, head] = [dice.below(size), dice.below(size)];
    // A short way from the start to the end would leave nothing to cut.
    if (tail === head || out[tail]!.includes(head) || (tail === 0 && head === 1)) continue;
    out[tail]!.push(head);
    into[head]!.push(tail);
  }
  return { size, from: 0, to: 1, out, in: into, removable: out.map((_, vertex) => vertex > 1 && !dice.once(5)) };
});

function parts(graph: CutGraph, cut: ReadonlySet<number>): boolean {
  return !reach(graph.out, [graph.from], (vertex) => cut.has(vertex)).has(graph.to);
}

/** Minimal sets by trying all of them, smaller ones first. */
function bruteForce(graph: CutGraph): number[][] {
  const removable = graph.removable.flatMap((may, vertex) => (may ? [vertex] : []));
  const sets = Array.from({ length: 1 << removable.length }, (_, bits) =>
    removable.filter((_, bit) => bits & (1 << bit)),
  );
  const minimal: number[][] = [];
  for (const set of sets.sort((a, b) => a.length - b.length))
    if (!minimal.some((smaller) => smaller.every((vertex) => set.includes(vertex))) && parts(graph, new Set(set)))
      minimal.push(set);
  return minimal;
}

const sorted = (cuts: readonly (readonly number[])[]): string[] => cuts.map((cut) => cut.join(" ")).sort();

describe("cuts of directed graphs", () => {
  test("every inclusion-minimal cut is found once", () => {
    let largest = 0;
    fc.assert(
      fc.property(graphs, (graph) => {
        const wanted = bruteForce(graph);
        const found = minimalCuts(graph, 10_000);
        largest = Math.max(largest, wanted.length);
        expect(found.complete).toBe(true);
        expect(sorted(found.cuts)).toEqual(sorted(wanted));
      }),
      { numRuns: 600 },
    );
    expect(largest).toBeGreaterThan(4);
  });

  test("the smallest cut is as small as any, and none exists exactly when no set parts the graph", () => {
    fc.assert(
      fc.property(graphs, (graph) => {
        const wanted = bruteForce(graph);
        const found = smallestCut(graph);
        expect(found?.length).toBe(wanted[0]?.length);
        if (found) expect(parts(graph, new Set(found))).toBe(true);
      }),
      { numRuns: 600 },
    );
  });

  test("a bound stops the search and says so", () => {
    // Three ways side by side, each with three vertices in line: 27 minimal cuts.
    const size = 11;
    const arcs = [0, 1, 2].flatMap((way) => {
      const [a, b, c] = [2 + 3 * way, 3 + 3 * way, 4 + 3 * way];
      return [
        [0, a],
        [a, b],
        [b, c],
        [c, 1],
      ] as const;
    });
    const out: number[][] = Array.from({ length: size }, () => []);
    const into: number[][] = Array.from({ length: size }, () => []);
    for (const [tail, head] of arcs) {
      out[tail]!.push(head);
      into[head]!.push(tail);
    }
    const graph: CutGraph = { size, from: 0, to: 1, out, in: into, removable: out.map((_, vertex) => vertex > 1) };
    expect(minimalCuts(graph, 100)).toMatchObject({ complete: true, cuts: { length: 27 } });
    expect(minimalCuts(graph, 10).complete).toBe(false);
    // Nearest to the target first.
    expect(minimalCuts(graph, 100).cuts[0]).toEqual([4, 7, 10]);
    expect(smallestCut(graph)).toEqual([4, 7, 10]);
  });
});
