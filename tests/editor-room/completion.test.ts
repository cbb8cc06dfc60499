import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { completeAt } from "../../language-server/src/editor/completion/completion.js";
import { cottage, files } from "./alder-cottage.js";
import { filesOf } from "./example-files.js";
import { TestWorkspace, uriOf, withCursor } from "./workspace.js";

function complete(marked: string, typed?: string) {
  const { text, offset } = withCursor(marked);
  const workspace = new TestWorkspace({ ...files, "cottage.sun": text });
  const completion = completeAt(workspace.view, uriOf("cottage.sun"), offset, { typed });
  return {
    offers: completion?.offers ?? [],
    labels: completion?.offers.map(({ label }) => label) ?? [],
    replaced: completion && text.slice(completion.span.start, completion.span.end),
  };
}
/** The labels at the end of the design with some half-typed text behind it. */
function labels(marked: string, typed?: string): string[] {
  return complete(cottage + marked, typed).labels;
}

describe("at the beginning of a line", () => {
  test("kinds and the words of sentences", () => {
    expect(labels("<|>")).toEqual(expect.arrayContaining(["string", "inverter", "spd", "run", "part", "departure"]));
    expect(labels("st<|>")).toContain("string");
    expect(complete(`${cottage}st<|>`).replaced).toBe("st");
    expect(labels("<|>")).not.toContain("module");
  });
  test("also between declarations", () => {
    expect(complete(cottage.replace("spd F2", "ru<|>\nspd F2")).labels).toContain("run");
  });
  test("never by a blank that was merely typed", () => {
    expect(labels(" <|>", " ")).toEqual([]);
  });
});

describe("in a block", () => {
  test("properties that are missing, the essential ones first, then what may be nested", () => {
    const own = labels("string S3 is 2 x Hollin430 {\n    tilt: 35 deg\n    <|>\n}");
    expect(own.slice(0, 2)).toEqual(["azimuth", "mounting"]);
    expect(own).not.toContain("tilt");
  });
  test("those written behind the cursor are not offered again", () => {
    expect(labels("string S3 is 2 x Hollin430 {\n    <|>\n    azimuth: 3 deg\n}")).not.toContain("azimuth");
  });
  test("on one line, behind a whole value", () => {
    expect(labels("string S3 is 2 x Hollin430 { tilt: 35 deg  az<|> }")).toContain("azimuth");
    expect(labels("string S3 is 2 x Hollin430 { mounting: on-roof  <|>")).toContain("azimuth");
  });
  test("a part's, by the kind of the part; a nested block's, by where it stands", () => {
    expect(labels("part P is module { <|>")).toContain("open-circuit-voltage");
    expect(labels("part P is inverter {\n    tracker pv1 { <|> }\n}")).toContain("voltage-range");
    expect(labels("part P is inverter {\n    <|>\n}")).toEqual(expect.arrayContaining(["max-dc-voltage", "tracker"]));
  });
  test("what the part's sheet states comes last, with what it says", () => {
    const { offers } = complete(`${cottage}isolator Q3 is RotaryDc32 { <|> }`);
    const rated = offers.find(({ label }) => label === "rated-voltage")!;
    expect(rated.detail).toBe("RotaryDc32 says 800 V");
    expect(offers.indexOf(rated)).toBeGreaterThan(offers.findIndex(({ label }) => label === "location"));
  });
  test("what no sheet prints comes before what the part's sheet leaves out", () => {
    const open = labels("isolator Q3 is RotaryDc32 { <|> }");
    expect(open.indexOf("location")).toBeLessThan(open.indexOf("switched-neutral"));
    expect(open.indexOf("within-reach")).toBeLessThan(open.indexOf("cable-entry"));
  });
  test("a run's and a reading's own", () => {
    expect(labels("run W9 from S1 to Q1: 3 m of Solar4 { <|>")).toContain("method");
    expect(labels("measured S1 on 2026-06-12 { <|>")).toContain("irradiance");
  });
  test("a property is written with its colon, and says what it means", () => {
    const [offer] = complete(`${cottage}string S3 is 2 x Hollin430 { <|> }`).offers;
    expect(offer).toMatchObject({ label: "tilt", insert: "tilt: " });
    expect(offer!.documentation).toContain("Slope of the modules");
  });
});

