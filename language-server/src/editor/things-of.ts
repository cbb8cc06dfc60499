import type { Assessment, Check } from "../assessment/assessment.js";
import { asWritten } from "../design/as-written.js";
import type { Design } from "../design/design.js";
import { label } from "../design/facts.js";
import type { ItemDeclaration, PartDeclaration, RunDeclaration } from "../design/model.js";
import type { Item, Run, Thing } from "../design/things.js";

export type NamedDeclaration = ItemDeclaration | PartDeclaration | RunDeclaration;

/**
 * Look-up from the text to the things it stands for, made once a design and only when somebody asks. A declaration in
 * which something is supposed is found, and handed out, as the text has it.
 */
export class Things {
  readonly runs = new Map<string, Run>();
  private readonly byDeclaration = new Map<NamedDeclaration, Thing[]>();
  private readonly roots = new Map<NamedDeclaration, NamedDeclaration>();

  constructor(design: Design) {
    for (const item of design.items) this.addItem(item);
    for (const run of design.runs) {
      this.runs.set(run.id, run);
      this.byDeclaration.set(asWritten(run.declaration), [run]);
    }
    for (const part of design.parts.values()) this.byDeclaration.set(asWritten(part.declaration), [part]);
  }

  /** Things that a declaration stands for: one, or for a block of a part's sheet one in every item of that part. */
  of(declaration: NamedDeclaration): readonly Thing[] {
    return this.byDeclaration.get(asWritten(declaration)) ?? [];
  }

  /**
   * The declaration that owns the name: an item's `tracker pv1` that only adds to its part's `tracker pv1` has its name
   * from there.
   */
  root(declaration: NamedDeclaration): NamedDeclaration {
    const own = asWritten(declaration);
    return this.roots.get(own) ?? own;
  }

  private addItem(item: Item): void {
    const own = asWritten(item.declaration);
    const list = this.byDeclaration.get(own);
    if (list) list.push(item);
    else this.byDeclaration.set(own, [item]);
    const beneath = item.layers[1]?.block;
    if (beneath && "declares" in beneath && beneath.declares === "item") {
      const root = asWritten(beneath as ItemDeclaration);
      if (root !== own) this.roots.set(own, root);
    }
    for (const child of item.children) this.addItem(child);
  }
}

const thingsByDesign = new WeakMap<Design, Things>();

export function thingsOf(design: Design): Things {
  let things = thingsByDesign.get(design);
  if (!things) {
    things = new Things(design);
    thingsByDesign.set(design, things);
  }
  return things;
}

const checksByAssessment = new WeakMap<Assessment, Map<string, Check[]>>();

/**
 * The checks reported under a thing. They are matched by its id: a check that was kept from an earlier version holds
 * the thing of that version.
 */
export function checksOf(assessment: Assessment, thing: Thing): readonly Check[] {
  let byThing = checksByAssessment.get(assessment);
  if (!byThing) {
    byThing = new Map();
    for (const check of assessment.checks) {
      const key = thingKey(check.thing);
      const list = byThing.get(key);
      if (list) list.push(check);
      else byThing.set(key, [check]);
    }
    checksByAssessment.set(assessment, byThing);
  }
  return byThing.get(thingKey(thing)) ?? [];
}

function thingKey(thing: Thing): string {
  return `${thing.is === "part" ? "part" : "item"} ${label(thing)}`;
}
