import { from1, from1p5, sized } from "./sizes.js";

/**
 * BS 7671 Appendix 4, current-carrying capacity of copper cables with 90 °C thermosetting insulation, A.
 * Letters are reference methods; Two and Three are loaded conductors.
 */

/** Table 4E1A: single-core 90 C thermosetting. */
export const table4E1A = {
  ATwo: sized(from1, [14, 19, 26, 35, 45, 61, 81, 106, 131]),
  AThree: sized(from1, [13, 17, 23, 31, 40, 54, 73, 95, 117]),
  BTwo: sized(from1, [17, 23, 31, 42, 54, 75, 100, 133, 164]),
  BThree: sized(from1, [15, 20, 28, 37, 48, 66, 88, 117, 144]),
  CTwo: sized(from1, [19, 25, 34, 46, 59, 81, 109, 143, 176]),
  CThree: sized(from1, [17.5, 23, 31, 41, 54, 74, 99, 130, 161]),
};

/** Table 4E2A: multicore 90 C thermosetting. */
export const table4E2A = {
  ATwo: sized(from1, [14.5, 18.5, 25, 33, 42, 57, 76, 99, 121]),
  BTwo: sized(from1, [17, 22, 30, 40, 51, 69, 91, 119, 146]),
  CTwo: sized(from1, [19, 24, 33, 45, 58, 80, 107, 138, 171]),
  ETwo: sized(from1, [21, 26, 36, 49, 63, 86, 115, 149, 185]),
  AThree: sized(from1, [13, 16.5, 22, 30, 38, 51, 68, 89, 109]),
  BThree: sized(from1, [15, 19.5, 26, 35, 44, 60, 80, 105, 128]),
  CThree: sized(from1, [17, 22, 30, 40, 52, 71, 96, 119, 147]),
  EThree: sized(from1, [18, 23, 32, 42, 54, 75, 100, 127, 158]),
};

/** Table 4E4A: multicore armoured 90 C. */
export const table4E4A = {
  CTwo: sized(from1p5, [27, 36, 49, 62, 85, 110, 146, 180]),
  CThree: sized(from1p5, [23, 31, 42, 53, 73, 94, 124, 154]),
  ETwo: sized(from1p5, [29, 39, 52, 66, 90, 115, 152, 188]),
  EThree: sized(from1p5, [25, 33, 44, 56, 78, 99, 131, 162]),
  DTwo: sized(from1p5, [25, 33, 43, 53, 71, 91, 116, 139]),
  DThree: sized(from1p5, [21, 28, 36, 44, 58, 75, 96, 115]),
};
