import type { Terminal } from "../circuit/circuit.js";
import { pathTo } from "../circuit/feed.js";
import type { Line, Plant } from "../circuit/plant.js";
import { given } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { type DesignCurrent, type Direction, designCurrent } from "../physics/ac-current.js";
import type { Figure } from "../physics/figure.js";
import { busiestLine, lineCurrents } from "../physics/phase-currents.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { capacityOfLine, ifKnown } from "./ac-cables.js";
import { deviceFixes } from "./device-parts.js";
import { unitName, unitNames } from "./feeding-units.js";
import type { Judge } from "./judge.js";
import { loadCurrent } from "./load-current.js";
import { percent } from "./part-fixes.js";
import type { PassedDevice } from "./passed-devices.js";
import { idsOf, stated } from "./phrases.js";
import { unitCurrents } from "./port-currents.js";
import type { Fix, Outcome, Related } from "./rule.js";
import { protectionAlong, treeAt } from "./supply-way.js";

/** A protective device with the units that feed in through it and the loads that it feeds. */
export interface ProtectedUnits {
  readonly plant: Plant;
  readonly passed: PassedDevice;
  readonly units: readonly Terminal[];
  readonly loads: readonly Item[];
  /** Runs that it protects next. */
  readonly lines: readonly Line[];
}

/** Said of one unit, and of several. */
const does: Readonly<Record<Direction, readonly [string, string]>> = {
  export: ["feeds in", "feed in"],
  import: ["draws", "draw"],
  backup: ["feeds", "feed"],
  "pass-through": ["passes on", "pass on"],
};

/** Ib ≤ In, for what inverters and generating units send and draw. */
export function againstCurrents(subject: ProtectedUnits, judge: Judge): Outcome[] {
  const { passed, units } = subject;
  if (units.length === 0) return [];
  const { currents, unknown } = unitCurrents(units, passed.tree, judge);
  const design = designCurrent(currents);
  return design ? [compare(subject, design, judge), ...unknown] : [...unknown];
}

function compare(subject: ProtectedUnits, { current, direction }: DesignCurrent, judge: Judge): Outcome {
  const { device } = subject.passed;
  const { units } = subject;
  const [rating] = judge.need([device, "rated-current"]);
  if (current.value <= rating.value) return judge.pass(current, rating, direction);
  const [flows, rated] = formatApart(current, rating);
  const isExport = direction === "export";
  return judge.finding({
    what: `${unitNames(units)} ${does[direction][units.length > 1 ? 1 : 0]} up to ${flows}; ${device.id} is rated ${rated}.`,
    why: isExport
      ? "It trips, or runs hot for hours, on every bright day."
      : "It trips in ordinary service, and whatever is backed up goes dark with it.",
    todo: isExport
      ? `Fit a device of at least ${flows}, with cable to match.`
      : `Fit a device of at least ${flows} with cable to match, or lock a lower limit in the inverter's settings and state that.`,
    spot: { thing: device, word: "part" },
    value: current,
    limit: rating,
    related: currentsStated(units, direction, judge),
    fixes: (asked) => strongerDevices(subject, current, asked),
  });
}

const properties: Readonly<Record<Direction, string>> = {
  export: "max-current",
  import: "max-import-current",
  backup: "max-current",
  "pass-through": "pass-through-current",
};

function currentsStated(units: readonly Terminal[], direction: Direction, judge: Judge): Related[] {
  const property = properties[direction];
  return units.flatMap(({ item }) => {
    const backup = item.parent?.children.find(({ kind }) => kind === "backup");
    const thing = direction === "pass-through" ? (backup ?? item) : item;
    const current = judge.quantity(thing, property);
    return current ? [stated(thing, property, current)] : [];
  });
}

