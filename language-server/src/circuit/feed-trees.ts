import type { Terminal } from "./circuit.js";
import { type FeedTree, feedTree } from "./feed.js";

/**
 * The trees by which a piece of wiring is fed with a.c.: from each supply, from each backup port with the changeovers
 * thrown, and from whatever else there is where neither reaches (a design without its supply is still a design).
 */
export class FeedTrees {
  readonly all: FeedTree[] = [];
  private readonly byTerminal = new Map<Terminal, FeedTree[]>();

  constructor(region: readonly Terminal[]) {
    for (const terminal of region) if (terminal.item.kind === "supply") this.add(feedTree(terminal));
    for (const terminal of region) if (terminal.item.kind === "backup") this.add(feedTree(terminal, "backup"));
    for (const isRoot of [isBar, isGenerator, isGridPort])
      for (const terminal of region)
        if (isRoot(terminal) && !this.byTerminal.has(terminal)) this.add(feedTree(terminal));
  }

  /** Trees in which a terminal is fed, or is the root; the supply's first. */
  reaching(terminal: Terminal): readonly FeedTree[] {
    return this.byTerminal.get(terminal) ?? [];
  }
  rootedAt(terminal: Terminal): FeedTree | undefined {
    return this.reaching(terminal).find(({ root }) => root === terminal);
  }

  private add(tree: FeedTree): void {
    this.all.push(tree);
    for (const terminal of tree.order) {
      const own = this.byTerminal.get(terminal);
      if (own) own.push(tree);
      else this.byTerminal.set(terminal, [tree]);
    }
  }
}

const isBar = ({ item, name }: Terminal): boolean => item.kind === "board" && name === "bar";
const isGenerator = ({ item }: Terminal): boolean => item.kind === "generator";
const isGridPort = ({ item }: Terminal): boolean => item.kind === "ac";
