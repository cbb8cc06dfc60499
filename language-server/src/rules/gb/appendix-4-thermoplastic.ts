import { from1, from1p5, sized, to16 } from "./sizes.js";

/**
 * BS 7671 Appendix 4, current-carrying capacity of copper cables with 70 °C thermoplastic insulation, A.
 * Letters are reference methods; Two and Three are loaded conductors. How well each cell is known is said where the
 * columns are put to use.
 */

/** Table 4D1A: single-core 70 C thermoplastic, A. */
export const table4D1A = {
  ATwo: sized(from1, [11, 14.5, 20, 26, 34, 46, 61, 80, 99]),
  AThree: sized(from1, [10.5, 13.5, 18, 24, 31, 42, 56, 73, 89]),
  BTwo: sized(from1, [13.5, 17.5, 24, 32, 41, 57, 76, 101, 125]),
  BThree: sized(from1, [12, 15.5, 21, 28, 36, 50, 68, 89, 110]),
  CTwo: sized(from1, [15.5, 20, 27, 37, 47, 65, 87, 114, 141]),
  CThree: sized(from1, [14, 18, 25, 33, 43, 59, 79, 104, 129]),
};

/** Table 4D2A: multicore 70 C thermoplastic. */
export const table4D2A = {
  ATwo: sized(from1, [11, 14, 18.5, 25, 32, 43, 57, 75, 92]),
  AThree: sized(from1, [10, 13, 17.5, 23, 29, 39, 52, 68, 83]),
  BTwo: sized(from1, [13, 16.5, 23, 30, 38, 52, 69, 90, 111]),
  BThree: sized(from1, [11.5, 15, 20, 27, 34, 46, 62, 80, 99]),
  CTwo: sized(from1, [15, 19.5, 27, 36, 46, 63, 85, 112, 138]),
  CThree: sized(from1, [13.5, 17.5, 24, 32, 41, 57, 76, 96, 119]),
  ETwo: sized(from1, [17, 22, 30, 40, 51, 70, 94, 119, 148]),
  EThree: sized(from1, [14.5, 18.5, 25, 34, 43, 60, 80, 101, 126]),
};

/** Table 4D5: flat twin and earth 70 C. */
export const table4D5 = {
  method100: sized(to16, [13, 16, 21, 27, 34, 45, 57]),
  method101: sized(to16, [10.5, 13, 17, 22, 27, 36, 46]),
  method102: sized(to16, [13, 16, 21, 27, 35, 47, 63]),
  method103: sized(to16, [8, 10, 13.5, 17.5, 23.5, 32, 42.5]),
  C: sized(to16, [16, 20, 27, 37, 47, 64, 85]),
  A: sized(to16, [11.5, 14.5, 20, 26, 32, 44, 57]),
};

/** Table 4D4A: multicore armoured 70 C. */
export const table4D4A = {
  CTwo: sized(from1p5, [21, 28, 38, 49, 67, 89, 118, 145]),
  CThree: sized(from1p5, [18, 25, 33, 42, 58, 77, 102, 125]),
  ETwo: sized(from1p5, [22, 31, 41, 53, 72, 97, 128, 157]),
  EThree: sized(from1p5, [19, 26, 35, 45, 62, 83, 110, 135]),
  DTwo: sized(from1p5, [22, 29, 37, 46, 60, 78, 99, 119]),
  DThree: sized(from1p5, [18, 24, 30, 38, 50, 64, 82, 98]),
};
