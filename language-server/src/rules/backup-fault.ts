import type { BoardCircuit } from "../circuit/plant.js";
import type { Item } from "../design/things.js";
import { disconnectionTime, largestFuseLoop, operatingCurrent } from "../physics/disconnection.js";
import type { Figure } from "../physics/figure.js";
import { fuseOperatingCurrent } from "../physics/fuse-operating.js";
import { islandFaultCurrent } from "../physics/island.js";
import { formatApart, formatFigure } from "../physics/working.js";
import { islandVoltage } from "./backup-demand.js";
import { type Judge, NotKnown } from "./judge.js";
import type { Island } from "./mains.js";
import { residualDevices } from "./own-electrode.js";
import { idsOf, stated } from "./phrases.js";
import type { Outcome } from "./rule.js";
import { eachOf } from "./several.js";

/** Whether what an inverter can feed into a fault operates the device of a way. */
export function judgeFault(circuit: BoardCircuit, island: Island, judge: Judge): Outcome | readonly Outcome[] {
  const residual = residualDevices([circuit]);
  if (residual.length > 0) return judge.holds(`${idsOf(residual)} opens on residual current, however weak the source`);
  const { port } = island.backup;
  return eachOf(
    () => judgeCurrent(circuit, island, judge),
    () => judgeTime(circuit.device, port, judge),
  );
}

function judgeCurrent(circuit: BoardCircuit, island: Island, judge: Judge): Outcome {
  const { device } = circuit;
  const { port } = island.backup;
  const [own] = judge.need([port, "fault-current"]);
  const fault = islandFaultCurrent(own, islandVoltage(island, judge));
  const needed = operating(circuit, island, judge);
  if (fault.value >= needed.value) return judge.passAtLeast(fault, needed, "what the inverter can feed");
  const [gives, wants] = formatApart(fault, needed);
  return judge.finding({
    what: `${device.id} needs ${wants} to open on a fault; without the grid ${island.inverter.id} feeds ${gives}.`,
    why: "A fault that no device clears goes on until the inverter gives up, and nobody learns which circuit had it.",
    todo: "Put the circuit behind an RCD, and try out by test that it opens without the grid.",
    spot: { thing: device },
    value: fault,
    limit: needed,
    related: [stated(port, "fault-current", own)],
  });
}

/** Current that operates the device within the time that its circuit asks for, A. Throws NotKnown. */
function operating({ device, beyond }: BoardCircuit, island: Island, judge: Judge): Figure {
  const { ac } = judge.ruleSet;
  const [rating] = judge.need([device, "rated-current"]);
  const voltage = islandVoltage(island, judge);
  // With its own link of neutral and earth an island is a TN system, whatever the supply is.
  const use = beyond.boards.length > 0 ? "distribution" : "final";
  const time = disconnectionTime(ac.disconnection, { system: "TN", use, voltage, rating });
  if (!time) throw new NotKnown([], `no disconnection time is asked for at ${formatFigure(voltage)}`);
  if (device.kind === "fuse") {
    const category = judge.needWord(device, "category");
    const loop = largestFuseLoop(ac.fuseLoops, { category, rating: rating.value, voltage: voltage.value }, time.value);
    if (!loop) throw new NotKnown([], `no table gives the current that opens ${device.id}`);
    return fuseOperatingCurrent(voltage, loop);
  }
  const curve = judge.needWord(device, "curve");
  const current = operatingCurrent(ac.operatingMultiples, { curve, rating }, time.value);
  if (!current) throw new NotKnown([], `no table gives the current that opens a type ${curve} breaker`);
  return current;
}

function judgeTime(device: Item, port: Item, judge: Judge): Outcome | undefined {
  if (device.kind === "fuse") return undefined;
  const { instantaneousTime } = judge.ruleSet.ac;
  const [time] = judge.need([port, "fault-time"]);
  if (time.value >= instantaneousTime.value)
    return judge.passAtLeast(time, instantaneousTime, "for how long it feeds it");
  const [feeds, wants] = formatApart(time, instantaneousTime);
  return judge.finding({
    what: `${device.id} may take ${wants} to open; without the grid the fault is fed for ${feeds}.`,
    why: "The inverter gives up before the breaker has opened, and tries again into the same fault.",
    todo: "Put the circuit behind an RCD, and try out by test that it opens without the grid.",
    spot: { thing: device },
    value: time,
    limit: instantaneousTime,
    related: [stated(port, "fault-time", time)],
  });
}
