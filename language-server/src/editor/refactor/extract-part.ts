import * as l10n from "@vscode/l10n";
import type { ItemDeclaration } from "../../design/model.js";
import { type KindRow, kindRow, partRow, propertyRow } from "../../design/schema/index.js";
import { absolute } from "../../place.js";
import { indentStep, lineEnding } from "../edits/layout.js";
import { FreshNames } from "./fresh-names.js";
import { linesOfMembers, type Member, membersOf, withoutMembers } from "./members.js";
import { partName } from "./part-name.js";
import type { Asked, Refactoring } from "./refactoring.js";
import { linesBefore } from "./stretch.js";

/**
 * What an item states as a data sheet would becomes a part of its own, which the item then is. What is said of the one
 * thing on the wall stays with it.
 */
export function extractPart({ text, uri, declaration, start, end, designs }: Asked): Refactoring[] {
  if (declaration.declares !== "item") return [];
  const item = innermost(declaration, start, end);
  const row = partRow(item.kind);
  if (item.part || item.count || !row || item.namePlace.from === item.kindPlace.from) return [];
  const moved = membersOf(item).filter((member) => isOnSheets(member, item.kind, row));
  if (!moved.some((member) => !("declares" in member))) return [];
  const name = new FreshNames(designs).speaking(partName(item, row));
  const ending = lineEnding(text);
  const lines = linesOfMembers(text, moved, indentStep(text));
  const head = `part ${name} is `;
  const sheet = linesBefore(text, declaration.place, `${head}${item.kind} {${ending}${lines}${ending}}${ending}`);
  const { end: named } = absolute(item.namePlace);
  const isA = { uri, start: named, end: named, text: ` is ${name}` };
  return [
    {
      title: l10n.t("Make a part of what {0} states as a data sheet would: {1}", item.name, name),
      kind: "refactor.extract",
      changes: [sheet, isA, ...withoutMembers(text, item, new Set(moved))],
      naming: { uri, start: sheet.start + sheet.text.indexOf(head) + "part ".length },
    },
  ];
}

function innermost(declaration: ItemDeclaration, start: number, end: number): ItemDeclaration {
  for (const nested of declaration.nested) {
    const whole = absolute(nested.place);
    if (whole.start <= start && end <= whole.end) return innermost(nested, start, end);
  }
  return declaration;
}

/** A sheet has its ports and figures; what is wired into a device on site is not on it. */
function isOnSheets(member: Member, kind: string, row: KindRow): boolean {
  if ("declares" in member) return kindRow(member.kind, kind)?.within !== undefined;
  const property = propertyRow(row, member.name);
  return property !== undefined && property.onSite !== true;
}
