import { unitsOf } from "@sunwright/grammar";
import { describe, expect, test } from "vitest";
import { limitRows } from "../../language-server/src/design/schema/limits.js";
import { findColumn, tabulatedCurrent } from "../../language-server/src/physics/ampacity.js";
import type { Source } from "../../language-server/src/physics/figure.js";
import { ruleSetOf, ruleSets } from "../../language-server/src/rules/rule-sets.js";

describe.each(ruleSets.map((set) => [set.id, set] as const))("rule set %s", (_id, set) => {
  test("has a figure with a source for every limit, under the limit's property name", () => {
    for (const [key, row] of Object.entries(limitRows)) {
      const limit = set.limits[key as keyof typeof limitRows];
      expect(set.limit(row.name)).toBe(limit);
      expect(limit.dimension, row.name).toBe(row.dimension);
      expect(limit.value, row.name).toBeGreaterThan(0);
      expect(limit.source.title, row.name).not.toBe("");
      expect(limit.origin.source, row.name).toBe(limit.source);
    }
  });

  test("refuses a limit that does not exist", () => {
    expect(() => set.limit("dc-voltage-drop")).toThrow(RangeError);
  });

  test("names its editions", () => {
    expect(set.editions.length).toBeGreaterThan(1);
    for (const { title, edition } of set.editions) expect([title, edition]).not.toContain("");
  });

  test("knows every word that a site may say of its building, and every mounting", () => {
    for (const building of ["dwelling", "other-building", "ground-mounted"]) {
      expect(set.criticalLengthConstants.get(building)!.value).toBeGreaterThan(0);
      expect(set.limit(`${building}-dc-voltage`).value).toBeGreaterThanOrEqual(1000);
    }
    for (const mounting of ["on-roof", "in-roof", "flat-roof", "facade", "ground"]) {
      expect(set.cellRise.get(mounting)!.origin.kind, mounting).toBe("assumed");
    }
  });

  test("no column stands for words that another column stands for", () => {
    const seen = new Set<string>();
    for (const { insulation, types, methods, loadedConductors } of set.ampacity) {
      for (const type of types) {
        for (const method of methods) {
          const words = [insulation, type, method, loadedConductors].join(" ");
          expect(seen, words).not.toContain(words);
          seen.add(words);
        }
      }
    }
  });

  test("capacity grows with size in every column", () => {
    for (const { ratings } of set.ampacity) {
      const currents = [...ratings.values()].map(({ value }) => value);
      expect(currents).toEqual([...currents].sort((a, b) => a - b));
      expect([...ratings.keys()]).toEqual([...ratings.keys()].sort((a, b) => a - b));
    }
  });

  test("every method of a column has a grouping table", () => {
    for (const { methods } of set.ampacity) {
      for (const method of methods) expect(set.grouping.get(method), method).toBeDefined();
    }
  });

  test("PV cable has a column for each way of laying but earth, where nothing is printed for it", () => {
    const question = (method: string) => ({ insulation: "pv-120", type: "pv", method, loadedConductors: 2 }) as const;
    const current = (method: string) => {
      const column = findColumn(set.ampacity, question(method));
      return column && tabulatedCurrent(column, 4e-6)?.value;
    };
    expect(current("free-in-air")).toBe(55);
    expect(current("touching-on-surface")).toBe(44);
    expect(current("conduit-in-air")).toBe(42);
    expect(current("conduit-in-insulated-wall")).toBe(35);
    // 46 A clipped as a single-core cable (BS), 45 A as a multicore one (IEC), halved.
    expect(current("in-insulation")).toBe(set.id === "gb" ? 23 : 22.5);
    expect(current("buried")).toBeUndefined();
  });
});

test("figures that were not read say so, cell by cell", () => {
  const column = findColumn(ruleSetOf("gb").ampacity, {
    insulation: "pv-120",
    type: "pv",
    method: "touching-on-surface",
    loadedConductors: 2,
  })!;
  const basis = (size: number): Source["basis"] | undefined => column.ratings.get(size)!.origin.source?.basis;
  expect([basis(4), basis(6)]).toEqual(["read", "memory"]);
});

test("a site without a word for its rules, or with an unknown one, has the international set", () => {
  expect(ruleSetOf(undefined).id).toBe("iec");
  expect(ruleSetOf("moon").id).toBe("iec");
  expect(ruleSetOf("gb").id).toBe("gb");
});

test("limits are printed in units that the language knows", () => {
  for (const { name, dimension, unit } of Object.values(limitRows)) {
    if (unit === "") expect(dimension, name).toBe("number");
    else
      expect(
        unitsOf(dimension).map((each) => each.name),
        name,
      ).toContain(unit);
  }
});
