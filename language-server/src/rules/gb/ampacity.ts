import { type AmpacityColumn, ampacityColumn, type FactorTable, type SizeTable } from "../../physics/ampacity.js";
import type { Source } from "../../physics/figure.js";
import { pvColumns } from "../iec/pv-cable.js";
import { air70, air90, bunched, buriedAlone, ground70, ground90, onTray, singleLayer } from "./appendix-4-factors.js";
import { flexible, largeSizes, singles4D1A, singles4E1A } from "./appendix-4-large.js";
import { table4D2A, table4D4A, table4D5 } from "./appendix-4-thermoplastic.js";
import { table4E1A, table4E2A, table4E4A } from "./appendix-4-thermosetting.js";
import { halved } from "./sizes.js";

/** Which column of Appendix 4 stands for which words of a design. */

type Head = Omit<AmpacityColumn, "ratings" | "loadedConductors">;

const enclosed = ["conduit-in-air", "trunking"];
const inWall = ["conduit-in-insulated-wall"];
const clipped = ["clipped-direct", "on-surface", "touching-on-surface"];
const inAir = ["free-in-air", "tray"];
const buried = ["buried"];
const surrounded = ["in-insulation"];
const fine = "less 3 to 5 % for flexible conductors";
const half = "method C, halved by regulation 523.9";
const all = [1, 1.5, 2.5, 4, 6, 10, 16, 25, 35];
const allLarge = [...all, ...largeSizes];

const singles70 = { insulation: "thermoplastic-70", types: ["singles", "tails"], ambient: air70 };
const singles90 = { insulation: "thermosetting-90", types: ["singles", "tails"], ambient: air90 };
const leads70 = { ...singles70, types: ["battery-lead"] };
const leads90 = { ...singles90, types: ["battery-lead"] };
/** The tables give singles in free air from 25 mm² on only; clipped to a surface is the next worse way. */
const clippedOrFree = [...clipped, ...inAir];
const multicore70 = { insulation: "thermoplastic-70", types: ["multicore"], ambient: air70 };
const multicore90 = { insulation: "thermosetting-90", types: ["multicore"], ambient: air90 };
const flat70 = { insulation: "thermoplastic-70", types: ["twin-and-earth"], ambient: air70 };
const armoured70 = { insulation: "thermoplastic-70", types: ["armoured"], ambient: air70 };
const armoured90 = { insulation: "thermosetting-90", types: ["armoured"], ambient: air90 };
/** PV cable in conduit runs as a 90 °C thermosetting cable: its own table ends at surfaces. */
const pvEnclosed = { insulation: "pv-120", types: ["pv"], ambient: air90 };

/** `read`: the sizes whose figure was read in print; all others are from memory. */
function columns(
  table: string,
  head: Omit<Head, "methods">,
  methods: readonly string[],
  two: SizeTable,
  three: SizeTable | undefined,
  readTwo: readonly number[] = [],
  readThree: readonly number[] = [],
): AmpacityColumn[] {
  const source: Source = { title: "BS 7671:2018, Appendix 4", clause: `Table ${table}`, basis: "memory" };
  const name = `BS 7671 Table ${table}`;
  const made = [ampacityColumn({ ...head, methods, loadedConductors: 2 }, name, source, two, readTwo)];
  if (three) made.push(ampacityColumn({ ...head, methods, loadedConductors: 3 }, name, source, three, readThree));
  return made;
}

