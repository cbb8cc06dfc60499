import { given, givenRange, wordOf } from "../design/facts.js";
import type { Item, Part } from "../design/things.js";
import { bankCurrent, bankVoltage, type Joined } from "../physics/battery.js";
import type { Figure, Given } from "../physics/figure.js";
import { formatFigure } from "../physics/working.js";
import { unitsOf, voltagesOf, type WiredBattery } from "./battery-figures.js";
import type { Judge } from "./judge.js";
import { partFixes, percent } from "./part-fixes.js";
import type { Fix } from "./rule.js";

/** The most units in series that stay within the port's range. */
export function otherCount({ view, port, together }: WiredBattery, judge: Judge): Fix[] {
  const { battery } = view;
  const range = judge.range(port, "voltage-range");
  const one = judge.range(battery, "voltage-range");
  if (!battery.part || !range || !one || judge.word(battery, "joined") !== "in-series" || together.length > 1)
    return [];
  const count = Math.floor(range.high.value / one.high.value + 1e-9);
  if (count < 1 || count === battery.count || count * one.low.value < range.low.value) return [];
  const { lowest, highest } = voltagesOf(battery, judge, unitsOf(battery, count));
  return [
    {
      title: `Set ${battery.id} to ${count} x ${battery.part.name}`,
      preview: `${count} units: ${formatFigure(lowest)} to ${formatFigure(highest)}`,
      does: "set-count",
      thing: battery,
      count,
    },
  ];
}

/** More units in parallel, as many as the port asks for and the maker allows. */
export function moreUnits(battery: Item, asked: Figure, judge: Judge): Fix[] {
  const one = judge.quantity(battery, "max-current");
  const most = judge.quantity(battery, "max-units-in-parallel");
  const joined = judge.word(battery, "joined");
  if (!battery.part || !one || !most || joined !== "in-parallel") return [];
  const count = Math.ceil(asked.value / one.value - 1e-9);
  if (count > most.value) return [];
  const made = bankCurrent(one, unitsOf(battery, count), joined);
  return [
    {
      title: `Set ${battery.id} to ${count} x ${battery.part.name}`,
      preview: `${count} units: ${formatFigure(made)}, ${percent(asked.value / made.value)}`,
      does: "set-count",
      thing: battery,
      count,
    },
  ];
}

/** As many units in parallel as the maker allows, where they still give what the port asks for. */
export function fewerUnits(battery: Item, port: Item, most: number, judge: Judge): Fix[] {
  const asked = judge.quantity(port, "max-current");
  const one = judge.quantity(battery, "max-current");
  if (!battery.part || !asked || !one || judge.word(battery, "joined") !== "in-parallel") return [];
  const made = bankCurrent(one, unitsOf(battery, most), "in-parallel");
  if (made.value < asked.value) return [];
  return [
    {
      title: `Set ${battery.id} to ${most} x ${battery.part.name}`,
      preview: `${most} units: ${formatFigure(made)}, ${percent(asked.value / made.value)}`,
      does: "set-count",
      thing: battery,
      count: most,
    },
  ];
}

/** Other batteries in scope that fit the port in voltage and current. */
export function otherBatteries({ view, port, together }: WiredBattery, judge: Judge): readonly Fix[] {
  const { battery } = view;
  const range = judge.range(port, "voltage-range");
  const asked = judge.quantity(port, "max-current");
  if (!range || together.length > 1) return [];
  return partFixes(judge, {
    thing: battery,
    properties: ["voltage-range", "joined", "max-current"],
    preview: (part) => preview(part, battery, range, asked),
  });
}

function preview(
  part: Part,
  battery: Item,
  range: { readonly low: Given; readonly high: Given },
  asked: Figure | undefined,
): string | undefined {
  const own = givenRange(part, "voltage-range");
  const ownCurrent = given(part, "max-current");
  const joined = battery.count > 1 ? wordOf(part, "joined") : "in-parallel";
  if (!own || !ownCurrent || !joined) return undefined;
  const units = unitsOf(battery);
  const lowest = bankVoltage(own.low, units, joined as Joined);
  const highest = bankVoltage(own.high, units, joined as Joined);
  if (lowest.value < range.low.value || highest.value > range.high.value) return undefined;
  if (asked && bankCurrent(ownCurrent, units, joined as Joined).value < asked.value) return undefined;
  return `${formatFigure(lowest)} to ${formatFigure(highest)}`;
}
