import * as l10n from "@vscode/l10n";
import type { Assessment } from "../../assessment/assessment.js";
import type { Line } from "../../circuit/plant.js";
import type { Item } from "../../design/things.js";
import type { Figure } from "../../physics/figure.js";
import { formatFigure } from "../../physics/working.js";
import { type Compared, comparedIn } from "../compared.js";
import { checksOf } from "../things-of.js";
import type { HintText } from "./hint.js";

const acProtection = "ac-protection";

/**
 * `Ib 19.1 A ≤ In 25 A ≤ Iz 36.5 A` for a device that inverters or new loads lie behind. A sign that does not hold is
 * turned round; a term that is not known is left out.
 */
export function deviceHint(assessment: Assessment, device: Item): HintText | undefined {
  const checks = checksOf(assessment, device).filter(({ rule }) => rule.id === acProtection);
  // In stands on the right where a current is held against it; elsewhere it is itself held against a maker's limit.
  const currents = checks.flatMap(comparedIn).filter(({ limit }) => isRatingOf(limit, device));
  if (currents.length === 0) return undefined;
  const most = currents.reduce((a, b) => (b.value.value > a.value.value ? b : a));
  const capacity = leastCapacity(assessment, device);
  const terms: [string, Figure][] = [
    ["Ib", most.value],
    ["In", most.limit],
  ];
  if (capacity) terms.push(["Iz", capacity.limit]);
  const label = terms
    .map(([symbol, figure], index) => `${sign(terms, index)}${symbol} ${formatFigure(figure)}`)
    .join("");
  const where =
    capacity?.check.thing.is === "run" ? l10n.t(", Iz what {0} carries as it is laid", capacity.check.thing.id) : "";
  const direction = most.against ? ` (${most.against})` : "";
  return {
    label,
    tooltip: l10n.t("Ib is the most that flows{0}, In the rating of {1}{2}.", direction, device.id, where),
  };
}

function sign(terms: readonly [string, Figure][], index: number): string {
  const before = terms[index - 1]?.[1];
  if (!before) return "";
  return before.value <= terms[index]![1].value ? " ≤ " : " > ";
}

function isRatingOf(figure: Figure, device: Item): boolean {
  if (figure.kind !== "given") return false;
  const { text } = figure.origin;
  return [device.id, device.part?.name].some((name) => name !== undefined && text.startsWith(`${name}, rated-current`));
}

/** The run behind a device that carries least. */
function leastCapacity(assessment: Assessment, device: Item): Compared | undefined {
  const lines: Line[] = assessment.plants
    .flatMap((plant) => plant.lines)
    .filter(({ protectedBy }) => protectedBy?.id === device.id);
  const compared = lines.flatMap(({ run }) =>
    checksOf(assessment, run)
      .filter(({ rule }) => rule.id === acProtection)
      .flatMap(comparedIn),
  );
  return compared.reduce<Compared | undefined>(
    (least, one) => (!least || one.limit.value < least.limit.value ? one : least),
    undefined,
  );
}
