import { formatValue, statedDigits } from "../physics/display.js";
import type { Value } from "./model.js";

/** A value for people: `−10 °C`, `80 V..550 V`, `yes`, `"plant wall"`. */
export function valueText(value: Value): string {
  switch (value.kind) {
    case "quantity":
      return formatValue(value.si, value.dimension, value.unit, statedDigits);
    case "range":
      return `${valueText(value.low)}..${valueText(value.high)}`;
    case "flag":
      return value.value ? "yes" : "no";
    case "text":
      return `"${value.value}"`;
    case "list":
      return `[${value.values.map(valueText).join(", ")}]`;
    default:
      return value.value;
  }
}