export const ampacity: readonly AmpacityColumn[] = [
  ...pvColumns,
  ...columns("4E1A, method B", pvEnclosed, enclosed, table4E1A.BTwo, undefined, all),
  ...columns("4E1A, method A", pvEnclosed, inWall, table4E1A.ATwo, undefined, all),
  ...columns(`4E1A, ${half}`, pvEnclosed, surrounded, halved(table4E1A.CTwo), undefined, all),

  ...columns("4D1A, method A", singles70, inWall, singles4D1A.ATwo, singles4D1A.AThree, [10]),
  ...columns("4D1A, method B", singles70, enclosed, singles4D1A.BTwo, singles4D1A.BThree),
  ...columns("4D1A, method C", singles70, clippedOrFree, singles4D1A.CTwo, singles4D1A.CThree),
  ...columns("4E1A, method A", singles90, inWall, singles4E1A.ATwo, singles4E1A.AThree, allLarge, allLarge),
  ...columns("4E1A, method B", singles90, enclosed, singles4E1A.BTwo, singles4E1A.BThree, allLarge, allLarge),
  ...columns("4E1A, method C", singles90, clippedOrFree, singles4E1A.CTwo, singles4E1A.CThree, allLarge, allLarge),

  ...columns(`4D1A, ${half}`, singles70, surrounded, halved(singles4D1A.CTwo), halved(singles4D1A.CThree)),
  ...columns(
    `4E1A, ${half}`,
    singles90,
    surrounded,
    halved(singles4E1A.CTwo),
    halved(singles4E1A.CThree),
    allLarge,
    allLarge,
  ),

  ...columns(`4D1A, method A, ${fine}`, leads70, inWall, flexible(singles4D1A.ATwo), undefined),
  ...columns(`4D1A, method B, ${fine}`, leads70, enclosed, flexible(singles4D1A.BTwo), undefined),
  ...columns(`4D1A, method C, ${fine}`, leads70, clippedOrFree, flexible(singles4D1A.CTwo), undefined),
  ...columns(`4E1A, method A, ${fine}`, leads90, inWall, flexible(singles4E1A.ATwo), undefined),
  ...columns(`4E1A, method B, ${fine}`, leads90, enclosed, flexible(singles4E1A.BTwo), undefined),
  ...columns(`4E1A, method C, ${fine}`, leads90, clippedOrFree, flexible(singles4E1A.CTwo), undefined),

  ...columns("4D2A, method A", multicore70, inWall, table4D2A.ATwo, table4D2A.AThree, [10]),
  ...columns("4D2A, method B", multicore70, enclosed, table4D2A.BTwo, table4D2A.BThree, [1, 1.5]),
  ...columns("4D2A, method C", multicore70, clipped, table4D2A.CTwo, table4D2A.CThree, [1, 1.5], [4, 10]),
  ...columns("4D2A, method E", multicore70, inAir, table4D2A.ETwo, table4D2A.EThree),
  ...columns("4E2A, method A", multicore90, inWall, table4E2A.ATwo, table4E2A.AThree),
  ...columns("4E2A, method B", multicore90, enclosed, table4E2A.BTwo, table4E2A.BThree),
  ...columns("4E2A, method C", multicore90, clipped, table4E2A.CTwo, table4E2A.CThree, [1.5, 2.5, 4, 6, 10, 16, 25]),
  ...columns("4E2A, method E", multicore90, inAir, table4E2A.ETwo, table4E2A.EThree),

  ...columns(`4D2A, ${half}`, multicore70, surrounded, halved(table4D2A.CTwo), halved(table4D2A.CThree)),
  ...columns(`4E2A, ${half}`, multicore90, surrounded, halved(table4E2A.CTwo), halved(table4E2A.CThree)),

  ...columns("4D5, method A", flat70, inWall, table4D5.A, undefined, [1, 1.5]),
  ...columns("4D5, method C", flat70, clipped, table4D5.C, undefined, [1, 1.5]),
  // Which of the ceiling and stud-wall methods applies is not asked for, so the one with the least current is taken.
  ...columns("4D5, method 103", flat70, surrounded, table4D5.method103, undefined, [1, 1.5]),

  ...columns("4D4A, method C", armoured70, clipped, table4D4A.CTwo, table4D4A.CThree),
  ...columns("4D4A, method E", armoured70, inAir, table4D4A.ETwo, table4D4A.EThree),
  ...columns("4D4A, method D", { ...armoured70, ambient: ground70 }, buried, table4D4A.DTwo, table4D4A.DThree),
  ...columns("4E4A, method C", armoured90, clipped, table4E4A.CTwo, table4E4A.CThree),
  ...columns("4E4A, method E", armoured90, inAir, table4E4A.ETwo, table4E4A.EThree),
  ...columns("4E4A, method D", { ...armoured90, ambient: ground90 }, buried, table4E4A.DTwo, table4E4A.DThree),
];

export const grouping: ReadonlyMap<string, FactorTable> = new Map([
  ["conduit-in-air", bunched],
  ["conduit-in-insulated-wall", bunched],
  ["trunking", bunched],
  ["in-insulation", bunched],
  ["on-surface", singleLayer],
  ["touching-on-surface", singleLayer],
  ["clipped-direct", singleLayer],
  ["free-in-air", onTray],
  ["tray", onTray],
  ["buried", buriedAlone],
]);
