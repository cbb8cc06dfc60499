import type { BoardCircuit } from "../circuit/plant.js";
import type { Item } from "../design/things.js";
import { acPower, lineCount } from "../physics/ac-current.js";
import { expectedDemand, totalDemand } from "../physics/backup-demand.js";
import type { Figure } from "../physics/figure.js";
import { formatApart } from "../physics/working.js";
import { type Judge, NotKnown } from "./judge.js";
import type { Island } from "./mains.js";
import { MissingFacts } from "./missing-facts.js";
import { idsOf, listed, stated } from "./phrases.js";
import type { Outcome } from "./rule.js";

/** The demand that is declared for an island against the power of its backup port; a part that is not declared is said. */
export function judgeDemand(island: Island, judge: Judge): Outcome[] {
  const { backup, inverter } = island;
  const { port, loads } = backup;
  const missing = new MissingFacts();
  const demands = loads.flatMap((load) => {
    const demand = missing.orElse(() => demandOf(load, island, judge));
    return demand ? [demand] : [];
  });
  const rated = missing.orElse(() => judge.need([port, "rated-power"])[0]);
  const outcomes: Outcome[] = [];
  if (rated && demands.length > 0) {
    const total = totalDemand(demands);
    if (total.value > rated.value) {
      const [wants, gives] = formatApart(total, rated);
      outcomes.push(
        judge.finding({
          what: `What runs on ${inverter.id} without the grid is declared with ${wants}; its backup port gives ${gives}.`,
          why: "It shuts down on overload, and then nothing runs that was meant to.",
          todo: `Back up fewer of ${idsOf(loads)}, state the share that runs at once, or take a larger inverter.`,
          spot: { thing: port, property: "rated-power" },
          value: total,
          limit: rated,
          related: loads.flatMap((load) => {
            const power = judge.quantity(load, "power");
            return power ? [stated(load, "power", power)] : [];
          }),
        }),
      );
    } else outcomes.push(judge.pass(total, rated, "declared demand"));
  }
  const undeclared = backup.circuits.flatMap(undeclaredDemand);
  outcomes.push(...missing.outcomes());
  if (undeclared.length > 0)
    outcomes.push(judge.notChecked(`the demand of ${listed(undeclared)} is not declared as a load`));
  return outcomes;
}

/** Of a load, by its power or by its current. Throws NotKnown where it states neither. */
function demandOf(load: Item, island: Island, judge: Judge): Figure {
  const share = judge.quantity(load, "demand");
  const power = judge.quantity(load, "power");
  if (power) return expectedDemand(power, share);
  const current = judge.quantity(load, "current");
  if (!current) return judge.unknown(load, "power");
  const lines = lineCount(judge.need([load, "phases"])[0]) ?? judge.unknown(load, "phases");
  return expectedDemand(acPower(current, islandVoltage(island, judge), lines), share);
}

/** Voltage to neutral of an island, V: that of the supply which it stands in for. */
function islandVoltage({ plant }: Island, judge: Judge): Figure {
  const [supply] = plant.supplies;
  if (!supply) throw new NotKnown([], "no supply says at which voltage the island runs");
  return judge.need([supply, "voltage"])[0];
}

/** A way that only words describe, and that no load stands for: `K5 ("lights")`. */
function undeclaredDemand({ device, servesText, beyond }: BoardCircuit): string[] {
  return servesText !== undefined && beyond.loads.length === 0 ? [`${device.id} ("${servesText}")`] : [];
}
