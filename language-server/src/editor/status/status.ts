import * as l10n from "@vscode/l10n";
import type { Assessment } from "../../assessment/assessment.js";
import type { Severities } from "../../assessment/severities.js";
import { baseName } from "../../language/files.js";
import { counted } from "../counted.js";
import { type Verdict, verdictOf, verdictText } from "../lenses/verdict.js";
import { percent } from "../percent.js";
import type { WorkspaceView } from "../workspace-view.js";

/** One design in the few words that a status bar has room for. */
export interface DesignStatus {
  /** The file that it begins in. */
  readonly entry: string;
  readonly name: string;
  /** What a reader should look at first. */
  readonly sort: "findings" | "not-checked" | "nothing-found";
  /** "Alder Cottage: 2 findings, 3 not checked, tightest 94 %". */
  readonly text: string;
  /** The same as over the site, where there is room. */
  readonly sentence: string;
}

/** How each design that a file belongs to stands. A file without anything in it has nothing to say. */
export function statusOf(
  view: WorkspaceView,
  uri: string,
  severities: (entry: string) => Severities,
): readonly DesignStatus[] {
  return view
    .assessments(uri)
    .filter(({ design, problems }) => design.items.length > 0 || problems.length > 0)
    .map((assessment) => designStatus(assessment, severities(assessment.design.entry)));
}

function designStatus(assessment: Assessment, severities: Severities): DesignStatus {
  const { design, whatIf } = assessment;
  const verdict = verdictOf(assessment, severities);
  const name = nameOf(assessment);
  const say = (called: string, text: string): string =>
    whatIf ? l10n.t("{0}, what if: {1}", called, text) : l10n.t("{0}: {1}", called, text);
  return {
    entry: design.entry,
    name,
    sort: findings(verdict) > 0 ? "findings" : verdict.notChecked > 0 ? "not-checked" : "nothing-found",
    text: say(shortName(name), shortText(verdict)),
    sentence: say(name, verdictText(verdict)),
  };
}

/** The title of a design's site; the name of its file where it has none. */
export function nameOf({ design }: Assessment): string {
  return design.site?.declaration.title ?? baseName(design.entry);
}

/** A status bar is shared. */
function shortName(name: string): string {
  return name.length > 32 ? `${name.slice(0, 31).trimEnd()}…` : name;
}

function findings({ errors, warnings, notes }: Verdict): number {
  return errors + warnings + notes;
}

function shortText(verdict: Verdict): string {
  const { departures, notChecked, off, tightest } = verdict;
  const found = counted(findings(verdict), l10n.t("1 finding"), (count) => l10n.t("{0} findings", count));
  const departed = counted(departures, l10n.t("1 departure"), (count) => l10n.t("{0} departures", count));
  return [
    // A departure is a finding that somebody has answered for.
    found || departed ? found : l10n.t("nothing found"),
    departed,
    notChecked > 0 ? l10n.t("{0} not checked", notChecked) : "",
    off > 0 ? l10n.t("{0} switched off", off) : "",
    tightest ? l10n.t("tightest {0}", percent(tightest.share)) : "",
  ]
    .filter(Boolean)
    .join(", ");
}

/** A design that cannot be computed must not look like one without a finding. */
export function failedStatus(uri: string): DesignStatus {
  const name = baseName(uri);
  const text = l10n.t("{0}: could not be computed, nothing checked", name);
  return { entry: uri, name, sort: "findings", text, sentence: text };
}