/** Devices that let a current pass and are no larger than the thinnest run behind them carries. */
function strongerDevices({ passed, plant, lines }: ProtectedUnits, current: Figure, judge: Judge): readonly Fix[] {
  const carried = lines.map((line) =>
    ifKnown(() => capacityOfLine(line, treeAt(plant, line.root), judge).current.value),
  );
  const most = Math.min(...carried.filter((value) => value !== undefined));
  return deviceFixes(judge, {
    device: passed.device,
    changes: ["rated-current"],
    preview: (part) => {
      const rating = given(part, "rated-current");
      if (!rating || rating.value < current.value || rating.value > most) return undefined;
      return `${formatFigure(rating)}, ${percent(current.value / rating.value)}`;
    },
  });
}

/** Ib ≤ In, for loads that are part of the work. */
export function againstLoads({ plant, passed, loads }: ProtectedUnits, judge: Judge): Outcome[] {
  const [supply] = plant.supplies;
  if (loads.length === 0) return [];
  const { device, tree } = passed;
  if (!supply) return [judge.notChecked("there is no supply, so the voltage of the loads is not known")];
  const [rating, voltage] = judge.need([device, "rated-current"], [supply, "voltage"]);
  const currents = loads.map((load) => loadCurrent(load, voltage, tree, judge));
  const sum = lineCurrents(
    currents.map((current) => ({ current, lines: 1 })),
    1,
  );
  const current = currents.length > 1 && sum ? busiestLine(sum).current : currents[0]!;
  if (current.value <= rating.value) return [judge.pass(current, rating, "loads")];
  const [flows, rated] = formatApart(current, rating);
  return [
    judge.finding({
      what: `${idsOf(loads)} ${loads.length > 1 ? "take" : "takes"} ${flows}; ${device.id} is rated ${rated}.`,
      why: "It trips in ordinary service.",
      todo: "Put loads on a way of their own, or fit a larger device with cable to match.",
      spot: { thing: device, word: "part" },
      value: current,
      limit: rating,
      related: loads.map((load) => ({ spot: { thing: load, word: "name" }, message: load.id })),
    }),
  ];
}

/** The largest device that the maker of an inverter allows ahead of it. */
export function againstLargestAllowed(subject: ProtectedUnits, judge: Judge): Outcome[] {
  const { passed, units } = subject;
  const { device, tree } = passed;
  return units.flatMap((unit): Outcome[] => {
    const largest = judge.quantity(unit.item, "max-upstream-device");
    const path = largest && pathTo(tree, unit);
    if (!path || protectionAlong(path).at(-1) !== device) return [];
    const [rating] = judge.need([device, "rated-current"]);
    if (rating.value <= largest.value)
      return [judge.pass(rating, largest, `what ${unitName(unit).id} allows ahead of it`)];
    const [rated, allowed] = formatApart(rating, largest);
    return [
      judge.finding({
        what: `${device.id} is rated ${rated}; the maker of ${unitName(unit).id} allows ${allowed} ahead of it at most.`,
        why: "A fault inside it is not cleared as fast as it was tested for.",
        todo: `Fit a device of at most ${allowed}.`,
        spot: { thing: device, word: "part" },
        value: rating,
        limit: largest,
        related: [stated(unit.item, "max-upstream-device", largest)],
        fixes: (asked) => smallerDevices(subject, largest, asked),
      }),
    ];
  });
}

/** Devices that the maker allows and that let pass whatever the units behind them send or draw. */
function smallerDevices({ passed, units, loads }: ProtectedUnits, largest: Figure, judge: Judge): readonly Fix[] {
  const { currents, unknown } = unitCurrents(units, passed.tree, judge);
  const flows = designCurrent(currents)?.current;
  // What loads take besides is a question of its own.
  if (!flows || unknown.length > 0 || loads.length > 0) return [];
  return deviceFixes(judge, {
    device: passed.device,
    changes: ["rated-current"],
    preview: (part) => {
      const rating = given(part, "rated-current");
      if (!rating || rating.value < flows.value || rating.value > largest.value) return undefined;
      return `${formatFigure(rating)}, ${percent(rating.value / largest.value)}`;
    },
  });
}