describe("values", () => {
  test("words of an enumeration, yes and no, arrangements of the part", () => {
    expect(labels("string S3 is 2 x Hollin430 { mounting: <|> }")).toEqual(
      expect.arrayContaining(["on-roof", "ground"]),
    );
    expect(labels("isolator Q3 { lockable: <|> }")).toEqual(["yes", "no"]);
    expect(
      labels(
        "part D is isolator { arrangement four { poles: 4 } arrangement two { poles: 2 } }\nisolator Q3 is D { arrangement: <|> }",
      ),
    ).toEqual(["four", "two"]);
  });
  test("never a figure", () => {
    expect(labels("string S3 is 2 x Hollin430 { tilt: <|> }")).toEqual([]);
  });
  test("units of the property behind a number", () => {
    expect(labels("part P is module { open-circuit-voltage: 38.9 <|> }")).toEqual(["V", "kV", "mV"]);
    expect(labels("part P is module { open-circuit-voltage: 38.9 k<|> }")).toEqual(["V", "kV", "mV"]);
    expect(labels("run W9 from S1 to Q1: 18 <|>")).toEqual(expect.arrayContaining(["m", "ft"]));
    expect(labels("part P is inverter { tracker pv1 { voltage-range: 80..550 <|>")).toEqual(["V", "kV", "mV"]);
  });
  test("a unit glued to its number is set off by a blank", () => {
    expect(complete(`${cottage}run W9 from S1 to Q1: 18<|>`).offers[0]).toMatchObject({ label: "m", insert: " m" });
  });
});

describe("names", () => {
  test("parts of the right kind with their key figures", () => {
    expect(labels("string S3 is 8 x <|>")).toEqual(["Hollin430"]);
    expect(labels("string S3 is 8 x Hol<|>")).toEqual(["Hollin430"]);
    expect(labels("isolator Q3 is <|>")).toEqual(["RotaryDc32"]);
    expect(labels("run W9 from S1 to Q1: 3 m of <|>")).toEqual(["Solar4"]);
    const [offer] = complete(`${cottage}string S3 is 8 x <|>`).offers;
    expect(offer!.documentation).toContain("- open-circuit-voltage: `38.9 V`");
  });
  test("ends of a run, what is free first", () => {
    const ends = labels("isolator Q3 is RotaryDc32\nrun W9 from <|>");
    expect(ends).toEqual(expect.arrayContaining(["S1", "Q1", "INV.pv1", "INV.ac"]));
    expect(ends.indexOf("Q3")).toBeLessThan(ends.indexOf("Q1"));
    expect(labels("run W9 from S1 to <|>")).toContain("INV.pv1");
  });
  test("behind where a run begins, what belongs to the same side comes first, the end itself never", () => {
    const first = (text: string) => labels(`${text}<|>`)[0];
    const free = "string S9 is 8 x Hollin430\nisolator Q9 is RotaryDc32\n";
    const supply = "supply GRID { phases: 1 }\nboard CU { ways: 4 }\n";
    expect(first(`${free}${supply}run W9 from S9 to `)).toBe("Q9");
    expect(first(`${free}${supply}run W9 from GRID to `)).toMatch(/^(INV\.ac|CU)$/);
    expect(first(`${supply}run W9 from INV.ac to `)).toBe("CU");
    const ends = labels(`earthing { electrode: none }\n${free}${supply}run W9 from S9 to <|>`);
    expect(ends[0]).toBe("Q9");
    expect(ends).not.toContain("S9");
    expect(ends.indexOf("INV.pv1")).toBeLessThan(ends.indexOf("S1"));
    expect(ends.indexOf("S1")).toBeLessThan(ends.indexOf("GRID"));
  });
  test("a cable begins at strings, isolators, ports and the supply before it begins in a board", () => {
    const name = "alder-cottage/alder-cottage.sun";
    const texts = filesOf(name);
    const { text, offset } = withCursor(`${texts[name]}run W99 from <|>\n`);
    const workspace = new TestWorkspace({ ...texts, [name]: text });
    const offers = completeAt(workspace.view, uriOf(name), offset, {})?.offers ?? [];
    const places = offers.map(({ label }) => label);
    const inBoard = places.findIndex((label) => label.startsWith("CU."));
    expect(inBoard).toBeGreaterThan(0);
    for (const label of ["S1", "Q1", "INV.ac", "GRID", "BAT"]) {
      expect(places, label).toContain(label);
      expect(places.indexOf(label), label).toBeLessThan(inBoard);
    }
    expect(places.lastIndexOf("F1")).toBeGreaterThan(places.indexOf("Q2"));
  });
  test("ports and terminals behind a dot", () => {
    expect(labels("run W9 from S1 to INV.<|>", ".")).toEqual(["pv1", "pv2", "ac"]);
    expect(labels("run W9 from S1 to INV.p<|>")).toEqual(["pv1", "pv2", "ac"]);
    expect(labels("run W9 from Q1.<|>", ".")).toEqual(["in", "out"]);
  });
  test("the next free name of a run", () => {
    expect(labels("run <|>")).toEqual(["W7"]);
  });
  test("words that carry the sentence on", () => {
    expect(labels("run W9 <|>")).toEqual(["from"]);
    expect(labels("run W9 from S1 <|>")).toEqual(["to"]);
    expect(labels("run W9 from S1 to Q1: 3 m <|>")).toEqual(["of"]);
    expect(labels("part P <|>")).toEqual(["is"]);
    expect(labels("string S3 is 8 <|>")).toEqual(["x"]);
  });
  test("kinds of parts", () => {
    expect(labels("part P is <|>")).toEqual(expect.arrayContaining(["module", "cable", "inverter"]));
  });
});

