import { asWritten } from "../../design/as-written.js";
import type { ItemDeclaration, PartDeclaration, ReadingDeclaration, RunDeclaration } from "../../design/model.js";
import type { Run, Thing } from "../../design/things.js";
import type { Place } from "../../place.js";
import type { Fix } from "../../rules/rule.js";
import { nestDevices } from "../refactor/nest-devices.js";
import { putIntoRuns, tapOff } from "../refactor/put-device.js";
import type { WorkspaceView } from "../workspace-view.js";
import type { Change } from "./change.js";
import { insertProperty } from "./insert-property.js";

/**
 * The changes of text that a rule's fix asks for. Undefined where the choice is not written in text that can be changed:
 * on a part's sheet, which states facts, or in a line that is being typed.
 */
export function fixEdit(view: WorkspaceView, fix: Fix): readonly Change[] | undefined {
  switch (fix.does) {
    case "insert-device":
      return putIntoRuns(
        view,
        fix.cuts.map(({ run, source }) => ({ run: writtenRun(run), source })),
        { kind: fix.part.kind, part: fix.part.name },
      );
    case "add-tee":
      return tapOff(view, writtenRun(fix.thing), fix.terminal, { kind: fix.part.kind, part: fix.part.name });
    case "nest-devices":
      return nestDevices(view, fix.thing, fix.devices);
    default: {
      const change = wordEdit(view, fix);
      return change && [change];
    }
  }
}

/** Where something is supposed, the text to be changed is still the text. */
function writtenRun(run: Run): Run {
  return { ...run, declaration: asWritten(run.declaration) };
}

type WordFix = Exclude<Fix, { readonly does: "insert-device" | "add-tee" | "nest-devices" }>;

/** Fixes that change one word of a declaration. */
function wordEdit(view: WorkspaceView, fix: WordFix): Change | undefined {
  const declaration = asWritten(fix.thing.declaration);
  if (declaration.declares === "part" || isOnSheet(fix.thing)) return undefined;
  if (view.fragmentOf(declaration.place)?.broken !== false) return undefined;
  switch (fix.does) {
    case "set-count":
      return declaration.declares === "item" ? countEdit(declaration, fix.count) : undefined;
    case "set-part":
      return declaration.declares === "item" ? partEdit(declaration, fix.part) : undefined;
    case "set-cable":
      return declaration.declares === "run" && declaration.cable
        ? replacement(declaration.cable.place, fix.cable)
        : undefined;
    case "set-end":
      return declaration.declares === "run" ? endEdit(declaration, fix.end, fix.terminal) : undefined;
    case "set-way":
      return declaration.declares === "item" && declaration.way
        ? replacement(declaration.way.place, String(fix.way))
        : undefined;
    case "set-property":
      return propertyEdit(view, declaration, fix.property, fix.value);
  }
}

/** Whether a thing is written on a part's sheet: the trackers of an inverter, the ways of a ready-made board. */
export function isOnSheet(thing: Thing): boolean {
  if (thing.is === "part") return true;
  for (let item = thing.is === "item" ? thing : undefined; item?.parent; item = item.parent)
    if (!asWritten(item.parent.declaration).nested.includes(asWritten(item.declaration))) return true;
  return false;
}

function countEdit({ count, part }: ItemDeclaration, value: number): Change | undefined {
  if (count) return replacement(count.place, String(value));
  return part && insertion(part.place, `${value} x `);
}

function partEdit({ part, namePlace }: ItemDeclaration, name: string): Change {
  if (part) return replacement(part.place, name);
  return insertion({ ...namePlace, from: namePlace.to }, ` is ${name}`);
}

function endEdit(run: RunDeclaration, end: "from" | "to", terminal: string): Change | undefined {
  const mention = run[end];
  return mention && replacement(mention.place, terminal);
}

/** Sets a property on the declaration itself; what its part's sheet says stays as it is. */
export function propertyEdit(
  view: WorkspaceView,
  declaration: ItemDeclaration | RunDeclaration | PartDeclaration | ReadingDeclaration,
  name: string,
  value: string,
): Change | undefined {
  const own = asWritten(declaration);
  const written = own.properties.find((property) => property.name === name);
  if (written?.value) return replacement(written.valuePlace, value);
  if (written) return undefined;
  const text = view.sources.text(declaration.place.chunk.uri);
  return text === undefined ? undefined : insertProperty(text, own, name, value);
}

function replacement({ chunk, from, to }: Place, text: string): Change {
  return { uri: chunk.uri, start: chunk.start + from, end: chunk.start + to, text };
}

function insertion({ chunk, from }: Place, text: string): Change {
  return { uri: chunk.uri, start: chunk.start + from, end: chunk.start + from, text };
}
