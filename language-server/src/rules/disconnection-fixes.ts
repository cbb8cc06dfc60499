import { given, wordOf } from "../design/facts.js";
import type { Part, Run } from "../design/things.js";
import { largestLoop, operatingCurrent } from "../physics/disconnection.js";
import { formatValue } from "../physics/display.js";
import type { Figure } from "../physics/figure.js";
import { formatFigure } from "../physics/working.js";
import { ifKnown, largerCables } from "./ac-cables.js";
import { deviceFixes } from "./device-parts.js";
import type { Loop } from "./disconnection-grid.js";
import { loopIn, loopOfRun } from "./earth-path.js";
import type { Judge } from "./judge.js";
import { percent } from "./part-fixes.js";
import type { Fix } from "./rule.js";
import { runsAlong } from "./supply-way.js";

/** Another device that trips at less current, or larger cable in the place of the run that takes most. */
export function disconnectionFixes(loop: Loop, allowed: Figure, judge: Judge): readonly Fix[] {
  return [...quickerDevices(loop, judge), ...largerCable(loop, allowed, judge)];
}

function quickerDevices(loop: Loop, judge: Judge): Fix[] {
  const { circuit, zs } = loop;
  return deviceFixes(judge, {
    device: circuit.device,
    changes: ["curve", "max-loop-impedance"],
    preview: (part) => {
      const allows = allowedBy(part, loop, judge);
      if (!allows || zs.value > allows.value) return undefined;
      return `Zs up to ${formatFigure(allows)}, ${percent(zs.value / allows.value)}`;
    },
  });
}

function allowedBy(part: Part, { voltage, time }: Loop, judge: Judge): Figure | undefined {
  const own = given(part, "max-loop-impedance");
  const curve = wordOf(part, "curve");
  const rating = given(part, "rated-current");
  if (own || !curve || !rating) return own;
  const current = operatingCurrent(judge.ruleSet.ac.operatingMultiples, { curve, rating }, time.value);
  return current && largestLoop(voltage, judge.limit("minimum-voltage-factor"), current);
}

function largerCable({ circuit, zs, way }: Loop, allowed: Figure, judge: Judge): Fix[] {
  const { plant, lines } = circuit;
  const own = runsAlong(way).filter((run) => lines.some((line) => line.run === run));
  const loopNow = (run: Run): number => loopOfRun(run, plant, judge).value;
  const [most] = own.sort((a, b) => loopNow(b) - loopNow(a));
  if (!most) return [];
  const others = zs.value - loopNow(most);
  return largerCables(most, judge, (part) => {
    const loop = ifKnown(() => loopIn(most, part, plant, judge).value);
    if (loop === undefined || others + loop > allowed.value) return undefined;
    return `Zs ${formatValue(others + loop, "resistance", "ohm")}, ${percent((others + loop) / allowed.value)}`;
  });
}
