import { asWritten } from "../../design/as-written.js";
import type { ItemDeclaration, Property } from "../../design/model.js";
import type { Item } from "../../design/things.js";
import type { NestedDevice } from "../../rules/rule.js";
import type { Change } from "../edits/change.js";
import { insertMembers } from "../edits/insert-property.js";
import { lineEnding } from "../edits/layout.js";
import type { WorkspaceView } from "../workspace-view.js";
import { deviceLine } from "./device-line.js";
import { FreshNames } from "./fresh-names.js";
import { membersOf } from "./members.js";
import { replaced } from "./rewritten.js";
import { linesBehind } from "./stretch.js";

/**
 * The changes that put devices into a board or a combiner, each with the run that lands on it or the device that it
 * feeds. Undefined where the text of the board, or of one of the runs, cannot be changed.
 */
export function nestDevices(view: WorkspaceView, box: Item, devices: readonly NestedDevice[]): Change[] | undefined {
  const declaration = asWritten(box.declaration);
  const { uri } = declaration.place.chunk;
  const text = view.sources.text(uri);
  if (text === undefined || view.fragmentOf(declaration.place)?.broken !== false) return undefined;
  const names = new FreshNames(view.assessments(uri).map(({ design }) => design));
  const nested: string[] = [];
  const outside: string[] = [];
  const changes: Change[] = [];
  for (const { part, way, landing, feeds, serves } of devices) {
    const name = names.next(part.kind);
    const fed = feeds && names.next(feeds.kind);
    const sentence = deviceLine(name, { kind: part.kind, part: part.name });
    const served = fed ?? serves?.id;
    nested.push(
      `${way === undefined ? "" : `way ${way}: `}${sentence}${served === undefined ? "" : ` serves ${served}`}`,
    );
    if (feeds && fed !== undefined) {
      outside.push(deviceLine(fed, { kind: feeds.kind, part: feeds.name }));
      // How long the lead will be nobody has said: what depends on it is not checked.
      outside.push(`run ${names.next("run")} from ${box.id}.${name} to ${fed}  // state its length and cable`);
    }
    if (!landing) continue;
    const run = asWritten(landing.run.declaration);
    const end = run[landing.end];
    if (!end || view.fragmentOf(run.place)?.broken !== false) return undefined;
    changes.push(replaced(end.place, `${box.id}.${name}${sideOf(box, landing.end)}`));
  }
  const inside = insertMembers(text, declaration, nested, memberBefore(declaration, devices));
  if (!inside) return undefined;
  changes.push(inside);
  if (outside.length > 0) changes.push(linesBehind(text, declaration.place, outside.join(lineEnding(text))));
  return changes;
}

/** A device on a board has one side for runs; the fuse of a combiner has two, and a bare name behind `from` means the other. */
function sideOf({ kind }: Item, end: "from" | "to"): string {
  return kind === "combiner" && end === "from" ? ".in" : "";
}

/**
 * Behind which member new devices stand: a way in the order of the numbers, what comes before the bar before all that is
 * nested, what runs land on behind it.
 */
function memberBefore(box: ItemDeclaration, devices: readonly NestedDevice[]): Property | ItemDeclaration | undefined {
  const members = membersOf(box);
  const way = devices[0]?.way;
  const follows = ({ way: own }: ItemDeclaration): boolean =>
    way === undefined || (own !== undefined && own.value > way);
  const isBehindAll = way === undefined && devices.some(({ landing }) => landing);
  const next = isBehindAll ? undefined : box.nested.find(follows);
  return members[(next ? members.indexOf(next) : members.length) - 1];
}
