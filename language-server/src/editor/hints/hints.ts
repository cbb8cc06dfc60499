import * as l10n from "@vscode/l10n";
import type { Assessment } from "../../assessment/assessment.js";
import type { Declaration, ItemDeclaration, RunDeclaration } from "../../design/model.js";
import type { Place } from "../../place.js";
import type { HintSettings } from "../settings.js";
import { thingsOf } from "../things-of.js";
import type { WorkspaceView } from "../workspace-view.js";
import { deviceHint } from "./device.js";
import type { HintText } from "./hint.js";
import { readingHint } from "./reading.js";
import { runHint } from "./run.js";
import { stringHint } from "./string.js";

/** A computed figure beside the text it belongs to. Offset in its file. */
export interface InlayHint extends HintText {
  readonly offset: number;
}

/** The figures of a stretch of a file, in the order of its text. A line that cannot be read has none. */
export function hintsIn(
  view: WorkspaceView,
  uri: string,
  start: number,
  end: number,
  wanted: HintSettings,
): InlayHint[] {
  const hints: InlayHint[] = [];
  const assessments = view.assessments(uri);
  for (const { chunk, broken, declarations } of view.sources.fragments(uri)) {
    if (broken || chunk.start > end) continue;
    for (const declaration of declarations) {
      const { place } = declaration;
      if (chunk.start + place.from > end || chunk.start + place.to < start) continue;
      // Where several designs use a file, the first one's figures are shown: two figures at one word help nobody.
      for (const assessment of assessments) {
        const found = markedHints(assessment, declaration, wanted);
        for (const { at, text } of found) hints.push({ ...text, offset: chunk.start + at.to });
        if (found.length > 0) break;
      }
    }
  }
  return hints.filter(({ offset }) => offset >= start && offset <= end).sort((a, b) => a.offset - b.offset);
}

interface PlacedText {
  readonly at: Place;
  readonly text: HintText;
}

/** The hints of a declaration; those that are not of the text as it is say so. */
function markedHints(assessment: Assessment, declaration: Declaration, wanted: HintSettings): PlacedText[] {
  const found = [...hintsOf(assessment, declaration, wanted)];
  const { whatIf } = assessment;
  if (!whatIf) return found;
  const written = new Set([...hintsOf(whatIf.asWritten, declaration, wanted)].map(({ text }) => text.label));
  return found.map(({ at, text }) =>
    written.has(text.label) ? { at, text } : { at, text: { ...text, label: l10n.t("{0} (what if)", text.label) } },
  );
}

function* hintsOf(assessment: Assessment, declaration: Declaration, wanted: HintSettings): Generator<PlacedText> {
  if (declaration.declares === "run" && wanted.runs)
    yield* beside(runHint(assessment, declaration), headEnd(declaration));
  if (declaration.declares === "measured" && wanted.tests) yield* readingHint(assessment, declaration);
  if (declaration.declares === "item") yield* itemHints(assessment, declaration, wanted);
}

function* itemHints(assessment: Assessment, declaration: ItemDeclaration, wanted: HintSettings): Generator<PlacedText> {
  const [thing] = thingsOf(assessment.design).of(declaration);
  if (thing?.is === "item") {
    if (wanted.strings && thing.kind === "string") yield* beside(stringHint(assessment, thing), headEnd(declaration));
    if (wanted.devices) yield* beside(deviceHint(assessment, thing), headEnd(declaration));
  }
  for (const nested of declaration.nested) yield* itemHints(assessment, nested, wanted);
}

function* beside(text: HintText | undefined, at: Place): Generator<PlacedText> {
  if (text) yield { at, text };
}

/** The last word before the braces. */
function headEnd(declaration: ItemDeclaration | RunDeclaration): Place {
  if (declaration.declares === "run") return declaration.cable?.place ?? declaration.to?.place ?? declaration.namePlace;
  return declaration.part?.place ?? declaration.namePlace;
}
