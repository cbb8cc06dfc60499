/**
 * A directed graph whose vertices are numbers from 0. Some vertices may be removed, the others never; one is where
 * everything comes from, one where nothing may arrive.
 */
export interface CutGraph {
  readonly size: number;
  readonly from: number;
  readonly to: number;
  readonly out: readonly (readonly number[])[];
  readonly in: readonly (readonly number[])[];
  readonly removable: readonly boolean[];
}

/** Vertices that a start reaches without passing a blocked one; blocked vertices are never entered. */
export function reach(
  next: CutGraph["out"],
  starts: Iterable<number>,
  isBlocked: (vertex: number) => boolean,
): Set<number> {
  const seen = new Set(starts);
  for (const vertex of seen) for (const other of next[vertex]!) if (!isBlocked(other)) seen.add(other);
  return seen;
}

/**
 * A smallest set of removable vertices that parts `to` from `from`, by augmenting paths on the graph with every
 * removable vertex split into an arc of capacity one (Menger, Ford and Fulkerson). Among sets of that size it is the
 * one nearest to `to`. Undefined where no set does it.
 */
export function smallestCut(graph: CutGraph): number[] | undefined {
  const flow = new UnitFlow(graph);
  for (;;) {
    const grown = flow.augment();
    if (grown === "endless") return undefined;
    if (grown === "full") return flow.cutNearTarget();
  }
}

/** Flow on split vertices: vertex v is entered at 2v and left at 2v + 1. */
class UnitFlow {
  /** Net flow on arcs between different vertices, by `tail * size + head`. */
  private readonly between = new Map<number, number>();
  private readonly used: Uint8Array;

  constructor(private readonly graph: CutGraph) {
    this.used = new Uint8Array(graph.size);
  }

  augment(): "grown" | "full" | "endless" {
    const { from, to, removable } = this.graph;
    const target = 2 * to;
    const before = this.search([2 * from + 1], (node) => this.residualFrom(node), target);
    if (!before.has(target)) return "full";
    const path: number[] = [];
    for (let node: number | undefined = target; node !== undefined; node = before.get(node)) path.push(node);
    path.reverse();
    // With no removable vertex on a way there is no limit to what flows along it.
    if (path.every((node) => !removable[node >> 1])) return "endless";
    for (let index = 1; index < path.length; index++) this.push(path[index - 1]!, path[index]!);
    return "grown";
  }

  /** Removable vertices whose leaving side still reaches the target in what is left, and whose entering side does not. */
  cutNearTarget(): number[] {
    const { to, size, removable } = this.graph;
    const after = this.search([2 * to], (node) => this.residualInto(node));
    const cut: number[] = [];
    for (let vertex = 0; vertex < size; vertex++)
      if (removable[vertex] && after.has(2 * vertex + 1) && !after.has(2 * vertex)) cut.push(vertex);
    return cut;
  }

  private search(
    starts: readonly number[],
    next: (node: number) => Iterable<number>,
    target?: number,
  ): Map<number, number | undefined> {
    const before = new Map<number, number | undefined>(starts.map((start) => [start, undefined]));
    for (const [node] of before) {
      for (const other of next(node)) {
        if (before.has(other)) continue;
        before.set(other, node);
        if (other === target) return before;
      }
    }
    return before;
  }

  private *residualFrom(node: number): Generator<number> {
    const { out, in: into } = this.graph;
    const vertex = node >> 1;
    if (node & 1) {
      for (const other of out[vertex]!) yield 2 * other;
      if (this.canGoBack(vertex)) yield node - 1;
    } else {
      if (this.canPass(vertex)) yield node + 1;
      for (const other of into[vertex]!) if (this.flowOn(other, vertex) > 0) yield 2 * other + 1;
    }
  }

  private *residualInto(node: number): Generator<number> {
    const { out, in: into } = this.graph;
    const vertex = node >> 1;
    if (node & 1) {
      if (this.canPass(vertex)) yield node - 1;
      for (const other of out[vertex]!) if (this.flowOn(vertex, other) > 0) yield 2 * other;
    } else {
      for (const other of into[vertex]!) yield 2 * other + 1;
      if (this.canGoBack(vertex)) yield node + 1;
    }
  }

