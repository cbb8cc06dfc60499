import { type AmbientRule, type AmpacityColumn, ampacityColumn, type SizeTable } from "../../physics/ampacity.js";
import { celsius } from "../../physics/constants.js";
import type { Source } from "../../physics/figure.js";
import { grouping } from "../gb/ampacity.js";
import { table4D1A, table4D2A } from "../gb/appendix-4-thermoplastic.js";
import { table4E1A, table4E2A } from "../gb/appendix-4-thermosetting.js";
import { halved } from "../gb/sizes.js";
import { pvColumns } from "./pv-cable.js";

/**
 * Current-carrying capacity for the international set. Methods A1, A2, B1, B2 and C of IEC 60364-5-52 Annex B carry the
 * figures that the British tables print for singles in conduit (A, B) and for multicore cables (A, B, C); the annex
 * itself is known from memory only, so every cell says so.
 */

function source(table: string): Source {
  return { title: "IEC 60364-5-52:2009, Annex B", clause: table, basis: "memory" };
}

function air(conductor: number, factorAt25: number): AmbientRule {
  return {
    conductor: celsius(conductor),
    reference: celsius(30),
    coolest: { ambient: celsius(25), factor: factorAt25 },
    source: source("Table B.52.14"),
  };
}
const air70 = air(70, 1.06);
const air90 = air(90, 1.04);

const enclosed = ["conduit-in-air", "trunking"];
const inWall = ["conduit-in-insulated-wall"];
const clipped = ["clipped-direct", "on-surface", "touching-on-surface"];

function column(
  table: string,
  insulation: string,
  types: readonly string[],
  methods: readonly string[],
  ambient: AmbientRule,
  rows: SizeTable,
): AmpacityColumn {
  const head = { insulation, types, methods, loadedConductors: 2, ambient } as const;
  return ampacityColumn(head, `IEC 60364-5-52 ${table}`, source(table), rows);
}

const surrounded = ["in-insulation"];
const half = "method C, halved in thermal insulation from 0.5 m on";

const pvc = "Table B.52.2";
const xlpe = "Table B.52.3";
const singles = ["singles", "tails"];

export const ampacity: readonly AmpacityColumn[] = [
  ...pvColumns,
  column(`${xlpe}, method B1`, "pv-120", ["pv"], enclosed, air90, table4E1A.BTwo),
  column(`${xlpe}, method A1`, "pv-120", ["pv"], inWall, air90, table4E1A.ATwo),
  column(`${xlpe}, ${half}`, "pv-120", ["pv"], surrounded, air90, halved(table4E2A.CTwo)),
  column(`${pvc}, ${half}`, "thermoplastic-70", [...singles, "multicore"], surrounded, air70, halved(table4D2A.CTwo)),
  column(`${xlpe}, ${half}`, "thermosetting-90", [...singles, "multicore"], surrounded, air90, halved(table4E2A.CTwo)),
  column(`${pvc}, method A1`, "thermoplastic-70", singles, inWall, air70, table4D1A.ATwo),
  column(`${pvc}, method B1`, "thermoplastic-70", singles, enclosed, air70, table4D1A.BTwo),
  column(`${pvc}, method C`, "thermoplastic-70", [...singles, "multicore"], clipped, air70, table4D2A.CTwo),
  column(`${pvc}, method A2`, "thermoplastic-70", ["multicore"], inWall, air70, table4D2A.ATwo),
  column(`${pvc}, method B2`, "thermoplastic-70", ["multicore"], enclosed, air70, table4D2A.BTwo),
  column(`${xlpe}, method A1`, "thermosetting-90", singles, inWall, air90, table4E1A.ATwo),
  column(`${xlpe}, method B1`, "thermosetting-90", singles, enclosed, air90, table4E1A.BTwo),
  column(`${xlpe}, method C`, "thermosetting-90", [...singles, "multicore"], clipped, air90, table4E2A.CTwo),
  column(`${xlpe}, method A2`, "thermosetting-90", ["multicore"], inWall, air90, table4E2A.ATwo),
  column(`${xlpe}, method B2`, "thermosetting-90", ["multicore"], enclosed, air90, table4E2A.BTwo),
];

export { grouping };
