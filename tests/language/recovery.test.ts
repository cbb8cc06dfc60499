import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Block, Declaration } from "../../language-server/src/design/model.js";
import { wildText } from "./arbitrary.js";
import { problems, read } from "./reading.js";

const before = 'use "parts.sun"\n/** Rear. */\nstring S1 is 11 x P {\n    tilt: 35 deg\n}\nspd F1 is Q\n';
const after = [
  "/** Front. */",
  "string S2 is 10 x P { tilt: 35 deg }",
  "board CU is Box {",
  '    way 1: breaker K1 is B16 serves "garage"',
  "}",
  "run W2 from S2 to F1: 18 m of Cable",
  'departure some-rule on S2 because "agreed"',
  "",
].join("\n");

const typed = [
  "/** Half a comment. */\nstring S9 is 11 x P {\n    tilt: 35 deg\n    azimuth: 180 deg\n}\n",
  'isolator Q9 is R { location: "plant wall" }\n',
  "run W9 from S1 to INV.pv1: 1.2 m of Cable { method: conduit-in-air  ambient: 45 degC }\n",
  "part P9 is inverter {\n    tracker pv1 { voltage-range: 80..550 V  inputs: 1 }\n    ac { phases: 1 }\n}\n",
  'board B9 is Box {\n    rcd R1 is R {\n        way 1: breaker K1 is B serves "a"\n    }\n    way 2: rcbo K2 is C serves INV\n}\n',
  "measured S1 on 2026-06-12 { open-circuit-voltage: 402 V }\n",
  'departure dc-voltage-drop on W4 because "agreed with the client"\n',
  "expect string-voltage on S1\n",
  'site "Alder Cottage" {\n    rules: gb\n}\n',
  'use "other.sun"\n',
];

/** What a text still says soundly: declarations of fragments that parse. */
function sound(text: string): string[] {
  return read(text)
    .filter((fragment) => !fragment.broken)
    .flatMap((fragment) => fragment.declarations.map(nameOf));
}

function nameOf(declaration: Declaration): string {
  switch (declaration.declares) {
    case "use":
      return declaration.path;
    case "measured":
      return `measured ${declaration.target.path.join(".")}`;
    case "departure":
    case "expect":
      return declaration.rule;
    default:
      return declaration.name || "nameless";
  }
}

const board = [
  "board CU is Box {",
  "    existing: yes",
  "    isolator MS is R",
  "    rcd R1 is R {",
  '        way 1: breaker K1 is B16 serves "garage"',
  "    }",
  "    way 2: breaker K2 is B32 serves F1",
  '    way 3: breaker K3 is B6 { location: "hall" }',
  "}",
  "",
];

const halfWays = ["way 9: breaker K9 is B16 serves F1", "way 9: rcbo K9", "spd K9 is F", "ways: 12"];

/** What a board says, a line a member, wherever it is nested. */
function membersOf(text: string): string[] {
  const said = ({ properties, nested }: Block): string[] => [
    ...properties.map(({ name, value }) => `${name}: ${value && "written" in value ? value.written : value?.kind}`),
    ...nested.flatMap((item) => [
      [item.kind, item.name, item.part?.path.join(".") ?? "", item.way?.value ?? ""].filter(String).join(" "),
      ...said(item),
    ]),
  ];
  return read(text).flatMap(({ declarations }) =>
    declarations.flatMap((declaration) => ("properties" in declaration ? said(declaration) : [])),
  );
}

