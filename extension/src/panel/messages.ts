/*
 * What the extension and the page of its panel say to each other: plain data, one union a direction. A view that is
 * added to the panel adds its messages here.
 */

import type { Mode } from "../../../language-server/src/circuit/modes";
import type { Table } from "../../../language-server/src/drawing/charts/table";
import type { Mark } from "../../../language-server/src/drawing/diagram";
import type { LiveParts } from "../../../language-server/src/editor/diagram/live-parts";

/** From the extension to the page. */
export type ToPage =
  | { readonly is: "design"; readonly design: ShownDesign; readonly svg: string }
  | { readonly is: "chart"; readonly head: ShownHead; readonly chart: ShownChart }
  /** There is nothing to show, and why. */
  | { readonly is: "nothing"; readonly words: string }
  /** What the cursor in the text stands on; without an id, nothing that is drawn. */
  | { readonly is: "cursor"; readonly id?: string }
  /** What is known of a thing, as HTML made from the server's hover. */
  | { readonly is: "told"; readonly id: string; readonly html: string };

/** From the page to the extension. */
export type FromPage =
  /** The page listens; it is sent everything. */
  | { readonly is: "ready" }
  | { readonly is: "go-to"; readonly id: string }
  | { readonly is: "tell"; readonly id: string }
  | { readonly is: "follow"; readonly href: string }
  /** Opens the page of a rule. */
  | { readonly is: "rule"; readonly rule: string }
  | { readonly is: "choose"; readonly entry: string }
  /** Turns to another view of the design. */
  | { readonly is: "view"; readonly view: PanelView }
  /** Writes what is shown to a file. */
  | { readonly is: "export" }
  /** Begins to operate switches, or ends it. */
  | { readonly is: "switching"; readonly on: boolean }
  | { readonly is: "switch"; readonly id: string }
  | { readonly is: "close-all" }
  | { readonly is: "mode"; readonly mode: Partial<Mode> };

/** What the page keeps over a restart of the editor, and the extension restores the panel from. */
export interface KeptState {
  /** A document of the design. */
  readonly uri?: string;
  /** The file that the chosen design begins in. */
  readonly entry?: string;
  readonly view?: PanelView;
}

export type Tab = "diagram" | "voltage" | "curve" | "margins" | "drop";

/** What of a design is looked at. */
export interface PanelView {
  readonly tab: Tab;
  /** The chart that was last chosen of each sort that has several: `voltage:S1`. */
  readonly chosen: Readonly<Partial<Record<Tab, string>>>;
  /** For current-voltage curves. */
  readonly conditions: ShownConditions;
}
export interface ShownConditions {
  /** W/m². */
  readonly irradiance: number;
  /** °C. */
  readonly cell: number;
}
export const firstView: PanelView = { tab: "diagram", chosen: {}, conditions: { irradiance: 1000, cell: 25 } };

/** What is told of a design above every view of it. */
export interface ShownHead {
  readonly uri: string;
  readonly entry: string;
  /** All designs that the file belongs to. */
  readonly designs: readonly { readonly entry: string; readonly name: string }[];
  readonly site: string;
  readonly ruleSet: string;
  readonly verdict: string;
  readonly whatIf: readonly string[];
  /** Where text cannot be read: "parts/roof.sun, line 12". What is drawn there is what it last said. */
  readonly unread: readonly string[];
}

export interface ShownChart {
  readonly tab: Tab;
  /** Charts of its sort. */
  readonly names: readonly { readonly name: string; readonly about: string }[];
  /** The one that is shown; undefined where there is none. */
  readonly name?: string;
  readonly svg?: string;
  readonly tables: readonly Table[];
  /** What can be gone to, by id. */
  readonly places: readonly string[];
  /** Why there is nothing to show, or why it is not what was chosen. */
  readonly words?: string;
}

export interface ShownDesign extends ShownHead {
  readonly marks: readonly Mark[];
  readonly cautions: readonly string[];
  /** Which wires join which nodes, from left to right. */
  readonly joins: readonly Join[];
  readonly isEmpty: boolean;
  /** What stays live, while switches are operated. */
  readonly live?: ShownLive;
}

/** What the server says of it, with how each thing is drawn left out. */
export interface ShownLive extends Omit<LiveParts, "states" | "notCounted"> {
  /** What is left out is asked in every one. */
  readonly mode: Partial<Mode>;
  readonly notCounted: readonly string[];
}
export interface Join {
  readonly wire: string;
  readonly from: string;
  readonly to: string;
}
