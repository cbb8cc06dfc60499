import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test, vi } from "vitest";
import { type KindRow, kindRows, meaningOf, type PropertyRow } from "../../language-server/src/design/schema/index.js";
import { propertyText } from "../../language-server/src/editor/markdown.js";
import { languagePage } from "../../language-server/src/reference/language-page.js";
import { exampleText } from "../../language-server/src/rules/example-parts.js";
import { assessText } from "./designs.js";

/**
 * Whoever states a fact may think that something is made of it. Which facts the circuit or a rule asks for is seen by
 * assessing every fixture: a property that says that no check reads it must not be asked for, and any other must be.
 */
const asked = vi.hoisted(() => new Map<unknown, Set<string>>());
vi.mock("../../language-server/src/design/things.js", async (original) => {
  const things = await original<typeof import("../../language-server/src/design/things.js")>();
  const findProperty: typeof things.findProperty = (thing, name) => {
    const names = asked.get(thing.row);
    if (names) names.add(name);
    else asked.set(thing.row, new Set([name]));
    return things.findProperty(thing, name);
  };
  return { ...things, findProperty };
});

const fixtures = fileURLToPath(new URL("./fixtures", import.meta.url));
for (const rule of readdirSync(fixtures))
  for (const name of readdirSync(`${fixtures}/${rule}`))
    if (name.endsWith(".sun"))
      assessText(exampleText(readFileSync(`${fixtures}/${rule}/${name}`, "utf8"))).checks.length;
// How long insulation surrounds a run is only asked where it does.
assessText(
  exampleText(`string S1 is 11 x Hollin430
isolator Q1 is RotaryDc32
run W1 from S1 to Q1: 9 m of Solar4 { method: conduit-in-air  ambient: 45 degC  thermal-insulation: surrounded }
`),
).checks.length;

const isAsked = (kind: KindRow, { name }: PropertyRow): boolean => asked.get(kind)?.has(name) === true;
/** Limits have a test of their own. What a departure says is read where it is answered, against the day of the site. */
const kinds = kindRows.filter(({ kind }) => kind !== "limits" && kind !== "departure");
const answered = "date";
/** Rows that several kinds share are read if they are read of one of them. */
const sharers = (row: PropertyRow): KindRow[] => kinds.filter(({ properties }) => properties.includes(row));

describe.each(kinds.map((kind) => [[...(kind.within ?? []), kind.kind].join(" "), kind] as const))("%s", (_, kind) => {
  test("asks for nothing of which it says that no check reads it", () => {
    const unread = kind.properties.filter(({ checked }) => checked !== undefined);
    expect(unread.filter((row) => isAsked(kind, row)).map(({ name }) => name)).toEqual([]);
  });
  test("says of everything else that it is read, and it is", () => {
    const read = kind.properties.filter(({ name, checked }) => checked === undefined && name !== answered);
    expect(read.filter((row) => !sharers(row).some((other) => isAsked(other, row))).map(({ name }) => name)).toEqual(
      [],
    );
  });
});

describe("hover, completion and the reference page say so", () => {
  const cable = kinds.find(({ kind }) => kind === "cable")!;
  const row = (name: string): PropertyRow => cable.properties.find((property) => property.name === name)!;
  test.each([
    ["cores", "Number of live cores. No check reads this yet."],
    ["note", "Anything a reader should know. It is for readers: no check depends on it."],
    ["conductor-area", "Nominal cross-section of a live conductor."],
  ])("%s", (name, meaning) => {
    expect(meaningOf(row(name))).toBe(meaning);
    expect(propertyText(row(name))).toContain(`${meaning}\n\nWritten as`);
    expect(languagePage()).toMatch(new RegExp(`\\| \`${name}\`.*\\| ${meaning} `));
  });
});
