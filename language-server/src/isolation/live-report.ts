import type { Assessment } from "../assessment/assessment.js";
import { changeoversOf } from "../circuit/always-live.js";
import { type Circuit, otherEnd, type Terminal } from "../circuit/circuit.js";
import { traceLive } from "../circuit/live.js";
import type { Mode } from "../circuit/modes.js";
import type { Item } from "../design/things.js";
import { LiveArrivals } from "./arrivals.js";
import { cautions } from "./cautions.js";
import { isIncomplete } from "./incomplete.js";
import { goesOn, neutralEarthOf } from "./island-report.js";
import { namesOf, terminalsByItem } from "./names.js";
import type { LiveArrival, LivePlace, LiveReport, LiveThing, NotCounted } from "./report.js";
import { askedText, modesFor } from "./when.js";

export interface LiveRequest extends Partial<Mode> {
  readonly open: readonly Item[];
}

/**
 * What is live with some devices open, in each of the modes asked about: for every terminal, and together by places that
 * the same sources reach in the same way. Changeovers stand where the mode puts them.
 */
export function liveReport(assessment: Assessment, request: LiveRequest): LiveReport {
  const { circuit } = assessment;
  const asked = modesFor(request);
  const arrivals = new LiveArrivals(asked, assessment.judge);
  const notCounted = new Map<Item, NotCounted>();
  for (const mode of asked) {
    const trace = traceLive(circuit, { ...mode, open: new Set(request.open) });
    for (const { device, why, missing } of trace.ineffective)
      notCounted.set(device, { device: device.id, why, ...(missing !== undefined && { missing }) });
    arrivals.add(mode, trace);
  }
  const terminals = wired(circuit);
  const live = [...terminals].filter((terminal) => arrivals.at(terminal).length > 0);
  return {
    asked: askedText(request),
    modes: asked,
    open: request.open.map(({ id }) => id),
    notCounted: [...notCounted.values()],
    places: placesOf(assessment, live, arrivals),
    dead: namesOf(
      assessment,
      [...terminals].filter((terminal) => arrivals.at(terminal).length === 0),
    ),
    things: thingsOf(circuit, terminals, arrivals),
    goesOn: asked.some(({ supply }) => supply === "island") ? goesOn(assessment) : [],
    neutralEarth: neutralEarthOf(assessment).filter(({ supply }) => asked.some((mode) => mode.supply === supply)),
    incomplete: isIncomplete(assessment),
    cautions: [...changeoverCaution(circuit), ...cautions],
  };
}

function changeoverCaution(circuit: Circuit): string[] {
  const names = changeoversOf(circuit).map(({ id }) => id);
  if (names.length === 0) return [];
  return [`Traced with ${names.join(", ")} on the grid side with the grid, and on the backup side in an island.`];
}

/** Terminals that something is joined to, or that feed by themselves: of any other nothing can be said. */
function wired(circuit: Circuit): Set<Terminal> {
  const found = new Set<Terminal>();
  for (const { terminal } of circuit.sources) found.add(terminal);
  for (const { ports } of circuit.converters) for (const { terminal } of ports) found.add(terminal);
  for (const terminal of circuit.terminals.values())
    if (terminal.name !== "earth" && terminal.links.length > 0) found.add(terminal);
  return new Set([...circuit.terminals.values()].filter((terminal) => found.has(terminal)));
}

/** Terminals that are joined to each other and that the same sources reach in the same way. */
function placesOf(assessment: Assessment, live: readonly Terminal[], arrivals: LiveArrivals): LivePlace[] {
  const places: LivePlace[] = [];
  const seen = new Set<Terminal>();
  for (const start of live) {
    if (seen.has(start)) continue;
    const place = new Set([start]);
    for (const terminal of place)
      for (const link of terminal.links) {
        const next = otherEnd(link, terminal);
        if (arrivals.keyAt(next) === arrivals.keyAt(start)) place.add(next);
      }
    for (const terminal of place) seen.add(terminal);
    places.push({ where: namesOf(assessment, [...place]), arrivals: arrivals.at(start) });
  }
  return places;
}

function thingsOf(circuit: Circuit, terminals: ReadonlySet<Terminal>, arrivals: LiveArrivals): LiveThing[] {
  return [...terminalsByItem(circuit)].flatMap(([item, own]) => {
    const shown = own.filter((terminal) => terminals.has(terminal));
    if (shown.length === 0) return [];
    const live = shown.map((terminal): { terminal: string; arrivals: readonly LiveArrival[] } => ({
      terminal: terminal.id,
      arrivals: arrivals.at(terminal),
    }));
    return [{ thing: item.id, kind: item.kind, terminals: live }];
  });
}
