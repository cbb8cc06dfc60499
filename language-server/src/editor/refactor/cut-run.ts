import type { Property, Quantity, RunDeclaration } from "../../design/model.js";
import type { Run } from "../../design/things.js";
import { absolute } from "../../place.js";
import type { Change } from "../edits/change.js";
import { lineEnding } from "../edits/layout.js";
import { withoutMembers } from "./members.js";
import { copyOf, replaced } from "./rewritten.js";
import { linesBefore, linesBehind } from "./stretch.js";

/** A device that is put into a run, and what the piece of run behind it is called. */
export interface Cut {
  readonly device: string;
  readonly second: string;
  /** The run is written from the inverter to the roof, so that it meets the device's far side first. */
  readonly backwards: boolean;
}

/**
 * Cuts a run in two at a device. Each piece keeps how the run is laid, and what is said of one of its ends stays at that
 * end. Where in its length the device will sit nobody has said: both pieces get half of it, and say so.
 */
export function cutRun(text: string, { declaration, id }: Run, cut: Cut, above: string): Change[] {
  const { from, to, namePlace, length, place } = declaration;
  if (!from || !to) return [];
  const ending = lineEnding(text);
  const halves = length && halved(length.value);
  const note = length ? `// half of the ${text.slice(...span(length.place))} of ${id}: measure` : undefined;
  const [into, outOf] = cut.backwards ? [`${cut.device}.out`, `${cut.device}.in`] : [cut.device, cut.device];
  const { start, end } = absolute(place);
  const second = copyOf(text, start, end, [
    replaced(namePlace, cut.second),
    replaced(from.place, outOf),
    ...(length && halves ? [replaced(length.place, halves[1])] : []),
    ...withoutMembers(text, declaration, new Set(notAt("end", declaration))),
  ]);
  return [
    linesBefore(text, place, note ? `${above}${ending}${note}` : above),
    replaced(to.place, into),
    ...(length && halves ? [replaced(length.place, halves[0])] : []),
    ...withoutMembers(text, declaration, new Set(notAt("start", declaration))),
    linesBehind(text, place, note ? `${note}${ending}${second}` : second),
  ];
}

function span(place: RunDeclaration["place"]): [number, number] {
  const { start, end } = absolute(place);
  return [start, end];
}

/** Two lengths that make the whole again, as they would be written. */
function halved({ written, unit }: Quantity): [string, string] {
  const half = Number((written / 2).toPrecision(12));
  const rest = Number((written - half).toPrecision(12));
  return [`${half} ${unit}`, `${rest} ${unit}`];
}

/** What is said of the other end of a run: its connector, and what that is rated for where there is no other. */
function notAt(end: "start" | "end", { properties }: RunDeclaration): Property[] {
  const called = (name: string): Property[] => properties.filter((property) => property.name === name);
  const other = called(end === "start" ? "end-connector" : "start-connector");
  const own = called(`${end}-connector`);
  return other.length > 0 && own.length === 0 ? [...other, ...called("connector-rated-voltage")] : other;
}
