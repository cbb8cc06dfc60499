import * as l10n from "@vscode/l10n";
import type { Assessment } from "../../assessment/assessment.js";
import { noSeverities, type Severities } from "../../assessment/severities.js";
import { stringBand } from "../../assessment/string-band.js";
import { asWritten } from "../../design/as-written.js";
import type { Declaration, ItemDeclaration, PartDeclaration } from "../../design/model.js";
import { formatApart, formatFigure } from "../../physics/working.js";
import { absolute } from "../../place.js";
import type { Span } from "../navigate.js";
import { thingsOf } from "../things-of.js";
import type { WorkspaceView } from "../workspace-view.js";
import { verdictOf, verdictText } from "./verdict.js";

/** A line of its own above a declaration. */
export interface Lens {
  readonly span: Span;
  readonly title: string;
}

/** The verdict over a site, the voltages of each string against its tracker's, and over a part how far it is used. */
export function lensesOf(
  view: WorkspaceView,
  uri: string,
  severities: (entry: string) => Severities = () => noSeverities,
): Lens[] {
  const lenses: Lens[] = [];
  const assessments = view.assessments(uri);
  for (const { broken, declarations } of view.sources.fragments(uri)) {
    if (broken) continue;
    for (const declaration of declarations) {
      const title = titleOf(assessments, declaration, severities);
      if (title !== undefined) lenses.push({ span: spanOf(declaration), title });
    }
  }
  return lenses;
}

function spanOf(declaration: Declaration): Span {
  return absolute("namePlace" in declaration ? declaration.namePlace : declaration.place);
}

function titleOf(
  assessments: readonly Assessment[],
  declaration: Declaration,
  severities: (entry: string) => Severities,
): string | undefined {
  if (declaration.declares === "part") return useText(assessments, declaration);
  if (declaration.declares !== "item") return undefined;
  for (const assessment of assessments) {
    const title = itemTitle(assessment, declaration, severities);
    if (title === undefined) continue;
    const { whatIf } = assessment;
    return whatIf && itemTitle(whatIf.asWritten, declaration, severities) !== title
      ? l10n.t("what if: {0}", title)
      : title;
  }
  return undefined;
}

function itemTitle(
  assessment: Assessment,
  declaration: ItemDeclaration,
  severities: (entry: string) => Severities,
): string | undefined {
  if (!owns(assessment, declaration)) return undefined;
  if (declaration.kind === "site") return verdictText(verdictOf(assessment, severities(assessment.design.entry)));
  return declaration.kind === "string" ? bandText(assessment, declaration.name) : undefined;
}

function owns({ design }: Assessment, declaration: ItemDeclaration): boolean {
  return thingsOf(design).of(declaration).length > 0;
}

/** `works at 268.1 to 403.2 V; INV.pv1 tracks 80 to 550 V`. */
function bandText(assessment: Assessment, name: string): string | undefined {
  const band = stringBand(assessment, name);
  if (!band) return undefined;
  const { hot, cold, tracker, low, high } = band;
  const [lowest] = formatApart(hot, low);
  const [highest] = formatApart(cold, high);
  const outside = [
    hot.value < low.value ? l10n.t("below it when hot") : "",
    cold.value > high.value ? l10n.t("above it when cold") : "",
  ].filter(Boolean);
  const verdict = outside.length > 0 ? `: ${outside.join(", ")}` : "";
  const window = l10n.t(
    "works at {0} hot to {1} cold; {2} tracks {3} to {4}",
    lowest,
    highest,
    tracker.id,
    formatFigure(low),
    formatFigure(high),
  );
  return `${window}${verdict}`;
}

/** In how many designs a part is used. Designs are counted by their site; a file without one counts as a design too. */
function useText(assessments: readonly Assessment[], declaration: PartDeclaration): string {
  const users = assessments.filter(({ design }) => isUsed(design, declaration));
  if (users.length === 0) return l10n.t("used by no site");
  const items = users.reduce((sum, { design }) => sum + usesOf(design, declaration), 0);
  const sites = users.length === 1 ? l10n.t("used by 1 site") : l10n.t("used by {0} sites", users.length);
  const times = items === 1 ? l10n.t("1 time") : l10n.t("{0} times", items);
  return `${sites}, ${times}`;
}

function isUsed(design: Assessment["design"], declaration: PartDeclaration): boolean {
  return usesOf(design, declaration) > 0;
}

const uses = new WeakMap<Assessment["design"], ReadonlyMap<PartDeclaration, number>>();

function usesOf(design: Assessment["design"], declaration: PartDeclaration): number {
  let known = uses.get(design);
  if (!known) {
    known = countUses(design);
    uses.set(design, known);
  }
  return known.get(declaration) ?? 0;
}

function countUses(design: Assessment["design"]): Map<PartDeclaration, number> {
  const counts = new Map<PartDeclaration, number>();
  const add = (declaration: PartDeclaration | undefined): void => {
    if (!declaration) return;
    const own = asWritten(declaration);
    counts.set(own, (counts.get(own) ?? 0) + 1);
  };
  const look = (items: Assessment["design"]["items"]): void => {
    for (const item of items) {
      add(item.part?.declaration);
      look(item.children);
    }
  };
  look(design.items);
  for (const run of design.runs) add(run.cable?.declaration);
  return counts;
}
