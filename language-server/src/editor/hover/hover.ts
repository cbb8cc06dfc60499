import * as l10n from "@vscode/l10n";
import { problemTitles } from "../../assessment/problem-ids.js";
import { meaningOf } from "../../design/schema/index.js";
import { findProperty } from "../../design/things.js";
import { absolute } from "../../place.js";
import { declarationOf } from "../bindings.js";
import { type Located, locate } from "../locate.js";
import { code, kindText, plain, propertyText, ruleText } from "../markdown.js";
import { type Span, usedFile } from "../navigate.js";
import { ruleOf } from "../rule-of.js";
import { type NamedDeclaration, thingsOf } from "../things-of.js";
import { whatIfMarks } from "../what-if/marks.js";
import type { PlacedNotice, WorkspaceView } from "../workspace-view.js";
import { answerText } from "./answer.js";
import { type Links, marginText, workingText } from "./check.js";
import { quantityText } from "./quantity.js";
import { thingText, valueText } from "./thing.js";

export interface Hover {
  readonly span: Span;
  readonly markdown: string;
}

/** So many things are described where one block of a parts file stands for several. */
const shownThings = 3;

/** What there is to say about the word at an offset: why it is marked, then what it is. Markdown. */
export function hoverAt(view: WorkspaceView, uri: string, offset: number, links: Links): Hover | undefined {
  const located = locate(view.sources.fragments(uri), offset);
  const parts = whatIfMarks(view, uri)
    .filter(({ span }) => span.start <= offset && offset <= span.end)
    .map(({ message }) => plain(message));
  const marked = noticesAt(view, uri, offset);
  const about = located ? wordText(view, uri, located, links) : undefined;
  // Why it is marked: the message itself is shown beside the hover by the editor, here is how it was worked out.
  if (!located || !showsChecks(located)) for (const placed of marked) parts.push(reasonText(placed, links));
  if (about) parts.push(about);
  const text = parts.filter(Boolean).join("\n\n---\n\n");
  const place = located?.place ?? marked[0]?.notice.place;
  return text === "" || !place ? undefined : { span: absolute(place), markdown: text };
}

function noticesAt(view: WorkspaceView, uri: string, offset: number): PlacedNotice[] {
  return view.notices(uri).filter(({ notice }) => {
    const { start, end } = absolute(notice.place);
    return start <= offset && offset <= end && notice.check !== undefined;
  });
}

/** Whether the word's own text already lists the checks of the thing. */
function showsChecks({ word }: Located): boolean {
  if (word.is === "mention") return word.role !== "part" && word.role !== "cable" && word.role !== "value";
  return word.is === "name" || word.is === "count" || word.is === "length";
}

function reasonText({ notice: { check }, assessment }: PlacedNotice, links: Links): string {
  if (!check) return "";
  const { outcome, rule } = check;
  const finding = outcome.outcome === "departure" ? outcome.finding : outcome;
  const lines = [ruleText(rule, links.docs)];
  if (finding.outcome === "finding") {
    const margin = marginText(finding);
    if (margin) lines.push(plain(margin));
  }
  if (outcome.outcome === "departure")
    lines.push(l10n.t("Departed from. Reason given: {0}", plain(outcome.departure.reason)));
  lines.push(workingText([check], assessment.ruleSet.id, links));
  return lines.filter(Boolean).join("\n\n");
}

function wordText(view: WorkspaceView, uri: string, located: Located, links: Links): string | undefined {
  const { word } = located;
  switch (word.is) {
    case "kind":
      return word.row && kindText(word.row);
    case "rule": {
      const rule = ruleOf(word.rule);
      const problem = problemTitles[word.rule];
      if (rule) return [ruleText(rule, links.docs), answered(view, uri, located, links)].filter(Boolean).join("\n\n");
      return problem && `**${word.rule}**: ${plain(problem)}`;
    }
    case "use":
      return useText(view, uri, word.declaration.path);
    case "property":
      return propertyHover(view, uri, located, word);
    case "value":
      return valueHover(word);
    case "name":
    case "mention":
    case "count":
    case "length":
      return namedText(view, uri, located, links);
  }
}

/** Of the first design that knows what a departure or an expectation is about. */
function answered(view: WorkspaceView, uri: string, { declaration }: Located, links: Links): string | undefined {
  if (declaration.declares !== "departure" && declaration.declares !== "expect") return undefined;
  for (const assessment of view.assessments(uri)) {
    const text = answerText(assessment, declaration, links);
    if (text) return text;
  }
  return undefined;
}

function namedText(view: WorkspaceView, uri: string, located: Located, links: Links): string | undefined {
  const { word } = located;
  const texts: string[] = [];
  if (word.is === "length") texts.push(quantityText(word.quantity) ?? "");
  for (const assessment of view.assessments(uri)) {
    const declaration: NamedDeclaration | undefined =
      word.is === "count" || word.is === "length" || word.is === "name"
        ? word.declaration
        : declarationOf(assessment, located, located.segment);
    if (!declaration) continue;
    for (const thing of thingsOf(assessment.design).of(declaration)) {
      if (texts.length > shownThings) break;
      const text = thingText(assessment, thing, links);
      if (!texts.includes(text)) texts.push(text);
    }
  }
  return texts.filter(Boolean).join("\n\n---\n\n") || undefined;
}

function propertyHover(
  view: WorkspaceView,
  uri: string,
  { owners }: Located,
  word: Extract<Located["word"], { is: "property" }>,
): string | undefined {
  if (!word.row) return undefined;
  const lines = [propertyText(word.row)];
  const declaration = owners[owners.length - 1]?.declaration;
  // What the item's own statement overrides is worth knowing where both are written.
  if (declaration?.declares === "item") {
    for (const assessment of view.assessments(uri)) {
      const [thing] = thingsOf(assessment.design).of(declaration);
      if (thing?.is !== "item" || !thing.part) continue;
      const beneath = findProperty(thing.part, word.property.name);
      if (beneath) lines.push(l10n.t("The sheet of {0} says {1}.", beneath.label, code(valueText(beneath.property))));
      break;
    }
  }
  return lines.join("\n\n");
}

function valueHover({ property, row }: Extract<Located["word"], { is: "value" }>): string | undefined {
  const lines: string[] = [];
  const quantity = property.value && quantityText(property.value);
  if (quantity) lines.push(quantity);
  if (row) lines.push(quantity ? `${code(row.name)}: ${meaningOf(row)}` : propertyText(row));
  if (property.statedBy) lines.push(l10n.t("Stated by: {0}", plain(property.statedBy)));
  return lines.join("\n\n") || undefined;
}

function useText(view: WorkspaceView, uri: string, path: string): string | undefined {
  const used = usedFile(view, uri, path);
  if (used === undefined) return undefined;
  const names: string[] = [];
  for (const { declarations } of view.sources.fragments(used))
    for (const one of declarations)
      if (one.declares === "part" || one.declares === "item") names.push(`${one.name} (${one.kind})`);
  const shown = names.slice(0, 20).map(plain).join(", ");
  const more = names.length > 20 ? ` ${l10n.t("and {0} more", names.length - 20)}` : "";
  return names.length === 0
    ? l10n.t("A file that declares no part and no item.")
    : l10n.t("Declares {0}{1}.", shown, more);
}
