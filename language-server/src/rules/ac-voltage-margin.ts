import type { Terminal } from "../circuit/circuit.js";
import type { FeedTree } from "../circuit/feed.js";
import type { Figure, Given } from "../physics/figure.js";
import {
  inverterVoltage,
  supplyLoop,
  supplyRise,
  supplyVoltageAtTrip,
  terminalVoltage,
} from "../physics/supply-voltage.js";
import { pathDrop } from "../physics/voltage-drop.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { isBalanced, riseSteps } from "./ac-rise.js";
import { unitName, unitNames, unitsThrough } from "./feeding-units.js";
import type { Judge } from "./judge.js";
import { MissingFacts } from "./missing-facts.js";
import { stated } from "./phrases.js";
import { exportCurrent } from "./port-currents.js";
import type { Outcome } from "./rule.js";
import { eachOf } from "./several.js";

/** The voltages that feeding in brings about, from the supply's as it was measured. */
export function voltagesAtWork(unit: Terminal, tree: FeedTree, judge: Judge): Outcome[] {
  const supply = tree.root.item;
  const units = unitsThrough(tree, tree.root);
  const missing = new MissingFacts();
  const measured = missing.orElse(() => judge.need([supply, "measured-voltage"])[0]);
  const loop = missing.orElse(() => loopOf(tree, judge));
  const current = missing.orElse(() => exportCurrent(units, tree, judge));
  const isEven = missing.orElse(() => isBalanced(units, tree, judge));
  missing.stop();
  const rise = supplyRise(current!, loop!, isEven ? 3 : 1);
  const terminals = terminalVoltage(measured!, rise);
  const facts = { unit, tree, units, measured: measured!, current: current!, rise, terminals };
  return eachOf(
    () => atTerminals(facts, judge),
    () => atInverter(facts, judge),
  );
}

interface Facts {
  readonly unit: Terminal;
  readonly tree: FeedTree;
  readonly units: readonly Terminal[];
  readonly measured: Given;
  readonly current: Figure;
  readonly rise: Figure;
  readonly terminals: Figure;
}

function loopOf({ root: { item } }: FeedTree, judge: Judge): Figure {
  const loop = supplyLoop({
    lineNeutral: judge.quantity(item, "line-neutral-impedance"),
    earthing: judge.word(item, "earthing"),
    external: judge.quantity(item, "external-loop-impedance"),
    voltage: judge.quantity(item, "voltage"),
    prospective: judge.quantity(item, "prospective-fault-current"),
  });
  return loop ?? judge.unknown(item, "line-neutral-impedance");
}

function atTerminals({ tree, units, measured, current, rise, terminals }: Facts, judge: Judge): Outcome {
  const limit = judge.limit("highest-supply-voltage");
  if (terminals.value <= limit.value) return judge.pass(terminals, limit, "supply terminals");
  const [reached, allowed] = formatApart(terminals, limit);
  return judge.finding({
    what: `While ${unitNames(units)} ${units.length > 1 ? "feed" : "feeds"} in ${formatFigure(current)}, the terminals of ${tree.root.item.id} reach ${reached} (${formatFigure(measured)} as measured and ${formatFigure(rise)} over the supply's loop); ${allowed} is the highest allowed there.`,
    why: "Neighbours on the same cable see it too, and inverters stop before it gets worse.",
    todo: "Ask the distributor about the voltage before anything is ordered; a limit on the export or a smaller inverter helps as well.",
    spot: { thing: tree.root.item, property: "measured-voltage" },
    value: terminals,
    limit,
    related: judge.limitSet("highest-supply-voltage", "the site's own limit"),
  });
}

function atInverter({ unit, tree, measured, rise, terminals }: Facts, judge: Judge): Outcome {
  const cables = pathDrop(riseSteps(unit, tree, judge).map((step) => step.rise));
  const trip = judge.quantity(unit.item, "over-voltage-trip") ?? judge.limit("over-voltage-trip");
  const voltage = inverterVoltage(terminals, cables);
  if (voltage.value < trip.value) return judge.pass(voltage, trip, "voltage at which it disconnects");
  const name = unitName(unit).id;
  const [sees, limit] = formatApart(voltage, trip);
  const from = formatFigure(supplyVoltageAtTrip(trip, rise, cables));
  return judge.finding({
    what: `${name} sees ${sees} when it feeds in all it can; it disconnects at ${limit}, which it reaches from ${from} of the idle supply on (${formatFigure(measured)} was measured).`,
    why: "It stops in the middle of bright days, comes back, and stops again.",
    todo: "Lay larger cable, or ask the distributor to lower the voltage.",
    spot: { thing: tree.root.item, property: "measured-voltage" },
    value: voltage,
    limit: trip,
    related: judge.knows(unit.item, "over-voltage-trip")
      ? [stated(unit.item, "over-voltage-trip", trip)]
      : judge.limitSet("over-voltage-trip", "the site's own limit"),
  });
}
