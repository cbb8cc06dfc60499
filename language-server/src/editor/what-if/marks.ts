import type { Assessment, Check } from "../../assessment/assessment.js";
import { suppositionText } from "../../assessment/what-if-text.js";
import { absolute } from "../../place.js";
import type { Mark } from "../diagnostics.js";
import type { WorkspaceView } from "../workspace-view.js";

/** Id of the marks that say what is supposed. */
export const whatIfId = "what-if";

/** The message of something that is not true of the text as it is begins by saying so. */
export function markedWhatIf(message: string, checks: readonly Check[], { whatIf }: Assessment): string {
  return whatIf && checks.some((check) => whatIf.isHypothetical(check)) ? `What if: ${message}` : message;
}

/** What is supposed, at the words in place of which it is; what cannot be supposed any more, at the head of its design. */
export function whatIfMarks(view: WorkspaceView, uri: string): Mark[] {
  const marks = new Map<string, Mark>();
  for (const { whatIf, design } of view.assessments(uri)) {
    for (const supposition of whatIf?.suppositions ?? []) {
      const { place } = supposition;
      if (place.chunk.uri !== uri || !view.isLive(place)) continue;
      const message = `What if ${suppositionText(supposition)}. Results are computed with it; the text does not say so, and is not changed.`;
      marks.set(message, mark(absolute(place), message));
    }
    if (design.entry !== uri) continue;
    for (const { message } of whatIf?.refusals ?? [])
      marks.set(message, mark({ uri, start: 0, end: 1 }, `Cannot be supposed any more: ${message}`));
  }
  return [...marks.values()];
}

function mark(span: Mark["span"], message: string): Mark {
  return { span, severity: "note", id: whatIfId, message, unnecessary: false, related: [] };
}
