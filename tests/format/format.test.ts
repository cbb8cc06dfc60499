import { describe, expect, test } from "vitest";
import { format } from "../../language-server/src/format/format.js";
import { fileOf, formatted, withEdits } from "./formatted.js";

function lines(...text: string[]): string {
  return `${text.join("\n")}\n`;
}

describe("the one look", () => {
  test.each<[string, string, string]>([
    ["one blank between words", "string   S1  is 11x   P", "string S1 is 11 x P\n"],
    ["a blank between number and unit", "run W1 from A to B:18m of C", "run W1 from A to B: 18 m of C\n"],
    ["no blank in names with dots, ranges and lists", "run W from CU . K9 to I.ac\n", "run W from CU.K9 to I.ac\n"],
    ["a sentence on one line", "run W1\n  from A\n  to B: 18 m\n  of C\n", "run W1 from A to B: 18 m of C\n"],
    [
      "a flat block with two blanks between properties",
      "string S1 is P{tilt:35deg azimuth :  180 deg}",
      "string S1 is P { tilt: 35 deg  azimuth: 180 deg }\n",
    ],
    ["empty braces", "earthing {   }", "earthing {}\n"],
    ["each declaration on its own line", "spd A is P  spd B is P", "spd A is P\nspd B is P\n"],
    ["at most one blank line", "\n\nspd A is P\n\n\n\nspd B is P\n\n\n", "spd A is P\n\nspd B is P\n"],
    ["ranges and lists", "part P is q { a: 80 .. 550V  b: [ 1 ,2 m ] }", "part P is q { a: 80..550 V  b: [1, 2 m] }\n"],
    ["who says so", 'a B { c: 3 m   from"survey" }', 'a B { c: 3 m from "survey" }\n'],
    ["a day stays a day", "site { date: 2026-06-12 }", "site { date: 2026-06-12 }\n"],
    ["a wire gauge stays one", "part C is cable { a: 2/0AWG }", "part C is cable { a: 2/0 AWG }\n"],
    ["a text stays as it is", 'a B { c: "x   {  y" }', 'a B { c: "x   {  y" }\n'],
    ["nothing of an empty file", "", ""],
    ["nothing of blanks alone", "  \n\n", ""],
  ])("%s", (_, text, wanted) => {
    expect(formatted(text)).toBe(wanted);
  });

  test("a block with a line break in it has one property a line, the values below each other", () => {
    expect(formatted("string S1 is P {\ntilt: 35 deg azimuth: 180 deg\n   mounting: on-roof }\n")).toBe(
      lines("string S1 is P {", "    tilt:     35 deg", "    azimuth:  180 deg", "    mounting: on-roof", "}"),
    );
  });

  test("a blank line or something nested parts what is set below each other", () => {
    const text = lines(
      "part I is inverter {",
      "    max-dc-voltage: 600 V",
      "",
      "    phases: 1",
      "    ac {",
      "        max-current: 19 A",
      "        x: 1",
      "    }",
      '    note: "n"',
      "}",
    );
    expect(formatted(text)).toBe(text.replace("x: 1", "x:           1"));
  });

  test("a flat block that would be too long becomes a tall one, and stays one", () => {
    const long = `measured S1 { ${Array.from({ length: 8 }, (_, index) => `property-${index}: ${index} V`).join("  ")} }`;
    const tall = formatted(long);
    expect(tall.split("\n")).toHaveLength(11);
    expect(formatted(tall)).toBe(tall);
    expect(formatted(long.slice(0, 60).replace(/ +property-[^:]*$/, " }"))).not.toContain("\n ");
  });

  test("line endings and the byte order mark stay what they are", () => {
    expect(formatted("\uFEFFspd A is P\r\n\r\n\r\nspd  B is P")).toBe("\uFEFFspd A is P\r\n\r\nspd B is P\r\n");
  });
});

describe("comments", () => {
  test("stay behind their line, those of neighbouring lines below each other", () => {
    const text = lines("site {", "  a: 1 // one", "  bcd: 22 m     // two", "  e: 3", "  f: 4 /* four */", "} // end");
    expect(formatted(text)).toBe(
      lines(
        "site {",
        "    a:   1     // one",
        "    bcd: 22 m  // two",
        "    e:   3",
        "    f:   4 /* four */",
        "}  // end",
      ),
    );
  });

  test("on lines of their own go with what they stand before", () => {
    const text = lines(
      "// first",
      "site {",
      "// a",
      "a: 1",
      "",
      "      // b",
      "b: 2",
      "// last",
      "}",
      "",
      "",
      "// end",
    );
    expect(formatted(text)).toBe(
      lines("// first", "site {", "    // a", "    a: 1", "", "    // b", "    b: 2", "    // last", "}", "", "// end"),
    );
  });

  test("of several lines move as one; stars stand below each other", () => {
    const text = lines(
      "board CU {",
      "/** One",
      "* two",
      "",
      "     *  three */",
      "way 1: fuse F",
      "  /* a",
      "     b */",
      "x: 1",
      "}",
    );
    expect(formatted(text)).toBe(
      lines(
        "board CU {",
        "    /** One",
        "     * two",
        "",
        "     *  three */",
        "    way 1: fuse F",
        "    /* a",
        "       b */",
        "    x: 1",
        "}",
      ),
    );
  });

  test("within a sentence end its line, and the sentence goes on below", () => {
    const once = formatted("run W1 from A // via the loft\nto B: 3 m of C\n");
    expect(once).toBe(lines("run W1 from A  // via the loft", "    to B: 3 m of C"));
    expect(formatted(once)).toBe(once);
  });

  test("in a flat block that ends a line make it a tall one", () => {
    expect(formatted("a B { c: 1 // why\n}")).toBe(lines("a B {", "    c: 1  // why", "}"));
  });
});

describe("what cannot be read", () => {
  test("is left as it is, and the rest is formatted", () => {
    const text = "spd   A is P\n\n\n   string  S1 is 11 x {  tilt\n  :\nspd   B is P\n";
    expect(formatted(text)).toBe("spd A is P\n\n   string  S1 is 11 x {  tilt\n  :\nspd B is P\n");
  });

  test("a block with an empty property is left too", () => {
    const text = "site {\n  tilt:\n   azimuth: 3 deg\n}\nspd   B is P\n";
    expect(formatted(text)).toBe("site {\n  tilt:\n   azimuth: 3 deg\n}\nspd B is P\n");
  });
});

describe("edits", () => {
  test("are as short as can be, and make the formatted text", () => {
    const text = "string S1 is P {\n  tilt: 35deg\n}\n";
    const { edits, text: wanted } = format(text, fileOf(text).fragments);
    expect(withEdits(text, edits)).toBe(wanted);
    expect(edits).toEqual([
      { start: 19, end: 19, text: "  " },
      { start: 27, end: 27, text: " " },
    ]);
  });

  test("there are none for what is formatted", () => {
    const text = "string S1 is P {\n    tilt: 35 deg\n}\n";
    expect(format(text, fileOf(text).fragments).edits).toEqual([]);
  });
});
