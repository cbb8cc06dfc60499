import type { SizeTable } from "../../physics/ampacity.js";
import { table4D1A } from "./appendix-4-thermoplastic.js";
import { table4E1A } from "./appendix-4-thermosetting.js";
import { sized } from "./sizes.js";

/**
 * BS 7671 Appendix 4, single-core copper cables up to 95 mm², as tails and battery leads need, A. Above 35 mm² Table
 * 4D1A is from memory and Table 4E1A as read in print.
 */
export const largeSizes = [50, 70, 95] as const;

type Columns = Readonly<Record<keyof typeof table4D1A, SizeTable>>;

function withLarge(table: Columns, large: Readonly<Record<keyof Columns, readonly number[]>>): Columns {
  const column = (name: keyof Columns): SizeTable => [...table[name], ...sized(largeSizes, large[name])];
  return {
    ATwo: column("ATwo"),
    AThree: column("AThree"),
    BTwo: column("BTwo"),
    BThree: column("BThree"),
    CTwo: column("CTwo"),
    CThree: column("CThree"),
  };
}

export const singles4D1A = withLarge(table4D1A, {
  ATwo: [119, 151, 182],
  AThree: [108, 136, 164],
  BTwo: [151, 192, 232],
  BThree: [134, 171, 207],
  CTwo: [182, 234, 284],
  CThree: [167, 214, 261],
});

export const singles4E1A = withLarge(table4E1A, {
  ATwo: [158, 200, 241],
  AThree: [141, 179, 216],
  BTwo: [198, 253, 306],
  BThree: [175, 222, 269],
  CTwo: [228, 293, 355],
  CThree: [209, 268, 326],
});

/** The same for flexible conductors (class 5): 95 % up to 16 mm², 97 % above. From memory. */
export function flexible(table: SizeTable): SizeTable {
  return table.map(([size, amperes]) => [size, amperes * (size <= 16 ? 0.95 : 0.97)] as const);
}
