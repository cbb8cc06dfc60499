import type { Design } from "../design/design.js";
import type { Zone } from "./array.js";
import type { Circuit } from "./circuit.js";
import type { Plant } from "./plant.js";

/** A whole design with its circuit: for what cannot be said of one array or one plant alone. */
export interface Installation {
  readonly design: Design;
  readonly circuit: Circuit;
  readonly zones: readonly Zone[];
  readonly plants: readonly Plant[];
}
