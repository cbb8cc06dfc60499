import * as l10n from "@vscode/l10n";
import type { Assessment, Check } from "../../assessment/assessment.js";
import type { Property, ReadingDeclaration } from "../../design/model.js";
import { type Figure, givens } from "../../physics/figure.js";
import { formatFigure } from "../../physics/working.js";
import type { Place } from "../../place.js";
import { comparedIn } from "../compared.js";
import { checksOf, thingsOf } from "../things-of.js";
import type { HintText } from "./hint.js";

/** `expected 405.8 V` beside a measured value, in the words of the check that it was held against. */
export function* readingHint(
  assessment: Assessment,
  declaration: ReadingDeclaration,
): Generator<{ readonly at: Place; readonly text: HintText }> {
  // They are reported under what was measured; which reading a figure is from is told by its place.
  const item = assessment.design.readings.find((reading) => reading.declaration === declaration)?.item;
  const target = item ?? thingsOf(assessment.design).runs.get(declaration.target.path.join("."));
  if (!target) return;
  const checks = checksOf(assessment, target);
  for (const property of declaration.properties) {
    for (const check of checks) {
      const text = expectation(check, property);
      if (!text) continue;
      yield { at: property.valuePlace, text };
      break;
    }
  }
}

function expectation(check: Check, { value, valuePlace }: Property): HintText | undefined {
  if (value?.kind !== "quantity") return undefined;
  for (const { value: found, limit, share } of comparedIn(check)) {
    const isRead = [found, limit].some((figure) =>
      [...givens(figure)].some(({ origin }) => origin.place === valuePlace),
    );
    if (!isRead) continue;
    const expected = expectedIn(found, value.dimension) ?? expectedIn(limit, value.dimension);
    if (expected)
      return {
        label: l10n.t("expected {0}", formatFigure(expected)),
        tooltip: l10n.t("What the design gives under these conditions ({0}).", check.rule.id),
      };
    if (limit.dimension === value.dimension && found.dimension === value.dimension)
      return {
        label: isLeast(found, limit, share)
          ? l10n.t("at least {0}", formatFigure(limit))
          : l10n.t("limit {0}", formatFigure(limit)),
        tooltip: l10n.t("Held against this limit ({0}).", check.rule.id),
      };
  }
  return undefined;
}

/** Whether a limit is a lower bound: what holds is then above it, and what does not is below. */
function isLeast(found: Figure, limit: Figure, share: number): boolean {
  return found.value !== limit.value && found.value > limit.value === share < 1;
}

/** The figure that a reading was expected to have: the physics calls it `Uoc,exp`, as the term of a comparison `Xexp`. */
function expectedIn(figure: Figure, dimension: Figure["dimension"]): Figure | undefined {
  if (figure.kind === "given") return undefined;
  if (figure.dimension === dimension && figure.symbol.endsWith("exp")) return figure;
  for (const term of figure.terms) {
    const found = expectedIn(term, dimension);
    if (found) return found;
  }
  return undefined;
}