  private canPass(vertex: number): boolean {
    return !this.graph.removable[vertex] || this.used[vertex] === 0;
  }
  /** Against the flow through a vertex; through one that is never removed any amount may turn round. */
  private canGoBack(vertex: number): boolean {
    return !this.graph.removable[vertex] || this.used[vertex] === 1;
  }
  private flowOn(tail: number, head: number): number {
    return this.between.get(tail * this.graph.size + head) ?? 0;
  }

  private push(tail: number, head: number): void {
    const [a, b] = [tail >> 1, head >> 1];
    if (a === b) {
      if (this.graph.removable[a]) this.used[a] = head & 1;
      return;
    }
    // From a leaving to an entering side it is new flow; the other way round it takes flow back.
    const [from, to, change] = tail & 1 ? [a, b, 1] : [b, a, -1];
    const key = from * this.graph.size + to;
    this.between.set(key, (this.between.get(key) ?? 0) + change);
  }
}

export interface Enumeration {
  readonly cuts: readonly (readonly number[])[];
  /** False where the bound was reached: there are more. */
  readonly complete: boolean;
}

/**
 * Inclusion-minimal sets of removable vertices that part `to` from `from`, each once.
 *
 * Starts from the set nearest to `to` and moves it towards `from`: take one vertex of a found set over to the side of
 * `to`, with everything that then cannot be parted from it, and find the minimal set of the rest. Every minimal set is
 * reached so, and one step costs a search of the graph per vertex of a set: polynomial delay (the idea of Kloks and
 * Kratsch, and of Shen and Liang, for separators of undirected graphs, here for directed ones; from memory).
 */
export function minimalCuts(graph: CutGraph, bound: number): Enumeration {
  const near = new NearSide(graph);
  const first = near.cutAround([graph.to]);
  if (!first) return { cuts: [], complete: true };
  const found = new Map<string, readonly number[]>([[keyOf(first), first]]);
  // Smaller sets first, so that a bound leaves out the unhandy ones.
  const waiting: (readonly number[])[][] = [];
  const wait = (cut: readonly number[]): void => {
    const same = waiting[cut.length];
    if (same) same.push(cut);
    else waiting[cut.length] = [cut];
  };
  wait(first);
  for (let cut = takeSmallest(waiting); cut; cut = takeSmallest(waiting)) {
    if (found.size >= bound) return { cuts: [...found.values()], complete: false };
    const side = near.sideOf(cut);
    for (const vertex of cut) {
      const next = near.cutAround([...side, vertex]);
      if (!next) continue;
      const key = keyOf(next);
      if (found.has(key)) continue;
      found.set(key, next);
      wait(next);
    }
  }
  return { cuts: [...found.values()], complete: true };
}

function takeSmallest(waiting: (readonly number[])[][]): readonly number[] | undefined {
  for (const same of waiting) {
    const cut = same?.shift();
    if (cut) return cut;
  }
  return undefined;
}

function keyOf(cut: readonly number[]): string {
  return cut.join(",");
}

/** The side of `to` in a graph that is parted. */
class NearSide {
  constructor(private readonly graph: CutGraph) {}

  /** What still reaches `to` with a set removed. */
  sideOf(cut: readonly number[]): Set<number> {
    const removed = new Set(cut);
    return reach(this.graph.in, [this.graph.to], (vertex) => removed.has(vertex));
  }

  /** The minimal set that parts `from` from a side that grows by everything it cannot be parted from. */
  cutAround(side: Iterable<number>): number[] | undefined {
    const { from, in: into, out, removable } = this.graph;
    const grown = reach(into, side, (vertex) => removable[vertex] === true);
    if (grown.has(from)) return undefined;
    const border = new Set<number>();
    for (const vertex of grown) for (const other of into[vertex]!) if (!grown.has(other)) border.add(other);
    const far = reach(out, [from], (vertex) => border.has(vertex));
    // Of the border only what the far side reaches: the rest leads nowhere.
    return [...border].filter((vertex) => into[vertex]!.some((other) => far.has(other))).sort((a, b) => a - b);
  }
}
