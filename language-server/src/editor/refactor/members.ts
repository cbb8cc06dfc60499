import type { ItemDeclaration, Property } from "../../design/model.js";
import { absolute } from "../../place.js";
import type { Change } from "../edits/change.js";
import { indentAt, lineEnding, lineStart } from "../edits/layout.js";
import { type Stretch, stretchOf } from "./stretch.js";

export type Member = Property | ItemDeclaration;

/** What stands between the braces of a block, in the order of its text. */
export function membersOf({
  properties,
  nested,
}: {
  readonly properties: readonly Property[];
  readonly nested: readonly ItemDeclaration[];
}): Member[] {
  return [...properties, ...nested].sort((a, b) => a.place.from - b.place.from);
}

/** Takes members out of a block, with the comments that belong to them; the braces too where nothing stays in them. */
export function withoutMembers(
  text: string,
  block: Pick<ItemDeclaration, "properties" | "nested" | "bodyPlace">,
  out: ReadonlySet<Member>,
): Change[] {
  const { bodyPlace } = block;
  if (!bodyPlace || out.size === 0) return [];
  const body = absolute(bodyPlace);
  const members = membersOf(block);
  const gone = members.filter((member) => out.has(member)).map((member) => memberStretch(text, member));
  if (members.every((member) => out.has(member)) && leftIn(text, body.start + 1, body.end - 1, gone) === "") {
    const blanks = /[ \t]*$/.exec(text.slice(lineStart(text, body.start), body.start))?.[0].length ?? 0;
    return [{ uri: body.uri, start: body.start - blanks, end: body.end, text: "" }];
  }
  return members.flatMap((member, index): Change[] => {
    if (!out.has(member)) return [];
    const stretch = memberStretch(text, member);
    if (stretch.isWhole) return [{ uri: body.uri, start: stretch.start, end: stretch.end, text: "" }];
    return [{ uri: body.uri, ...withGap(text, members, index, out), text: "" }];
  });
}

/** The lines of some members as they would stand one step in, comments included. */
export function linesOfMembers(text: string, members: readonly Member[], step: string): string {
  const ending = lineEnding(text);
  return members.map((member) => indented(text, memberStretch(text, member), step, ending)).join(ending);
}

function memberStretch(text: string, member: Member): Stretch {
  return stretchOf(text, member.place);
}

function indented(text: string, { start, end, isWhole }: Stretch, step: string, ending: string): string {
  const lines = text
    .slice(start, end)
    .trimEnd()
    .split(/\r\n|\r|\n/);
  const outer = isWhole ? indentAt(text, start) : indentAt(text, lineStart(text, start));
  return lines.map((line) => `${step}${line.startsWith(outer) ? line.slice(outer.length) : line}`).join(ending);
}

/** What stays of a stretch of text without some of its parts. */
function leftIn(text: string, start: number, end: number, gone: readonly Stretch[]): string {
  let left = "";
  let at = start;
  for (const each of gone) {
    left += text.slice(at, Math.max(at, each.start));
    at = Math.max(at, Math.min(each.end, end));
  }
  return (left + text.slice(at, end)).trim();
}

/** A member on a line with others: the blanks up to the next go with it, or those before it where it is the last. */
function withGap(
  text: string,
  members: readonly Member[],
  index: number,
  out: ReadonlySet<Member>,
): { start: number; end: number } {
  const { start, end } = absolute(members[index]!.place);
  const next = members[index + 1];
  if (next) {
    const until = absolute(next.place).start;
    if (/^[ \t]*$/.test(text.slice(end, until))) return { start, end: until };
  }
  // Those directly before it that go as well have taken the blanks up to here.
  let before = index - 1;
  while (before >= 0 && out.has(members[before]!)) before--;
  const kept = members[before];
  const blanks = /[ \t]*$/.exec(text.slice(0, start))?.[0].length ?? 0;
  return before === index - 1 && kept ? { start: start - blanks, end } : { start, end };
}
