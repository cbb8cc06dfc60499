import { label } from "../../design/facts.js";
import type { Thing } from "../../design/things.js";
import { absolute } from "../../place.js";
import type { WorkspaceView } from "../workspace-view.js";
import type { Change } from "./change.js";
import { lineEnding, openLineEnd } from "./layout.js";

/**
 * A line that departs from a rule, behind the declaration of the thing, its reason left empty: an empty reason is an
 * error, so nothing is departed from until somebody says why. For a thing on a part's sheet the line goes behind the
 * item of that part; `entry` is the design that the finding belongs to.
 */
export function departureEdit(view: WorkspaceView, rule: string, thing: Thing, entry: string): Change | undefined {
  const line = `departure ${rule} on ${label(thing)} because ""`;
  const place = topDeclaration(thing).place;
  if (thing.is === "part" || !view.isLive(place)) return atEnd(view, entry, line);
  const { uri, end } = absolute(place);
  const text = view.sources.text(uri);
  if (text === undefined) return undefined;
  const at = openLineEnd(text, end);
  const ending = lineEnding(text);
  // Another declaration on the same line stays behind the new one.
  if (at === undefined) return { uri, start: end, end, text: `${ending}${line}${ending}` };
  return { uri, start: at, end: at, text: `${ending}${line}` };
}

function atEnd(view: WorkspaceView, uri: string, line: string): Change | undefined {
  const text = view.sources.text(uri);
  if (text === undefined) return undefined;
  const ending = lineEnding(text);
  const gap = text === "" || /[\r\n]$/.test(text) ? "" : ending;
  return { uri, start: text.length, end: text.length, text: `${gap}${line}${ending}` };
}

function topDeclaration(thing: Thing): Thing["declaration"] {
  let top = thing;
  while (top.is === "item" && top.parent) top = top.parent;
  return top.declaration;
}
