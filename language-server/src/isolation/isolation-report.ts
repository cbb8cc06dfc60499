import type { Assessment } from "../assessment/assessment.js";
import { boundaryOf } from "../circuit/boundary.js";
import { type Circuit, terminalsOf } from "../circuit/circuit.js";
import { isolate } from "../circuit/cuts.js";
import { isolationText } from "../circuit/isolation-text.js";
import { arrivalText } from "../circuit/live-text.js";
import { fact } from "../design/facts.js";
import type { Item, Run } from "../design/things.js";
import { formatFigure } from "../physics/working.js";
import { cautions } from "./cautions.js";
import { isIncomplete } from "./incomplete.js";
import { near } from "./near.js";
import type { IsolationReport, OrderReport } from "./report.js";

/** How to make a thing dead: see `isolate` for what is modelled. Nothing here says how to work on anything live. */
export function isolationReport(assessment: Assessment, thing: Item | Run): IsolationReport {
  const { circuit } = assessment;
  const isolation = isolate(circuit, thing);
  const said = isolationText(circuit, isolation);
  const around = near(circuit, isolation.terminals);
  const inverters = thing.kind === "inverter" && thing.is === "item" ? [thing] : [...around.inverters];
  return {
    thing: thing.id,
    kind: thing.kind,
    open: said.open,
    sets: isolation.cuts.map((cut) => cut.map(({ id }) => id)),
    instead: said.instead,
    complete: isolation.complete,
    order: inverters.map((inverter) => orderOf(inverter, circuit)),
    waits: isolation.waits.map(({ inverter, wait }, index) => ({
      inverter: inverter.id,
      ...(wait && { wait: formatFigure(wait) }),
      text: said.wait[index] ?? "",
    })),
    staysLive: isolation.staysLive.map(({ terminal, arrival }) => ({
      terminal: terminal.id,
      source: arrival.source.item.id,
      text: arrivalText(arrival),
    })),
    stillLive: said.stillLive,
    besides: said.besides,
    notCounted: isolation.notCounted
      .filter(({ device }) => around.devices.has(device))
      .map(({ device, why, missing }) => ({ device: device.id, why, ...(missing !== undefined && { missing }) })),
    incomplete: isIncomplete(assessment),
    cautions,
  };
}

const sideOf: Readonly<Record<string, string>> = { tracker: "dc", battery: "battery", ac: "ac", backup: "backup" };

/** The order in which an inverter's sides are opened, as its maker's sheet says; never made up where it does not. */
function orderOf(inverter: Item, circuit: Circuit): OrderReport {
  const stated = fact(inverter, "shutdown-order")?.value;
  if (stated?.kind !== "list")
    return {
      inverter: inverter.id,
      text: `Order: shutdown-order of ${inverter.id} is not stated. Take it from its maker's shutdown sheet.`,
    };
  const boundary = boundaryOf(circuit, terminalsOf(circuit, inverter));
  const sides = stated.values.flatMap((value) => {
    if (value.kind !== "word") return [];
    const devices = boundary
      .filter(({ parts }) => parts.item.parent === inverter && sideOf[parts.item.kind] === value.value)
      .map(({ device }) => device.id);
    return [{ side: value.value, devices }];
  });
  const words = sides.map(({ side, devices }) => (devices.length > 0 ? `${side} (${devices.join(", ")})` : side));
  return {
    inverter: inverter.id,
    sides,
    text: `Order, as the maker's sheet of ${inverter.id} states it: ${words.join(", then ")}.`,
  };
}
