import { readFileSync } from "node:fs";
import { isNamePart, isNameStart, keywords, nameSource, units } from "@sunwright/grammar";
import { describe, expect, test } from "vitest";
import { declarations, problems, read } from "./reading.js";

/** The value of property `p`, written as given. */
function value(text: string): unknown {
  const found = declarations(`gadget G {\n p: ${text}\n}\n`)[0];
  return found && "properties" in found ? found.properties[0]?.value : undefined;
}

describe("no word is stolen", () => {
  const words = [
    ...keywords,
    ...units.map((unit) => unit.name).filter((name) => /^[a-zA-Z]+\w*$/.test(name)),
    "string",
  ];

  test.each(words)("an item, its part and its terminal may be called %s", (word) => {
    expect(problems(`spd ${word} is ${word}.${word}\nspd B is 2 x ${word}\nspd C\n`)).toEqual([]);
    expect(declarations(`spd ${word} is 3 x ${word}\n`)).toMatchObject([
      { kind: "spd", name: word, count: { value: 3 }, part: { path: [word] } },
    ]);
  });

  test.each(words)("a run, a property, a rule and a value may be called %s", (word) => {
    expect(
      declarations(`run ${word} from ${word}.${word} to ${word}: 3 m of ${word} { ${word}: ${word} }\n`),
    ).toMatchObject([{ name: word, from: { path: [word, word] }, to: { path: [word] }, cable: { path: [word] } }]);
    const text = `gadget ${word} {\n  a: ${word}\n  ${word}: 3\n}\ndeparture ${word} on ${word} because "x"\n`;
    expect(problems(text)).toEqual([]);
    expect(declarations(text)).toMatchObject([
      {
        properties: [{ name: "a", value: { kind: word === "yes" || word === "no" ? "flag" : "word" } }, { name: word }],
      },
      { rule: word, target: { path: [word] }, reason: "x" },
    ]);
  });

  test("a number before a property whose name is a unit stays bare", () => {
    const text = "gadget G { poles: 2  s: 3  m: 4 A: 5 }\n";
    expect(problems(text)).toEqual([]);
    expect(declarations(text)).toMatchObject([
      {
        properties: [
          { name: "poles", value: { unit: "" } },
          { name: "s" },
          { name: "m" },
          { name: "A", value: { si: 5 } },
        ],
      },
    ]);
  });
});

describe("quantities", () => {
  test.each([
    ["18 m", { si: 18, unit: "m" }],
    ["18m", { si: 18, unit: "m" }],
    ["18\tm", { si: 18, unit: "m" }],
    ["0.5 /km2/yr", { unit: "/km2/yr" }],
    ["0.5 /km²/yr // Ng", { unit: "/km2/yr" }],
    ["-10 degC", { si: 263.15 }],
    ["−0.25 %/K", { si: -0.0025 }],
    ["4 Ω", { unit: "ohm" }],
    ["4 Ω/* loop */", { unit: "ohm" }],
    ["18 m// length", { si: 18 }],
    ["1.5e3 V", { si: 1500 }],
    ["2/0 AWG", { unit: "AWG", written: -1 }],
    ["3", { si: 3, dimension: "number" }],
    ['12 m from "survey"', { si: 12 }],
  ])("%s", (text, expected) => {
    expect(problems(`gadget G {\n p: ${text}\n}`)).toEqual([]);
    expect(value(text)).toMatchObject({ kind: "quantity", ...expected });
  });

  test.each([
    ["80..550 V", [80, 550]],
    ["80 V..550 V", [80, 550]],
    ["80 V .. 0.55 kV", [80, 550]],
    ["3..5", [3, 5]],
    ["-3..+5 K", [-3, 5]],
  ])("the range %s", (text, [low, high]) => {
    expect(value(text)).toMatchObject({ kind: "range", low: { si: low }, high: { si: high } });
  });

  test("lists, days, flags, texts, words with hyphens and dots", () => {
    expect(value("[1, 2 m, yes, conduit-in-air]")).toMatchObject({
      kind: "list",
      values: [{ si: 1 }, { si: 2 }, { kind: "flag", value: true }, { kind: "word", value: "conduit-in-air" }],
    });
    expect(value("[]")).toEqual({ kind: "list", values: [] });
    expect(value("2026-06-12")).toEqual({ kind: "day", value: "2026-06-12" });
    expect(value("no")).toEqual({ kind: "flag", value: false });
    expect(value('"a \\"b\\" \\\\ c"')).toEqual({ kind: "text", value: 'a "b" \\ c' });
    expect(value("INV.pv1")).toEqual({ kind: "word", value: "INV.pv1" });
    expect(value("TN-C-S")).toEqual({ kind: "word", value: "TN-C-S" });
  });

  test("an unknown word in a unit's place is an unknown unit, with what was meant", () => {
    expect(problems("run W from A to B: 18 M of C\n")).toMatchObject([
      { id: "unknown-unit", at: "18 M", fixes: ["18 m"] },
    ]);
    expect(problems("gadget G { p: 18 Volts  q: 3 }")).toMatchObject([{ id: "unknown-unit", fixes: ["18 V"] }]);
    expect(problems("gadget G { p: 18furlong }")).toMatchObject([{ id: "unknown-unit", at: "furlong", fixes: [] }]);
    expect(problems("gadget G { p: [1 KW, 2 kW] }")).toMatchObject([
      { id: "unknown-unit", at: "1 KW", fixes: ["1 kW"] },
    ]);
  });

  test("a decimal comma is one error, and the block keeps its other properties", () => {
    expect(problems("gadget G { p: 1,2 m  q: 3 m }")).toMatchObject([
      { id: "decimal-comma", at: "1,2 m", fixes: ["1.2 m"] },
    ]);
    expect(declarations("gadget G { p: 1,200 V  q: 3 m }")).toMatchObject([
      { properties: [{ name: "p" }, { name: "q", value: { si: 3 } }] },
    ]);
    expect(value("1,200 V")).toBeUndefined();
    expect(problems("gadget G { p: [1,2] }")).toMatchObject([{ id: "decimal-comma", fixes: ["1.2", "1, 2"] }]);
  });

  test("a count is a whole number", () => {
    expect(problems("string S is 1.5 x P\n")).toMatchObject([{ id: "wrong-count", at: "1.5" }]);
    expect(problems("string S is 0 x P\n")).toMatchObject([{ id: "wrong-count", at: "0" }]);
    expect(declarations("string S is 11x P\nstring T is 10 × P\n")).toMatchObject([
      { count: { value: 11 } },
      { count: { value: 10 } },
    ]);
  });

  test("a day that is none is said to be none", () => {
    expect(problems("gadget G { p: 2026-02-30 }")).toMatchObject([{ id: "impossible-value", at: "2026-02-30" }]);
  });
});

