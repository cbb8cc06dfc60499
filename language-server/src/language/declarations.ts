import type * as ast from "@sunwright/grammar/ast";
import { type AstNode, CstUtils } from "langium";
import type {
  Block,
  Declaration,
  ItemDeclaration,
  PartDeclaration,
  Problem,
  Property,
  ReadingDeclaration,
  RunDeclaration,
  Text,
} from "../design/model.js";
import type { Place } from "../place.js";
import type { Places } from "./places.js";
import type { ValueReader } from "./values.js";

/**
 * Turns the syntax tree of a chunk into plain declarations. After a syntax error the tree has holes; a declaration is
 * kept as long as it still says what it declares, so that its name stays known while it is being typed.
 */
export class DeclarationReader {
  constructor(
    private readonly places: Places,
    private readonly values: ValueReader,
    /** False where the text has no doc comment at all, which spares the search for each item. */
    private readonly documented: boolean,
  ) {}

  read(node: ast.Declaration): Declaration | undefined {
    switch (node.$type) {
      case "Use":
        return this.use(node);
      case "Part":
        return this.part(node);
      case "Run":
        return this.run(node);
      case "Reading":
        return this.reading(node);
      case "Departure":
        return this.departure(node);
      case "Expectation":
        return this.expectation(node);
      case "Item":
        return this.item(node);
      default:
        return undefined;
    }
  }

  private use(node: ast.Use): Declaration | undefined {
    const pathPlace = this.places.property(node, "path");
    if (node.path === undefined || !pathPlace) return undefined;
    return { declares: "use", path: node.path, place: this.places.whole(node), pathPlace };
  }

  private part(node: ast.Part): PartDeclaration | undefined {
    const namePlace = this.places.property(node, "name");
    if (!node.name || !namePlace) return undefined;
    return {
      declares: "part",
      name: node.name,
      namePlace,
      kind: node.kind ?? "",
      kindPlace: this.places.property(node, "kind") ?? namePlace,
      ...this.common(node),
    };
  }

  private run(node: ast.Run): RunDeclaration | undefined {
    const namePlace = this.places.property(node, "name");
    if (!node.name || !namePlace) return undefined;
    const lengthPlace = this.places.property(node, "length");
    const length = this.values.quantity(node.length, lengthPlace);
    return {
      declares: "run",
      name: node.name,
      namePlace,
      ...present("from", this.values.mention(node.from)),
      ...present("to", this.values.mention(node.to)),
      ...present("length", length && lengthPlace && { value: length, place: lengthPlace }),
      ...present("cable", this.values.mention(node.cable)),
      ...this.common(node),
    };
  }

  private reading(node: ast.Reading): ReadingDeclaration | undefined {
    const target = this.values.mention(node.target);
    if (!target) return undefined;
    const day = this.values.calendarDay(node.day, this.places.property(node, "day"));
    return { declares: "measured", target, namePlace: target.place, ...present("day", day), ...this.common(node) };
  }

  private departure(node: ast.Departure): Declaration | undefined {
    const rulePlace = this.places.property(node, "rule");
    if (!node.rule || !rulePlace) return undefined;
    return {
      declares: "departure",
      rule: node.rule,
      rulePlace,
      ...present("target", this.values.mention(node.target)),
      reason: node.reason ?? "",
      place: this.places.whole(node),
      ...this.block(node.body),
    };
  }

  private expectation(node: ast.Expectation): Declaration | undefined {
    const rulePlace = this.places.property(node, "rule");
    if (!node.rule || !rulePlace) return undefined;
    const target = this.values.mention(node.target);
    return {
      declares: "expect",
      rule: node.rule,
      rulePlace,
      ...present("target", target),
      place: this.places.whole(node),
    };
  }

  private item(node: ast.Item): ItemDeclaration | undefined {
    const kindPlace = this.places.property(node, "kind");
    if (!node.kind || !kindPlace) return undefined;
    const way = this.values.whole(node.way, this.places.property(node, "way"), "number of a way");
    const countPlace = this.places.property(node, "count");
    const count = this.values.whole(node.count, countPlace, "count");
    // A count that cannot be read is not the same as none: one module is no answer to `0 x` or `1,5 x`.
    const unread = node.count !== undefined && countPlace ? { value: Number.NaN, place: countPlace } : undefined;
    return {
      declares: "item",
      kind: node.kind,
      kindPlace,
      // A block without a name, such as `ac { … }`, is called by what it is: `INV.ac`.
      name: node.name ?? node.kind,
      namePlace: this.places.property(node, "name") ?? kindPlace,
      ...present("title", node.title),
      ...present("part", this.values.mention(node.part)),
      ...present("count", count ?? unread),
      ...present("way", way),
      ...present("serves", this.serves(node)),
      ...this.common(node),
    };
  }

  private serves(node: ast.Item): ItemDeclaration["serves"] {
    if (node.servesText !== undefined) return { kind: "text", value: node.servesText } satisfies Text;
    return this.values.mention(node.serves);
  }

  private common(node: AstNode & { body?: ast.Body }): Block & { place: Place; doc?: string } {
    return { place: this.places.whole(node), ...present("doc", this.doc(node)), ...this.block(node.body) };
  }

  private block(body: ast.Body | undefined): Block {
    if (!body) return { properties: [], nested: [] };
    const properties: Property[] = [];
    const nested: ItemDeclaration[] = [];
    for (const member of body.members ?? []) {
      if (member.$type === "Item") {
        const item = this.item(member);
        if (item) nested.push(item);
      } else if (member.$type === "Property") {
        const property = this.property(member);
        if (property) properties.push(property);
      }
    }
    return { properties, nested, bodyPlace: this.places.whole(body) };
  }

  private property(node: ast.Property): Property | undefined {
    const namePlace = this.places.property(node, "name");
    if (!node.name || !namePlace) return undefined;
    const place = this.places.whole(node);
    const valuePlace = this.places.property(node, "value") ?? { ...place, from: place.to };
    const value = node.value && this.values.value(node.value);
    if (!node.value) this.values.problems.push(missingValue(node.name, place));
    return {
      name: node.name,
      ...present("value", value),
      place,
      namePlace,
      valuePlace,
      ...present("statedBy", node.statedBy),
    };
  }

  private doc(node: AstNode): string | undefined {
    if (!this.documented) return undefined;
    const comment = CstUtils.findCommentNode(node.$cstNode, ["BLOCK_COMMENT"])?.text;
    return comment === undefined ? undefined : docText(comment);
  }
}

export function missingValue(name: string, place: Place): Problem {
  return {
    id: "missing-value",
    severity: "error",
    message: `${name} has no value, so it counts as not stated. Write the value after the colon, or delete the line.`,
    place,
  };
}

function present<K extends string, V>(key: K, value: V | undefined): { [P in K]?: V } {
  return (value === undefined ? {} : { [key]: value }) as { [P in K]?: V };
}

/** Text of a doc comment without its stars; undefined for any other comment. */
export function docText(comment: string): string | undefined {
  if (!comment.startsWith("/**") || comment === "/**/") return undefined;
  return comment
    .replace(/^\/\*\*+/, "")
    .replace(/\*+\/$/, "")
    .split(/\r\n|\r|\n/)
    .map((line) => line.replace(/^\s*\*? ?/, "").trimEnd())
    .join("\n")
    .trim();
}
