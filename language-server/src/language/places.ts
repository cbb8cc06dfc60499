import { type AstNode, AstUtils, type CompositeCstNode, type CstNode, GrammarAST } from "langium";
import type { Chunk, Place } from "../place.js";

/**
 * Turns nodes of a chunk's syntax tree into places. The tree's offsets are relative to the chunk already.
 *
 * The words of a node are sorted by property in one walk and kept until the next node is asked about: the framework's
 * own search walks once for each property, which was a third of the whole cost of reading a file.
 */
export class Places {
  private node: AstNode | undefined;
  private readonly words = new Map<string, CstNode[]>();

  constructor(readonly chunk: Chunk) {}

  span(from: number, to: number): Place {
    return { chunk: this.chunk, from, to };
  }

  /** Where a whole node stands. */
  whole(node: AstNode): Place {
    return node.$cstNode ? this.of(node.$cstNode) : this.span(0, 0);
  }

  /** Where a property of a node stands; undefined where recovery left it out. */
  property(node: AstNode, property: string): Place | undefined {
    const word = this.wordsOf(node).get(property)?.[0];
    return word && this.of(word);
  }

  /** Where each value of a list property stands. */
  properties(node: AstNode, property: string): Place[] {
    return (
      this.wordsOf(node)
        .get(property)
        ?.map((word) => this.of(word)) ?? []
    );
  }

  private of(cst: CstNode): Place {
    return this.span(cst.offset, cst.end);
  }

  private wordsOf(node: AstNode): Map<string, CstNode[]> {
    if (this.node !== node) {
      this.node = node;
      this.words.clear();
      if (node.$cstNode) this.sort(node.$cstNode);
    }
    return this.words;
  }

  private sort(cst: CstNode): void {
    for (const child of (cst as Partial<CompositeCstNode>).content ?? []) {
      if (child.hidden) continue;
      const property = propertyOf(child.grammarSource);
      if (property === "") this.sort(child);
      else {
        const list = this.words.get(property);
        if (list) list.push(child);
        else this.words.set(property, [child]);
      }
    }
  }
}

const assigned = new WeakMap<GrammarAST.AbstractElement, string>();

/** The property that a piece of the grammar is assigned to; empty for keywords and for rules that pass a node on. */
function propertyOf(source: GrammarAST.AbstractElement | undefined): string {
  if (!source) return "";
  let property = assigned.get(source);
  if (property === undefined) {
    property = AstUtils.getContainerOfType(source, GrammarAST.isAssignment)?.feature ?? "";
    assigned.set(source, property);
  }
  return property;
}
