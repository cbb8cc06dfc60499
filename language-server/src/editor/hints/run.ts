import * as l10n from "@vscode/l10n";
import type { Assessment } from "../../assessment/assessment.js";
import { runFigures } from "../../assessment/run-figures.js";
import type { RunDeclaration } from "../../design/model.js";
import { formatValue } from "../../physics/display.js";
import type { Derived } from "../../physics/figure.js";
import type { HintText } from "./hint.js";

/** As many digits as a cable's length is known with. */
const digits = 2;

/** `−1.8 V, 0.5 %, 24 W`: what a run loses, or by what it lifts the voltage of what feeds in. */
export function runHint(assessment: Assessment, { name }: RunDeclaration): HintText | undefined {
  const figures = runFigures(assessment, name);
  if (!figures) return undefined;
  const { is, voltage, share, loss } = figures;
  const parts = [`${is === "drop" ? "−" : "+"}${short(voltage)}`];
  if (share) parts.push(short(share));
  if (loss) parts.push(short(loss));
  return {
    label: parts.join(", "),
    tooltip:
      is === "drop"
        ? l10n.t("Voltage lost there and back at maximum power, its share of the string's voltage, and the power lost.")
        : l10n.t(
            "Rise of voltage against the supply when everything beyond feeds in, and its share of the nominal voltage.",
          ),
  };
}

function short({ value, dimension, unit }: Derived): string {
  return formatValue(value, dimension, unit, digits);
}
