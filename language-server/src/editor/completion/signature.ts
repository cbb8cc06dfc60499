import type { Assessment } from "../../assessment/assessment.js";
import type { Head } from "../../language/head.js";
import { fragmentAt } from "../fragment-at.js";
import { propertyText } from "../markdown.js";
import type { WorkspaceView } from "../workspace-view.js";
import { nextNameOf } from "./free-names.js";
import { type Wanted, wantedAt, wantedProperty } from "./wanted.js";

/** A sentence with its places, and the one the cursor is at. */
export interface Signature {
  readonly label: string;
  readonly documentation: string;
  readonly places: readonly Place[];
  readonly active: number;
}

interface Place {
  readonly label: string;
  readonly documentation: string;
}

interface Sentence {
  readonly label: string;
  readonly documentation: string;
  readonly places: (assessment: Assessment | undefined) => readonly Place[];
  /** The place by the state that the text before the cursor ends in. */
  readonly at: Partial<Record<Head, number>>;
}

const sentences: readonly Sentence[] = [
  {
    label: "run NAME from TERMINAL to TERMINAL: LENGTH of CABLE",
    documentation: "A cable from one terminal to another; its length is that of the way, not of both conductors.",
    places: (assessment) => [
      place("NAME", assessment ? `Next free: ${nextNameOf(assessment.design, "run")}` : "A name of its own"),
      place("from TERMINAL", "Where it begins: an item, a port (INV.pv1) or a way of a board (CU.K9)"),
      place("to TERMINAL", "Where it ends; without a dot the input of a device with two terminals is meant"),
      place("LENGTH", "One way, with its unit: 18 m"),
      place("CABLE", `A part that is a cable${cablesOf(assessment)}`),
    ],
    at: {
      run: 0,
      "run-name": 1,
      "run-from": 1,
      "run-start": 2,
      "run-to": 2,
      "run-end": 3,
      "run-length": 3,
      "run-unit": 4,
      "run-of": 4,
    },
  },
  {
    label: 'departure RULE on ITEM because "REASON"',
    documentation: "Departs from a rule, in writing: the finding becomes a note and stays in every output.",
    places: () => [
      place("RULE", "The id of the rule, as the finding names it"),
      place("ITEM", "What the finding is on"),
      place('"REASON"', "Why, in words that hold before whoever inspects it"),
    ],
    at: {
      departure: 0,
      "departure-rule": 1,
      "departure-on": 1,
      "departure-item": 2,
      "departure-because": 2,
    },
  },
  {
    label: "measured ITEM on DAY { … }",
    documentation: "What was read on site, held against what the design gives under the same conditions.",
    places: () => [place("ITEM", "The string, run or device that was measured"), place("DAY", "As 2026-06-12")],
    at: { measured: 0, "measured-item": 1, "measured-day": 1 },
  },
];

function place(label: string, documentation: string): Place {
  return { label, documentation };
}

function cablesOf(assessment: Assessment | undefined): string {
  const cables = [...(assessment?.design.parts.values() ?? [])].filter(({ kind }) => kind === "cable");
  if (cables.length === 0) return "";
  return `: ${cables
    .slice(0, 8)
    .map(({ name }) => name)
    .join(", ")}`;
}

/** `asked` where somebody pressed a key for it: then a property's value is explained too. */
export function signatureAt(view: WorkspaceView, uri: string, offset: number, asked: boolean): Signature | undefined {
  const text = view.sources.text(uri);
  const fragment = fragmentAt(view.sources.fragments(uri), offset);
  if (text === undefined || !fragment) return undefined;
  const wanted = wantedAt(text, fragment.chunk.start, offset);
  if (wanted.state === "value" || wanted.state === "after-value") return asked ? valueSignature(wanted) : undefined;
  if (wanted.state === "nothing" || wanted.state === "text") return undefined;
  const { state } = wanted;
  for (const { label, documentation, places, at } of sentences) {
    const active = at[state];
    if (active === undefined) continue;
    const own = places(view.assessments(uri)[0]);
    // At the number itself it is still the length that is being written, behind a dot still the name before it.
    const isAtNumber = state === "run-unit" && wanted.number !== undefined && /\S$/.test(text.slice(0, offset));
    const isBefore = isAtNumber || wanted.path.length > 0;
    return { label, documentation, places: own, active: isBefore ? active - 1 : active };
  }
  return undefined;
}

function valueSignature(wanted: Wanted): Signature | undefined {
  const row = wantedProperty(wanted);
  if (!row) return undefined;
  const value = row.typical ?? "VALUE";
  return {
    label: `${row.name}: ${value}`,
    documentation: propertyText(row),
    places: [place(value, row.typical === undefined ? row.help : "A typical value, not yours")],
    active: 0,
  };
}