describe("while a line is half typed", () => {
  test.each(typed)("every other declaration keeps its results: %j", (line) => {
    const expected = [...sound(before), ...sound(after)];
    for (let length = 0; length <= line.length; length++) {
      // A comment that is not closed yet takes what follows up to the next closing mark: that is what comments do.
      if (line.startsWith("/*") && length > 1 && length < line.indexOf("*/") + 2) continue;
      const prefix = line.slice(0, length);
      const rest = prefix.endsWith("\n") ? "" : "\n";
      const found = sound(`${before}${prefix}${rest}${after}`);
      expect(
        found.filter((each) => expected.includes(each)),
        prefix,
      ).toEqual(expected);
    }
  });

  test.each(halfWays)("every other line of its block is read as it stands: %j", (line) => {
    for (let index = 1; index < board.length; index++) {
      const whole = [...board.slice(0, index), "", ...board.slice(index)].join("\n");
      const expected = membersOf(whole);
      expect(expected).toHaveLength(7);
      for (let length = 1; length <= line.length; length++) {
        const prefix = line.slice(0, length);
        const text = [...board.slice(0, index), `    ${prefix}`, ...board.slice(index)].join("\n");
        const found = membersOf(text);
        expect(
          found.filter((member) => expected.includes(member)),
          `${prefix} in line ${index}`,
        ).toEqual(expected);
        // The line itself may say one thing so far, with one property.
        expect(found.length, prefix).toBeLessThan(expected.length + 3);
        expect(problems(text).length, prefix).toBeLessThan(2);
      }
    }
  });

  test.each([
    ["    way 9: rcbo K9 is", "rcbo K9 9"],
    ["    way 9: rcbo K9 is R serves", "rcbo K9 R 9"],
    ["    way 9: rcbo K9 is R { poles 2 }", "rcbo K9 R 9"],
  ])("what a line already says stays known: %j", (line, said) => {
    expect(membersOf([...board.slice(0, 5), line, ...board.slice(5)].join("\n"))).toContain(said);
  });

  test("a name stays known while its block is being typed", () => {
    const [fragment] = read("string S1 is 11 x P {\n    tilt: 35 deg\n    azimuth\n}\n");
    expect(fragment).toMatchObject({ broken: true, declarations: [{ name: "S1", count: { value: 11 } }] });
    expect(fragment!.declarations[0]).toMatchObject({ properties: [{ name: "tilt" }] });
  });

  test("a property without its value costs that property alone", () => {
    const [fragment] = read("string S1 is 11 x P {\n    tilt:\n    azimuth: 180 deg\n}\n");
    expect(fragment).toMatchObject({
      broken: false,
      problems: [{ id: "missing-value" }],
      declarations: [{ properties: [{ name: "azimuth", value: { written: 180 } }] }],
    });
  });
});

describe("one problem for one slip, at the word, saying what to write", () => {
  test.each([
    ["run W1 form S1 to Q1\n", "syntax", "form", /Expected `from` after `W1`, found `form`.*run NAME from/, ["from"]],
    ["string S1 is\n", "syntax", "is", /KIND NAME is PART/, []],
    ["string\n", "syntax", "string", /Expected a name/, []],
    ["string S1 {\n  tilt 35 deg\n}\n", "syntax", "tilt", /Expected `:` and a value after `tilt`/, []],
    ["string S1 {\n  tilt: 35 deg\n", "syntax", "{", /never closed/, []],
    ["spd A\n}\nspd B\n", "syntax", "}", /closes nothing/, []],
    ["tilt: 35 deg\n", "syntax", ":", /between the braces/, []],
    ["string S { p: .5 V }\n", "syntax", ".", /begins with a digit/, ["0."]],
    ["string S { p: [1, }\n", "syntax", "[", /no value that can be read/, []],
    ['string S { p: "plant wall }\nspd B\n', "unclosed-string", '"plant wall }', /no closing quote/, []],
    ["spd A\n/* spd B\n", "unclosed-comment", "/*", /never closed/, []],
    ["spd A $$$ x\n", "unexpected-character", "$$$", /\$\$\$ has no meaning/, []],
    ["spd \0\0\0\n", "unexpected-character", "\0\0\0", /U\+0000/, []],
    ["spd A {}\n\uD800\nspd B\n", "unexpected-character", "\uD800", /U\+D800/, []],
    ['departure r on W becuase "x"\n', "syntax", "becuase", /Expected `because`/, ["because"]],
    ["string S1 {\n  ti\n  azimuth: 180 deg\n}\n", "syntax", "ti", /Expected `:` and a value after `ti`/, []],
    ["site {\n  li\n  limits { r: 2 }\n}\n", "syntax", "li", /`li` has no name on its line/, []],
    ["board CU {\n  existing:\n  rcd R {}\n}\n", "syntax", "existing", /`existing` has no value on its line/, []],
    ["board CU {\n  way 9:\n  rcd R {}\n}\n", "syntax", "9", /Way 9 has no device on its line/, []],
    ["board CU {\n  way 9: rcbo K9 serves\n  rcd R {}\n}\n", "syntax", "K9", /`serves` of K9 names nothing/, []],
    ["board CU {\n  isolator MS is\n  rcd R {}\n}\n", "syntax", "MS", /MS has no part on its line/, []],
    ["supply G {\n  ear\n}\n", "syntax", "ear", /Expected `:` and a value/, []],
    ["run W1\nmethod: on-surface\n}\n", "syntax", "W1", /stops after `W1`.*run NAME from/, []],
    ["use parts.sun\n", "syntax", "parts", /text in double quotes.*use "parts\/roof.sun"/, []],
  ] as const)("%j", (text, id, at, message, fixes) => {
    const found = problems(text);
    expect(found).toMatchObject([{ id, at, fixes }]);
    expect(found[0]!.message).toMatch(message);
  });
});

