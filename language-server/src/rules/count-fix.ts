import { label } from "../design/facts.js";
import type { Item } from "../design/things.js";
import type { Figure } from "../physics/figure.js";
import { formatFigure } from "../physics/working.js";
import { coldVoltage, moduleOf, modulesInSeries } from "./array-figures.js";
import type { Judge } from "./judge.js";
import { percent } from "./part-fixes.js";
import type { Fix } from "./rule.js";

/** Sets a string's module count to one that holds; says the open-circuit voltage and its share of a limit after it. */
export function countFix(string: Item, count: number, limit: Figure, judge: Judge): Fix[] {
  if (count < 1 || count === string.count) return [];
  const voltage = coldVoltage(modulesInSeries(string, count), moduleOf(string), judge);
  return [
    {
      title: `Set ${string.id} to ${count} x ${label(moduleOf(string))}`,
      preview: `${count} modules: ${formatFigure(voltage)}, ${percent(voltage.value / limit.value)}`,
      does: "set-count",
      thing: string,
      count,
    },
  ];
}
