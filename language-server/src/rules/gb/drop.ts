import type { DropColumn } from "../../physics/ac-drop.js";
import { type DropTable, dropTables as tables } from "./appendix-4-drop.js";

/** Which voltage drop column of Appendix 4 stands for which words of a design. */

const enclosed = ["conduit-in-air", "trunking", "conduit-in-insulated-wall"];
const clipped = ["clipped-direct", "on-surface", "touching-on-surface", "in-insulation"];
const inAir = ["free-in-air", "tray"];
const everywhere = [...enclosed, ...clipped, ...inAir, "buried"];
const singles = ["singles", "tails"];

function column(
  insulation: string,
  types: readonly string[],
  methods: readonly string[],
  loadedConductors: 2 | 3,
  { source, rows }: DropTable,
  clause = source.clause,
): DropColumn {
  const from = clause === source.clause ? source : { ...source, clause, basis: "memory" as const };
  return { insulation, types, methods, loadedConductors, name: `BS 7671 ${clause}`, source: from, rows };
}

const pvc = "thermoplastic-70";
const xlpe = "thermosetting-90";

/**
 * Singles in free air take the enclosed column, and three clipped singles too: cables further apart have more
 * reactance, and that column has most. Armoured cables share the figures of plain multicore ones.
 */
export const drop: readonly DropColumn[] = [
  column(pvc, singles, [...enclosed, ...inAir], 2, tables.singlesThermoplasticTwoEnclosed),
  column(pvc, singles, clipped, 2, tables.singlesThermoplasticTwoClipped),
  column(pvc, singles, [...enclosed, ...inAir, ...clipped], 3, tables.singlesThermoplasticThreeEnclosed),
  column(xlpe, singles, [...enclosed, ...inAir], 2, tables.singlesThermosettingTwoEnclosed),
  column(xlpe, singles, clipped, 2, tables.singlesThermosettingTwoClipped),
  column(xlpe, singles, [...enclosed, ...inAir, ...clipped], 3, tables.singlesThermosettingThreeEnclosed),

  column(pvc, ["multicore"], everywhere, 2, tables.multicoreThermoplasticTwo),
  column(pvc, ["multicore"], everywhere, 3, tables.multicoreThermoplasticThree),
  column(xlpe, ["multicore"], everywhere, 2, tables.multicoreThermosettingTwo),
  column(xlpe, ["multicore"], everywhere, 3, tables.multicoreThermosettingThree),

  column(pvc, ["twin-and-earth"], everywhere, 2, tables.flatTwin),

  column(pvc, ["armoured"], everywhere, 2, tables.multicoreThermoplasticTwo, "Table 4D4B, two-core"),
  column(pvc, ["armoured"], everywhere, 3, tables.multicoreThermoplasticThree, "Table 4D4B, three- or four-core"),
  column(xlpe, ["armoured"], everywhere, 2, tables.armouredThermosettingTwo),
  column(xlpe, ["armoured"], everywhere, 3, tables.multicoreThermosettingThree, "Table 4E4B, three- or four-core"),
];
