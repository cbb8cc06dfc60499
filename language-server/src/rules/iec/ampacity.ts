import { type AmbientRule, type AmpacityColumn, ampacityColumn, type SizeTable } from "../../physics/ampacity.js";
import { celsius } from "../../physics/constants.js";
import type { Source } from "../../physics/figure.js";
import { grouping } from "../gb/ampacity.js";
import { flexible, singles4D1A, singles4E1A } from "../gb/appendix-4-large.js";
import { table4D2A, table4D4A } from "../gb/appendix-4-thermoplastic.js";
import { table4E1A, table4E2A, table4E4A } from "../gb/appendix-4-thermosetting.js";
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
const inAir = ["free-in-air", "tray"];
const surrounded = ["in-insulation"];
const half = "method C, halved in thermal insulation from 0.5 m on";

interface Laid {
  readonly types: readonly string[];
  readonly methods: readonly string[];
  readonly two: SizeTable;
  readonly three?: SizeTable;
  readonly ambient?: AmbientRule;
}

function pair(insulation: string, method: string, laid: Laid): AmpacityColumn[] {
  const { types, methods, two, three } = laid;
  const isCool = insulation === "thermoplastic-70";
  const ambient = laid.ambient ?? (isCool ? air70 : air90);
  const made = (loadedConductors: 2 | 3, table: string, rows: SizeTable): AmpacityColumn => {
    const name = `Table ${table}, ${method}`;
    const head = { insulation, types, methods, loadedConductors, ambient };
    return ampacityColumn(head, `IEC 60364-5-52 ${name}`, source(name), rows);
  };
  const columns = [made(2, isCool ? "B.52.2" : "B.52.3", two)];
  if (three) columns.push(made(3, isCool ? "B.52.4" : "B.52.5", three));
  return columns;
}

const singles = ["singles", "tails"];
const leads = ["battery-lead"];
/** Flat cables with a protective conductor count as multicore ones, and armoured cables too: the annex has no own figures. */
const multicore = ["multicore", "twin-and-earth", "armoured"];
const pvc = "thermoplastic-70";
const xlpe = "thermosetting-90";
/** Clipped, a pair of singles sheds heat as well as the two cores of one cable, and better in free air. */
const clippedOrFree = [...clipped, ...inAir];

function columnsOf(insulation: string, single: typeof singles4D1A, multi: typeof table4D2A): AmpacityColumn[] {
  return [
    ...pair(insulation, "method A1", { types: singles, methods: inWall, two: single.ATwo, three: single.AThree }),
    ...pair(insulation, "method B1", { types: singles, methods: enclosed, two: single.BTwo, three: single.BThree }),
    ...pair(insulation, "method C", {
      types: singles,
      methods: clippedOrFree,
      two: cOf(multi.CTwo, single.CTwo),
      three: cOf(multi.CThree, single.CThree),
    }),
    ...pair(insulation, "method A1", { types: leads, methods: inWall, two: flexible(single.ATwo) }),
    ...pair(insulation, "method B1", { types: leads, methods: enclosed, two: flexible(single.BTwo) }),
    ...pair(insulation, "method C", {
      types: leads,
      methods: clippedOrFree,
      two: flexible(cOf(multi.CTwo, single.CTwo)),
    }),
    ...pair(insulation, "method A2", { types: multicore, methods: inWall, two: multi.ATwo, three: multi.AThree }),
    ...pair(insulation, "method B2", { types: multicore, methods: enclosed, two: multi.BTwo, three: multi.BThree }),
    ...pair(insulation, "method C", { types: multicore, methods: clipped, two: multi.CTwo, three: multi.CThree }),
    ...pair(insulation, "method E", { types: multicore, methods: inAir, two: multi.ETwo, three: multi.EThree }),
    ...pair(insulation, half, {
      types: singles,
      methods: surrounded,
      two: halved(cOf(multi.CTwo, single.CTwo)),
      three: halved(cOf(multi.CThree, single.CThree)),
    }),
    ...pair(insulation, half, {
      types: multicore,
      methods: surrounded,
      two: halved(multi.CTwo),
      three: halved(multi.CThree),
    }),
  ];
}

/** Method C of the annex is one column for singles and multicore; above 35 mm² that of singles goes on. */
function cOf(multi: SizeTable, single: SizeTable): SizeTable {
  const known = new Set(multi.map(([size]) => size));
  return [...multi, ...single.filter(([size]) => !known.has(size))];
}

const ground = (conductor: number): AmbientRule => ({
  conductor: celsius(conductor),
  reference: celsius(20),
  source: source("Table B.52.15"),
});
const buried = { types: ["armoured"], methods: ["buried"] };

export const ampacity: readonly AmpacityColumn[] = [
  ...pvColumns,
  // PV cable in conduit runs as a 90 °C thermosetting cable: its own table ends at surfaces.
  ...pair("pv-120", "method B1", { types: ["pv"], methods: enclosed, two: table4E1A.BTwo }),
  ...pair("pv-120", "method A1", { types: ["pv"], methods: inWall, two: table4E1A.ATwo }),
  ...pair("pv-120", half, { types: ["pv"], methods: surrounded, two: halved(table4E2A.CTwo) }),
  ...columnsOf(pvc, singles4D1A, table4D2A),
  ...columnsOf(xlpe, singles4E1A, table4E2A),
  ...pair(pvc, "method D", { ...buried, two: table4D4A.DTwo, three: table4D4A.DThree, ambient: ground(70) }),
  ...pair(xlpe, "method D", { ...buried, two: table4E4A.DTwo, three: table4E4A.DThree, ambient: ground(90) }),
];

export { grouping };
