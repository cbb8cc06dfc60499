import { given } from "../design/facts.js";
import type { Item } from "../design/things.js";
import { type Circuit, otherEnd, type Terminal } from "./circuit.js";
import { type Ineffective, ineffective, type System } from "./poles.js";

const memory = new WeakMap<Circuit, ReadonlyMap<Terminal, System>>();

/** Whether a terminal is on a d.c. or an a.c. side: flooded from those whose kind says so, each along its conductors. */
function systemsOf(circuit: Circuit): ReadonlyMap<Terminal, System> {
  let found = memory.get(circuit);
  if (!found) {
    found = flood(circuit);
    memory.set(circuit, found);
  }
  return found;
}

function flood(circuit: Circuit): Map<Terminal, System> {
  const systems = new Map<Terminal, System>();
  // Three-phase first: where a single-phase unit hangs on a three-phase board, the board decides.
  const starts = [...circuit.terminals.values()].flatMap((terminal) => {
    const system = declaredSystem(terminal.item);
    return system ? [{ terminal, system }] : [];
  });
  for (const wanted of ["ac-three-phase", "ac", "dc"] as const) {
    for (const { terminal: start, system } of starts) {
      if (system !== wanted || systems.has(start)) continue;
      systems.set(start, system);
      const queue = [start];
      for (const terminal of queue) {
        for (const link of terminal.links) {
          const next = otherEnd(link, terminal);
          if (systems.has(next)) continue;
          systems.set(next, system);
          queue.push(next);
        }
      }
    }
  }
  return systems;
}

function declaredSystem(item: Item): System | undefined {
  switch (item.kind) {
    case "string":
    case "tracker":
    case "battery":
      return "dc";
    case "supply":
    case "ac":
    case "backup":
    case "generator":
    case "board":
    case "load":
      return given(item, "phases")?.value === 3 ? "ac-three-phase" : "ac";
    default:
      return undefined;
  }
}

const asked = new WeakMap<Circuit, Map<Item, Ineffective | undefined>>();

/** Why opening a device may not be relied upon where it is wired; undefined where it may. Worked out once a circuit. */
export function whyIneffective(circuit: Circuit, device: Item): Ineffective | undefined {
  let known = asked.get(circuit);
  if (!known) {
    known = new Map();
    asked.set(circuit, known);
  }
  if (!known.has(device)) known.set(device, workOut(circuit, device));
  return known.get(device);
}

function workOut(circuit: Circuit, device: Item): Ineffective | undefined {
  const terminal = circuit.terminals.get(`${device.id}.out`) ?? circuit.terminals.get(`${device.id}.in`);
  return ineffective(device, (terminal && systemsOf(circuit).get(terminal)) ?? "ac");
}
