import type { Assessment } from "../../assessment/assessment.js";
import { changeoversOf } from "../../circuit/always-live.js";
import type { Mode } from "../../circuit/modes.js";
import type { Item } from "../../design/things.js";
import type { Diagram } from "../../drawing/diagram.js";
import { diagramOf } from "../../drawing/diagram-of.js";
import type { State } from "../../drawing/picture.js";
import { liveReport } from "../../isolation/live-report.js";
import type { LiveReport } from "../../isolation/report.js";
import { type Choice, switchingDevices } from "../switching/choices.js";

/** What stays live with some devices open, for a picture and for the words beside it. */
export interface LiveParts {
  /** "by day, with the grid and in an island". */
  readonly asked: string;
  /** Those of the devices asked about that there are. */
  readonly open: readonly string[];
  /** What can be opened. */
  readonly devices: readonly Choice[];
  /** How each drawn thing is, by id. */
  readonly states: readonly (readonly [string, State])[];
  readonly live: readonly LiveFromSource[];
  /** Dead if it is wired as written; where the text has errors, only reached by nothing that could be read. */
  readonly dead: readonly string[];
  readonly incomplete: boolean;
  readonly notCounted: LiveReport["notCounted"];
  readonly cautions: readonly string[];
}

/** Places that one source reaches in one way. */
export interface LiveFromSource {
  readonly source: string;
  /** "S1 by conductors (up to 465.3 V)". */
  readonly text: string;
  readonly where: readonly string[];
}

export function liveParts(assessment: Assessment, wanted: readonly string[], mode: Partial<Mode>): LiveParts {
  const switches = switchingDevices(assessment);
  const open = switches.filter(({ item }) => wanted.includes(item.id)).map(({ item }) => item);
  const isOpen = new Map(switches.map(({ item }) => [item.id, open.includes(item)]));
  const report = liveReport(assessment, { ...mode, open });
  const { asked, dead, incomplete, notCounted, cautions } = report;
  return {
    asked,
    open: open.map(({ id }) => id),
    devices: switches.map(({ choice }) => choice),
    states: statesOf(assessment, diagramOf(assessment), report, isOpen),
    live: bySource(report),
    dead,
    incomplete,
    notCounted,
    cautions,
  };
}

function bySource({ places }: LiveReport): LiveFromSource[] {
  const found = new Map<string, { readonly source: string; readonly text: string; readonly where: string[] }>();
  for (const { where, arrivals } of places)
    for (const { source, text } of arrivals) {
      const known = found.get(text);
      if (known) known.where.push(...where);
      else found.set(text, { source, text, where: [...where] });
    }
  return [...found.values()];
}

function statesOf(
  { design, circuit }: Assessment,
  { wires }: Diagram,
  { things, modes }: LiveReport,
  isOpen: ReadonlyMap<string, boolean>,
): (readonly [string, State])[] {
  const live = new Set(
    things.flatMap(({ terminals }) =>
      terminals.flatMap(({ terminal, arrivals }) => (arrivals.length > 0 ? [terminal] : [])),
    ),
  );
  const liveThings = new Set(
    things.flatMap(({ thing, terminals }) => (terminals.some(({ terminal }) => live.has(terminal)) ? [thing] : [])),
  );
  const isLive = (item: Item): boolean => liveThings.has(item.id) || item.children.some(isLive);
  const [supply, another] = new Set(modes.map((mode) => mode.supply));
  // A changeover lies where the mode puts it; over several modes it lies nowhere in particular.
  const position = another ? undefined : supply === "island" ? "backup" : "grid";
  const changeovers = new Set(changeoversOf(circuit));
  const items = design.items.flatMap(withInside).map((item): readonly [string, State] => [
    item.id,
    {
      live: isLive(item),
      ...(isOpen.has(item.id) && { open: isOpen.get(item.id) }),
      ...(changeovers.has(item) && { position }),
    },
  ]);
  // Both ends of a conductor are reached alike.
  const runs = wires.map((wire): readonly [string, State] => [wire.id, { live: live.has(terminalOf(wire.from.port)) }]);
  return [...items, ...runs];
}

/** A terminal that is drawn on both sides has the side behind its name. */
function terminalOf(port: string): string {
  return port.replace(/@(west|east)$/, "");
}

function withInside(item: Item): Item[] {
  return [item, ...item.children.flatMap(withInside)];
}
