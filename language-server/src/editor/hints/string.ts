import * as l10n from "@vscode/l10n";
import type { Assessment } from "../../assessment/assessment.js";
import type { Item } from "../../design/things.js";
import { formatApart } from "../../physics/working.js";
import { comparedIn, tightestOf } from "../compared.js";
import { percent } from "../percent.js";
import { checksOf } from "../things-of.js";
import type { HintText } from "./hint.js";

/** `Uoc 461.6 V cold, 77 % of 600 V`: the open-circuit voltage against whatever on the way stands least. */
export function stringHint(assessment: Assessment, string: Item): HintText | undefined {
  const compared = checksOf(assessment, string)
    .filter(({ rule }) => rule.id === "string-voltage")
    .flatMap(comparedIn);
  const tightest = tightestOf(compared);
  if (!tightest) return undefined;
  const [voltage, limit] = formatApart(tightest.value, tightest.limit);
  const against = tightest.against ? l10n.t(", the least that anything on its way stands ({0})", tightest.against) : "";
  return {
    label: l10n.t("Uoc {0} cold, {1} of {2}", voltage, percent(tightest.share), limit),
    tooltip: l10n.t(
      "Open-circuit voltage at the lowest temperature; {0} of {1}{2}.",
      percent(tightest.share),
      limit,
      against,
    ),
  };
}
