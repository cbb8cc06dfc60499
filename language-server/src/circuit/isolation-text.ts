import type { Item } from "../design/things.js";
import { formatFigure } from "../physics/working.js";
import type { Circuit, Terminal } from "./circuit.js";
import type { Isolation } from "./cuts.js";
import { type Arrival, traceLive } from "./live.js";
import { arrivalTexts, listed } from "./live-text.js";

/** How to isolate an item, in the words that every output uses. */
export interface IsolationText {
  /** "Open Q1, Q3 and Q4: INV is dead." */
  readonly open: string;
  /** Other sets that do as well: "Q1, Q3 and CU.K9". */
  readonly instead: readonly string[];
  /** "Wait 5 min for the capacitors of INV", or that nobody said how long. */
  readonly wait: readonly string[];
  /** What stays live though that set is open: on the item itself, then at the devices that were opened. */
  readonly stillLive: readonly string[];
  /** Nearest devices with no known source behind them, which part the item all the same: "NEW.MS". */
  readonly besides: readonly string[];
  /** Devices that were not counted on, and why. */
  readonly notCounted: readonly string[];
}

/** Says an isolation. Never says that something is safe: dead is proved on site. */
export function isolationText(circuit: Circuit, isolation: Isolation): IsolationText {
  const { of, cuts, staysLive, boundary, waits, notCounted } = isolation;
  const [first = [], ...others] = cuts;
  const own = new Map<Terminal, Arrival[]>();
  for (const { terminal, arrival } of staysLive) own.set(terminal, [...(own.get(terminal) ?? []), arrival]);
  const behind = new Set(cuts.flat());
  return {
    open: openText(of.id, cuts, staysLive.length > 0),
    instead: others.map((cut) => listed(cut.map(deviceText))),
    wait: waits.map(({ inverter, wait }) =>
      wait
        ? `Wait ${formatFigure(wait)} for the capacitors of ${inverter.id}.`
        : `${inverter.id} holds charge, and discharge-wait is not stated: see its maker's sheet before touching anything.`,
    ),
    stillLive: [
      ...[...own].map(([terminal, arrivals]) => said(terminal, arrivals)),
      ...liveAround(circuit, isolation, first),
    ],
    besides: boundary
      .map(({ device }) => device)
      .filter((device) => !behind.has(device))
      .map(({ id }) => id),
    notCounted: notCounted.map(({ device, why }) => `${device.id}: ${why}`),
  };
}

/** What is opened: a thing with a switch of its own is not opened itself. */
export function deviceText({ id, kind }: Item): string {
  if (kind === "battery") return `${id}'s own isolator`;
  return kind === "inverter" ? `${id}'s own d.c. isolator` : id;
}

function openText(id: string, cuts: Isolation["cuts"], someStaysLive: boolean): string {
  const [first] = cuts;
  if (!first) return `No set of devices makes ${id} dead.`;
  const result = someStaysLive ? `nothing reaches ${id} but what is named as still live` : `${id} is dead`;
  if (first.length === 0)
    return someStaysLive
      ? `Nothing else feeds ${id} than what is named as still live.`
      : `Nothing that is written here feeds ${id}.`;
  return `Open ${listed(first.map(deviceText))}: ${result}, if it is wired as written. Prove ${someStaysLive ? "the rest" : "it"} dead.`;
}

/** Live terminals of the devices that were opened: the far side of each. */
function liveAround(circuit: Circuit, { terminals }: Isolation, open: Isolation["cuts"][number]): string[] {
  const { arrivals } = traceLive(circuit, { light: "day", supply: "grid", open: new Set(open) });
  const found: string[] = [];
  for (const device of open) {
    for (const name of device.row?.terminals ?? []) {
      const terminal = circuit.terminals.get(`${device.id}.${name}`);
      const lasting = terminal && (arrivals.get(terminal) ?? []).filter(({ through }) => through !== "stored");
      if (terminal && lasting && lasting.length > 0 && !terminals.includes(terminal))
        found.push(said(terminal, lasting));
    }
  }
  return found;
}

function said(terminal: Terminal, arrivals: readonly Arrival[]): string {
  return `${terminal.id}, from ${arrivalTexts(arrivals).join("; from ")}`;
}