describe("places and comments", () => {
  test("every part of a declaration knows where it stands", () => {
    const text = 'spd A\nway 8: rcbo K9 is 2 x Box.a serves INV { p: 3 V from "sheet" }\n';
    const fragment = read(text)[1]!;
    const item = fragment.declarations[0]!;
    const at = (place: { from: number; to: number }) =>
      text.slice(fragment.chunk.start + place.from, fragment.chunk.start + place.to);
    if (item.declares !== "item") throw new Error("not an item");
    expect([item.kindPlace, item.namePlace, item.way!.place, item.count!.place, item.part!.place].map(at)).toEqual([
      "rcbo",
      "K9",
      "8",
      "2",
      "Box.a",
    ]);
    expect(item.part!.places.map(at)).toEqual(["Box", "a"]);
    expect(at(item.place)).toBe(text.slice(6, -1));
    expect(at(item.bodyPlace!)).toBe('{ p: 3 V from "sheet" }');
    const [property] = item.properties;
    expect([property!.place, property!.namePlace, property!.valuePlace].map(at)).toEqual([
      'p: 3 V from "sheet"',
      "p",
      "3 V",
    ]);
    expect(property!.statedBy).toBe("sheet");
  });

  test("the doc comment before a declaration is its text, without stars", () => {
    const text =
      "/* note */\n/**\n * Rear slope,\n *   no shading.\n */\nstring S1\n/** not for S2 */ // but\nstring S2 {\n /** inner */ fuse F }\n/**/\nspd A\n";
    expect(declarations(text)).toMatchObject([
      { name: "S1", doc: "Rear slope,\n  no shading." },
      { name: "S2", nested: [{ name: "F", doc: "inner" }] },
      { name: "A" },
    ]);
    expect(declarations(text)[2]).not.toHaveProperty("doc");
  });

  test("line ends of all kinds and a byte order mark change nothing", () => {
    const text = "\uFEFFspd A\r\n/** B */\r\nspd B {\r\n  p: 3 m\r\n}\rspd C\r";
    expect(problems(text)).toEqual([]);
    expect(declarations(text)).toMatchObject([{ name: "A" }, { name: "B", doc: "B" }, { name: "C" }]);
  });
});

test("the grammar's names are those of the shared table, for every character", () => {
  const grammar = readFileSync(new URL("../../grammar/src/sunwright.langium", import.meta.url), "utf8");
  const [, pattern] = /terminal ID: \/(.+)\/;/.exec(grammar)!;
  const terminal = new RegExp(`^${pattern}$`);
  const shared = new RegExp(`^${nameSource}$`);
  const differing: number[] = [];
  for (let code = 0; code < 0x10000; code++) {
    const sign = String.fromCharCode(code);
    for (const [word, expected] of [
      [sign, isNameStart(code)],
      [`a${sign}`, isNamePart(code)],
      [`a-${sign}`, isNamePart(code)],
    ] as const) {
      if (terminal.test(word) !== expected || shared.test(word) !== expected) differing.push(code);
    }
  }
  expect(differing).toEqual([]);
});