describe("rules", () => {
  test("those with a finding first, then the things it was found on", () => {
    const bad = cottage.replace("8 x", "15 x");
    expect(complete(`${bad}departure <|>`).labels[0]).toBe("string-voltage");
    const { offers } = complete(`${bad}departure string-voltage on <|>`);
    expect(offers[0]!.label).toBe("S1");
    expect(offers[0]!.documentation).toContain("600 V");
    expect(complete(`${bad}departure string-voltage on S1 <|>`).labels).toEqual(["because"]);
  });
  test("problems of the text may be expected, not departed from", () => {
    expect(labels("expect <|>")).toContain("missing-unit");
    expect(labels("departure <|>")).not.toContain("missing-unit");
  });
});

describe("where nothing can be said", () => {
  test("in comments and texts", () => {
    expect(labels("// st<|>")).toEqual([]);
    expect(labels("/* st<|>")).toEqual([]);
    expect(labels('string S3 is 2 x Hollin430 { note: "st<|>')).toEqual([]);
  });
  test("in a block of no known kind", () => {
    expect(labels("gadget G1 { <|> }")).toEqual([]);
  });
  test("no text makes it fail", () => {
    const pieces = [
      "string",
      " S1",
      " is",
      " 3",
      " x",
      "{",
      "}",
      ":",
      '"',
      ".",
      "\n",
      "run W from",
      " 18 m",
      "of",
      "//",
      "/*",
      "[",
      ",",
    ];
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...pieces), { maxLength: 30 }), fc.nat(), (list, at) => {
        const text = list.join("");
        const workspace = new TestWorkspace({ "a.sun": text });
        const offset = at % (text.length + 1);
        const completion = completeAt(workspace.view, uriOf("a.sun"), offset, {});
        if (completion) expect(completion.span.end).toBe(offset);
      }),
      { numRuns: 300 },
    );
  });
});

test("other files of the workspace behind use", () => {
  const workspace = new TestWorkspace({ ...files, "parts/more.sun": "", "a.sun": 'use "' });
  const completion = completeAt(workspace.view, uriOf("a.sun"), 5, {});
  expect(completion?.offers.map(({ label }) => label)).toEqual(
    expect.arrayContaining(["roof.sun", "plant.sun", "parts/more.sun"]),
  );
});
