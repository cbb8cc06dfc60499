import { fromSi, parseQuantity } from "@sunwright/grammar";
import { expect, test } from "vitest";
import { off, withJson } from "../reference/published.js";

// US-values table "ch9_table8…": NEC chapter 9 table 8, its column of circular mils, printed to four digits.
withJson("us-values.json", (values) => {
  const rows: Record<string, { circular_mils: number }> = values.ch9_table8_dc_resistance_75C_uncoated_copper.rows;
  const gauges = Object.entries(rows).filter(([, { circular_mils }]) => circular_mils > 0);

  test("the table has gauges of both ways of writing", () => {
    expect(gauges.map(([gauge]) => gauge)).toEqual(expect.arrayContaining(["14", "4/0"]));
  });

  test.each(gauges)("%s AWG has its area in circular mils (NEC chapter 9, table 8)", (gauge, { circular_mils }) => {
    const { si, problems } = parseQuantity(`${gauge} AWG`);
    expect(problems).toEqual([]);
    expect(off(fromSi(si, "kcmil") * 1000, circular_mils)).toBeLessThan(1e-3);
  });
});