describe("whatever the text", () => {
  test("reading never throws, and places lie in their chunk", () => {
    fc.assert(
      fc.property(fc.oneof(wildText, fc.string({ unit: "binary", maxLength: 300 })), (text) => {
        for (const { chunk, problems, broken } of read(text)) {
          for (const { place, message } of problems) {
            expect(place.from).toBeGreaterThanOrEqual(0);
            expect(place.to).toBeGreaterThanOrEqual(place.from);
            expect(chunk.start + place.to).toBeLessThanOrEqual(Math.max(text.length, chunk.start + 1));
            expect(message).not.toBe("");
          }
          if (broken) expect(problems.length).toBeGreaterThan(0);
        }
      }),
      { numRuns: 500 },
    );
  });

  test("a program's bytes give problems, one a chunk at most from the syntax", () => {
    const junk = readFileSync(process.execPath).subarray(0, 200_000).toString("utf8");
    const fragments = read(junk);
    expect(fragments.some((fragment) => fragment.broken)).toBe(true);
    for (const { problems } of fragments) {
      expect(problems.filter(({ id }) => ["syntax", "unexpected-character"].includes(id)).length).toBeLessThan(2);
    }
  });

  test("a line of five million characters is refused with a reason", () => {
    expect(problems("x".repeat(5_000_000))).toMatchObject([{ id: "too-long" }]);
    expect(problems(`spd A\n${"string S1 is 2 x P ".repeat(270_000)}`)).toMatchObject([{ id: "too-long" }]);
    const long = `spd A { p: "${"x".repeat(100_000)}" }\n`;
    expect(problems(long)).toEqual([]);
  });

  test("ten thousand nested braces are refused where they get too deep, and the rest is read", () => {
    const deep = `spd A\nspd B ${"{ a ".repeat(10_000)}${"}".repeat(10_000)}\nspd C\n`;
    expect(problems(deep)).toMatchObject([{ id: "too-deep", at: "{" }]);
    expect(sound(deep)).toEqual(["A", "C"]);
    expect(problems(`spd B { p: ${"[".repeat(10_000)} }\n`)).toMatchObject([{ id: "too-deep", at: "[" }]);
    expect(problems(`spd B ${"{ a ".repeat(10_000)}`)).toMatchObject([{ id: "too-deep" }]);
    expect(problems("{".repeat(10_000))).toHaveLength(1);
  });

  test("thousands of blocks that are never closed are read in one pass", () => {
    const text = "string S is 2 x P {\n".repeat(5_000);
    expect(read(text)).toHaveLength(5_000);
  });
});
