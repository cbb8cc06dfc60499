import { type AstNode, type CstNode, GrammarUtils } from "langium";
import type { Chunk, Place } from "../place.js";

/** Turns nodes of a chunk's syntax tree into places. The tree's offsets are relative to the chunk already. */
export class Places {
  constructor(readonly chunk: Chunk) {}

  span(from: number, to: number): Place {
    return { chunk: this.chunk, from, to };
  }

  cst(node: CstNode): Place {
    return this.span(node.offset, node.end);
  }

  node(node: AstNode): Place {
    return node.$cstNode ? this.cst(node.$cstNode) : this.span(0, 0);
  }

  /** Where a property of a node stands; undefined where recovery left it out. */
  property(node: AstNode, property: string, index?: number): Place | undefined {
    const cst = GrammarUtils.findNodeForProperty(node.$cstNode, property, index);
    return cst && this.cst(cst);
  }

  properties(node: AstNode, property: string): Place[] {
    return GrammarUtils.findNodesForProperty(node.$cstNode, property).map((cst) => this.cst(cst));
  }
}
