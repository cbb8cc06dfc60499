import type { Zone } from "./array.js";
import type { Circuit } from "./circuit.js";
import type { Plant } from "./plant.js";

/** Everything that is wired together, arrays and all: for what crosses an inverter. */
export interface Piece {
  readonly circuit: Circuit;
  readonly zones: readonly Zone[];
  readonly plants: readonly Plant[];
}
