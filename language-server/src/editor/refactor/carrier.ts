import type { Assessment } from "../../assessment/assessment.js";
import type { PvArray } from "../../circuit/array.js";
import type { End, Run } from "../../design/things.js";
import { lastCut } from "../../rules/added-device.js";

/** A run with what it carries, as far as the wiring says so. */
export interface Carrier {
  readonly assessment: Assessment;
  readonly run: Run;
  readonly carries: "array" | "battery" | "ac";
  readonly array?: PvArray;
}

/** What a run carries; undefined for one that leads nowhere, and for the lead of a surge protective device. */
export function carrierOf(assessment: Assessment, run: Run): Carrier | undefined {
  if (run.from?.item.kind === "spd" || run.to?.item.kind === "spd") return undefined;
  const isIt = (other: Run): boolean => other.id === run.id;
  for (const { arrays } of assessment.zones)
    for (const array of arrays)
      for (const own of array.runs.keys()) if (isIt(own)) return { assessment, run: own, carries: "array", array };
  for (const plant of assessment.plants) {
    for (const line of plant.lines) if (isIt(line.run)) return { assessment, run: line.run, carries: "ac" };
    for (const { path } of plant.batteries)
      for (const { by } of path?.hops ?? [])
        if (by.is === "run" && isIt(by)) return { assessment, run: by, carries: "battery" };
  }
  return undefined;
}

/** The end of a run at which the array lies; on the a.c. side, where power goes either way, the end it is written from. */
export function sourceOf({ run, array }: Carrier): "from" | "to" {
  for (const way of array?.strings ?? []) {
    const cut = lastCut(way, (each) => each === run);
    if (cut) return cut.source;
  }
  return "from";
}

/** Where something is tapped off a run: at its far end; at an isolator behind it, where it can be made dead. */
export function tapAt(carrier: Carrier): string | undefined {
  const { run, array } = carrier;
  const [near, far] = sourceOf(carrier) === "from" ? [run.from, run.to] : [run.to, run.from];
  if (array && near?.item.row?.through === "opens") return terminalId(near);
  if (array && far?.item.row?.through === "opens")
    return terminalId({ ...far, terminal: far.terminal === "in" ? "out" : "in" });
  return far && terminalId(far);
}

function terminalId({ item, terminal }: End): string {
  return terminal === "" ? item.id : `${item.id}.${terminal}`;
}
