import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { buildCircuit } from "../../language-server/src/circuit/build.js";
import type { Plant } from "../../language-server/src/circuit/plant.js";
import { plants } from "../../language-server/src/circuit/plants.js";
import { buildDesign } from "../../language-server/src/design/design.js";
import { createChunkParser } from "../../language-server/src/language/parser-module.js";
import { SourceFile } from "../../language-server/src/language/source-file.js";
import { installations } from "./random-circuit.js";
import { referenceHouse } from "./reference-house.js";

/*
 * What rules compute for a plant is kept as long as the elements of its signature are the same objects. So whatever
 * changes what a plant shows has to change its signature.
 */

/** A view as plain text: names in place of things, so that two builds can be compared. */
function shown(plant: Plant): string {
  return JSON.stringify(plant, (key, value) => {
    if (key === "trees" || key === "signature") return undefined;
    if (value?.is === "item" || value?.is === "run" || Array.isArray(value?.links)) return value.id;
    return value;
  });
}

function same(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((part, index) => part === b[index]);
}

/** Edits a file as an editor does, keeping what is unchanged, and compares each plant before and after. */
function edited(before: string, after: string): { changed: number; missed: string[] } {
  const file = new SourceFile("file:///house.sun", createChunkParser());
  const read = (text: string): Map<string, { shown: string; signature: readonly unknown[] }> => {
    file.update(text);
    const design = buildDesign([file]);
    return new Map(
      plants(design, buildCircuit(design)).map((plant) => [
        plant.id,
        { shown: shown(plant), signature: plant.signature },
      ]),
    );
  };
  const first = read(before);
  let changed = 0;
  const missed: string[] = [];
  for (const [id, second] of read(after)) {
    const old = first.get(id);
    if (!old || old.shown === second.shown) continue;
    changed++;
    if (same(old.signature, second.signature)) missed.push(id);
  }
  return { changed, missed };
}

describe("the signature of a plant", () => {
  test("stays the same when nothing is edited, and when only the roof is", () => {
    const file = new SourceFile("file:///house.sun", createChunkParser());
    const signature = (text: string): readonly unknown[] => {
      file.update(text);
      const design = buildDesign([file]);
      return plants(design, buildCircuit(design))[0]!.signature;
    };
    const before = signature(referenceHouse);
    expect(
      same(signature(referenceHouse.replace("on-roof }\nstring B", "on-roof } // a remark\nstring B")), before),
    ).toBe(true);
    expect(same(signature(referenceHouse.replace("azimuth: 90 deg", "azimuth: 95 deg")), before)).toBe(true);
    expect(same(signature(referenceHouse.replace("13 m of Twin6", "14 m of Twin6")), before)).toBe(false);
  });

  test("changes with whatever line of the reference house changes what the plant shows", () => {
    const lines = referenceHouse.split("\n");
    let changed = 0;
    for (const [index, line] of lines.entries()) {
      if (!/^ *(run|isolator|fuse|battery|meter|board|way|rcd|link|electrode|ct|load|spd|supply|ac|backup) /.test(line))
        continue;
      const gone = lines.toSpliced(index, 1, line.endsWith("{") ? "board SPARE {" : "").join("\n");
      const result = edited(referenceHouse, gone);
      expect(result.missed, line).toEqual([]);
      changed += result.changed;
    }
    expect(changed).toBeGreaterThan(15);
  });

  test("changes with whatever line of a random installation changes what a plant shows", () => {
    let changed = 0;
    fc.assert(
      fc.property(installations({ min: 3, max: 12 }), fc.nat(9999), (text, number) => {
        const lines = text.split("\n");
        const result = edited(text, lines.toSpliced(2 + (number % (lines.length - 2)), 1).join("\n"));
        expect(result.missed).toEqual([]);
        changed += result.changed;
      }),
      { numRuns: 200 },
    );
    expect(changed).toBeGreaterThan(50);
  });
});
