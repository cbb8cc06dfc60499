import * as l10n from "@vscode/l10n";
import { suppositionText } from "../../assessment/what-if-text.js";
import { type Hypothesis, readHypothesis } from "../../design/what-if/hypothesis.js";
import { Overlay, type Supposition } from "../../design/what-if/overlay.js";
import type { WorkspaceView } from "../workspace-view.js";

/** What a text supposes of the designs of a file: how to say it, and how to lay it over them. */
export interface Supposed {
  readonly overlay: Overlay;
  /** Files of the designs that it is about. */
  readonly entries: readonly string[];
  /** "S1.count = 12 (written: 11)". */
  readonly texts: readonly string[];
}

/**
 * Reads `site.lowest-temperature = -15 degC; S1.count = 12` for the designs that a file belongs to; a message where it
 * makes no sense there. Of several designs it is about those that have something of every name.
 */
export function supposed(view: WorkspaceView, uri: string, text: string): Supposed | string {
  const hypotheses: Hypothesis[] = [];
  for (const piece of pieces(text)) {
    const hypothesis = readHypothesis(piece);
    if (typeof hypothesis === "string") return hypothesis;
    const { target, property } = hypothesis;
    const name = [...target, property].join(".");
    if (hypotheses.some((other) => [...other.target, other.property].join(".") === name))
      return l10n.t("{0} is supposed twice. Suppose one value at a time.", name);
    hypotheses.push(hypothesis);
  }
  if (hypotheses.length === 0) return l10n.t("Write TARGET.PROPERTY = VALUE, for example S1.count = 12.");
  const overlay = new Overlay(hypotheses);
  const entries: string[] = [];
  const told = new Map<string, Supposition>();
  let why: string | undefined;
  for (const entry of view.entries(uri)) {
    const { suppositions, refusals } = overlay.over(view.filesOf(entry));
    if (refusals[0]) why ??= refusals[0].message;
    else {
      entries.push(entry);
      for (const one of suppositions) told.set(suppositionText(one), one);
    }
  }
  if (entries.length === 0) return why ?? l10n.t("There is no design here.");
  return { overlay, entries, texts: [...told.keys()] };
}

/** Hypotheses with semicolons between them; one inside quotation marks belongs to its text. */
function pieces(text: string): string[] {
  return (text.match(/(?:"[^"]*"|[^;"]|")+/g) ?? []).map((piece) => piece.trim()).filter(Boolean);
}
