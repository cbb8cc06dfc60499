import type { Dimension } from "@sunwright/grammar";
import type { Chunk, Place } from "../place.js";

/**
 * What the text says, as plain data: nothing here knows the parser, the editor, or electricity.
 * One `Fragment` a chunk; fragments of unchanged chunks are the same objects from one version to the next.
 */

export interface Quantity {
  readonly kind: "quantity";
  /** SI base units; kelvin for temperatures, a plain ratio for per cent. */
  readonly si: number;
  readonly dimension: Dimension;
  /** As written: `18`, `m`. The unit is empty for a bare number. */
  readonly written: number;
  readonly unit: string;
}
export interface Range {
  readonly kind: "range";
  readonly low: Quantity;
  readonly high: Quantity;
}
export interface List {
  readonly kind: "list";
  readonly values: readonly Value[];
}
export interface Flag {
  readonly kind: "flag";
  readonly value: boolean;
}
/** A bare word: one of an enumeration, or the name of something. */
export interface Word {
  readonly kind: "word";
  readonly value: string;
}
export interface Text {
  readonly kind: "text";
  readonly value: string;
}
/** ISO 8601 calendar day. */
export interface Day {
  readonly kind: "day";
  readonly value: string;
}
export type Value = Quantity | Range | List | Flag | Word | Text | Day;

/** A name written to refer to something: `Q1`, `INV.pv1`, `CU.K9`. */
export interface Mention {
  readonly path: readonly string[];
  readonly place: Place;
  /** One place a segment, so that a rename touches one word. */
  readonly places: readonly Place[];
}

export interface Property {
  readonly name: string;
  /** Absent when the value could not be read; a problem then says why. */
  readonly value?: Value;
  readonly place: Place;
  readonly namePlace: Place;
  readonly valuePlace: Place;
  /** `from "survey 2026-05-02"`: who says so. */
  readonly statedBy?: string;
  /** The text does not say so: somebody asks what would be if it did. */
  readonly whatIf?: true;
}

/** Anything with properties between braces. */
export interface Block {
  readonly properties: readonly Property[];
  readonly nested: readonly ItemDeclaration[];
  /** The braces with what is between them; absent where none were written. */
  readonly bodyPlace?: Place;
}

interface Declared extends Block {
  readonly place: Place;
  readonly name: string;
  /** Where the name stands; for a nameless block (`earthing { … }`) its kind word. */
  readonly namePlace: Place;
  /** Text of the doc comment before it, without stars. */
  readonly doc?: string;
}

export interface UseDeclaration {
  readonly declares: "use";
  readonly path: string;
  readonly place: Place;
  readonly pathPlace: Place;
}
export interface PartDeclaration extends Declared {
  readonly declares: "part";
  readonly kind: string;
  readonly kindPlace: Place;
}
export interface ItemDeclaration extends Declared {
  readonly declares: "item";
  readonly kind: string;
  readonly kindPlace: Place;
  /** `site "Alder Cottage"`. */
  readonly title?: string;
  readonly part?: Mention;
  /** `11 x`; undefined where no count is written, NaN where what is written is no count. */
  readonly count?: { readonly value: number; readonly place: Place; readonly whatIf?: true };
  readonly way?: { readonly value: number; readonly place: Place };
  readonly serves?: Mention | Text;
}
export interface RunDeclaration extends Declared {
  readonly declares: "run";
  readonly from?: Mention;
  readonly to?: Mention;
  readonly length?: { readonly value: Quantity; readonly place: Place; readonly whatIf?: true };
  readonly cable?: Mention;
}
export interface ReadingDeclaration extends Block {
  readonly declares: "measured";
  readonly target: Mention;
  /** Where the name of what was measured stands. */
  readonly namePlace: Place;
  readonly day?: string;
  readonly place: Place;
  readonly doc?: string;
}
export interface DepartureDeclaration extends Block {
  readonly declares: "departure";
  readonly rule: string;
  readonly rulePlace: Place;
  readonly target?: Mention;
  readonly reason: string;
  readonly place: Place;
}
export interface ExpectationDeclaration {
  readonly declares: "expect";
  readonly rule: string;
  readonly rulePlace: Place;
  readonly target?: Mention;
  readonly place: Place;
}
export type Declaration =
  | UseDeclaration
  | PartDeclaration
  | ItemDeclaration
  | RunDeclaration
  | ReadingDeclaration
  | DepartureDeclaration
  | ExpectationDeclaration;

/** Something wrong with the text itself, at the exact word. */
export interface Problem {
  /** Stable id, the same kind of word as a rule id: `missing-unit`, `unknown-property`. */
  readonly id: string;
  readonly severity: Severity;
  readonly message: string;
  readonly place: Place;
  readonly related?: readonly { readonly place: Place; readonly message: string }[];
  /** Replacement texts for the place, best first. */
  readonly suggestions?: readonly { readonly title: string; readonly text: string }[];
  /** The name that nothing has, for problems of such a name: every line that says it has the same cause. */
  readonly missing?: string;
  /** Shown faded instead of squiggled: something that is not used. */
  readonly unnecessary?: boolean;
}
export type Severity = "error" | "warning" | "note";

export interface Fragment {
  readonly chunk: Chunk;
  readonly declarations: readonly Declaration[];
  readonly problems: readonly Problem[];
  /** True while the chunk does not parse: no electrical findings are reported from it. */
  readonly broken: boolean;
}
