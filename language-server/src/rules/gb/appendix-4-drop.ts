import type { DropRow } from "../../physics/ac-drop.js";
import type { Source } from "../../physics/figure.js";
import { from1, from1p5, to16 } from "./sizes.js";

/**
 * BS 7671 Appendix 4, voltage drop in mV per ampere and metre of run at the conductor's operating temperature.
 * Up to 16 mm² one figure serves; above, the resistive, reactive and total parts are tabulated apart.
 */
export interface DropTable {
  readonly source: Source;
  /** By nominal size in mm². */
  readonly rows: ReadonlyMap<number, DropRow>;
}

function column(
  clause: string,
  basis: Source["basis"],
  sizes: readonly number[],
  values: readonly (number | DropRow)[],
): DropTable {
  const rows = values.map((value, index): [number, DropRow] => [
    sizes[index]!,
    typeof value === "number" ? { r: value, x: 0, z: value } : value,
  ]);
  return { source: { title: "BS 7671:2018, Appendix 4", clause, basis }, rows: new Map(rows) };
}

export const dropTables = {
  singlesThermoplasticDc: column("Table 4D1B, d.c.", "read", from1, [44, 29, 18, 11, 7.3, 4.4, 2.8, 1.75, 1.25]),
  singlesThermoplasticTwoEnclosed: column("Table 4D1B, two cables, methods A and B", "read", from1, [
    44,
    29,
    18,
    11,
    7.3,
    4.4,
    2.8,
    { r: 1.8, x: 0.33, z: 1.8 },
    { r: 1.3, x: 0.31, z: 1.3 },
  ]),
  singlesThermoplasticTwoClipped: column("Table 4D1B, two cables touching, method C", "read", from1, [
    44,
    29,
    18,
    11,
    7.3,
    4.4,
    2.8,
    { r: 1.75, x: 0.2, z: 1.75 },
    { r: 1.25, x: 0.195, z: 1.25 },
  ]),
  singlesThermoplasticThreeEnclosed: column("Table 4D1B, three or four cables, methods A and B", "read", from1, [
    38,
    25,
    15,
    9.5,
    6.4,
    3.8,
    2.4,
    { r: 1.5, x: 0.29, z: 1.55 },
    { r: 1.1, x: 0.27, z: 1.1 },
  ]),
  multicoreThermoplasticTwo: column("Table 4D2B, two-core", "memory", from1, [
    44,
    29,
    18,
    11,
    7.3,
    4.4,
    2.8,
    { r: 1.75, x: 0.17, z: 1.75 },
    { r: 1.25, x: 0.165, z: 1.25 },
  ]),
  multicoreThermoplasticThree: column("Table 4D2B, three- or four-core", "memory", from1, [
    38,
    25,
    15,
    9.5,
    6.4,
    3.8,
    2.4,
    { r: 1.5, x: 0.145, z: 1.5 },
    { r: 1.1, x: 0.145, z: 1.1 },
  ]),
  flatTwin: column("Table 4D5", "memory", to16, [44, 29, 18, 11, 7.3, 4.4, 2.8]),
  singlesThermosettingDc: column("Table 4E1B, d.c.", "read", from1, [46, 31, 19, 12, 7.9, 4.7, 2.9, 1.85, 1.35]),
  singlesThermosettingTwoEnclosed: column("Table 4E1B, two cables, methods A and B", "read", from1, [
    46,
    31,
    19,
    12,
    7.9,
    4.7,
    2.9,
    { r: 1.85, x: 0.31, z: 1.9 },
    { r: 1.35, x: 0.29, z: 1.35 },
  ]),
  singlesThermosettingTwoClipped: column("Table 4E1B, two cables touching, method C", "read", from1, [
    46,
    31,
    19,
    12,
    7.9,
    4.7,
    2.9,
    { r: 1.85, x: 0.19, z: 1.85 },
    { r: 1.35, x: 0.18, z: 1.35 },
  ]),
  singlesThermosettingThreeEnclosed: column("Table 4E1B, three or four cables, methods A and B", "read", from1, [
    40,
    27,
    16,
    10,
    6.8,
    4.0,
    2.5,
    { r: 1.6, x: 0.27, z: 1.65 },
    { r: 1.15, x: 0.25, z: 1.15 },
  ]),
  multicoreThermosettingTwo: column("Table 4E2B, two-core", "memory", from1, [
    46,
    31,
    19,
    12,
    7.9,
    4.7,
    2.9,
    { r: 1.85, x: 0.16, z: 1.9 },
    { r: 1.35, x: 0.155, z: 1.35 },
  ]),
  multicoreThermosettingThree: column("Table 4E2B, three- or four-core", "memory", from1, [
    40,
    27,
    16,
    10,
    6.8,
    4.0,
    2.5,
    { r: 1.6, x: 0.14, z: 1.65 },
    { r: 1.15, x: 0.135, z: 1.15 },
  ]),
  armouredThermosettingTwo: column("Table 4E4B, two-core", "memory", from1p5, [
    31,
    19,
    12,
    7.9,
    4.7,
    2.9,
    { r: 1.85, x: 0.16, z: 1.9 },
    { r: 1.35, x: 0.155, z: 1.35 },
  ]),
} as const;
