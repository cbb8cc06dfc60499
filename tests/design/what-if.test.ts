import { describe, expect, test } from "vitest";
import { buildDesign } from "../../language-server/src/design/design.js";
import { given, textOf, wordOf } from "../../language-server/src/design/facts.js";
import { hypothesisText, readHypothesis } from "../../language-server/src/design/what-if/hypothesis.js";
import { type Overlaid, Overlay } from "../../language-server/src/design/what-if/overlay.js";
import { createChunkParser } from "../../language-server/src/language/parser-module.js";
import { SourceFile } from "../../language-server/src/language/source-file.js";

const parser = createChunkParser();
const text = `site "Reed Barn" { rules: gb  lowest-temperature: -10 degC }
part Sorrel420 is module { open-circuit-voltage: 38.9 V  open-circuit-voltage-coefficient: -0.25 %/K }
part Sorrel500 is module { open-circuit-voltage: 41 V }
part Mill5 is inverter {
    max-dc-voltage: 600 V
    tracker pv1 { voltage-range: 80..550 V  max-current: 16 A }
}
part Line4 is cable { conductor-area: 4 mm2 }
part Line6 is cable { conductor-area: 6 mm2 }
part Split is board { rcd R1 { type: AC  way 1: breaker K1 serves "garage" { rated-current: 16 A } } }
string S1 is 10 x Sorrel420 { tilt: 35 deg }
string S2 is Sorrel420
inverter INV is Mill5 { location: "loft" }
board CU is Split
run W1 from S1 to INV.pv1: 12 m of Line4
`;

function file(source = text): SourceFile {
  const read = new SourceFile("file:///barn.sun", parser);
  read.update(source);
  return read;
}
function overlay(...hypotheses: string[]): Overlay {
  return new Overlay(
    hypotheses.map((each) => {
      const read = readHypothesis(each);
      if (typeof read === "string") throw new Error(read);
      return read;
    }),
  );
}
function laid(...hypotheses: string[]): Overlaid & { readonly design: ReturnType<typeof buildDesign> } {
  const result = overlay(...hypotheses).over([file()]);
  expect(result.refusals).toEqual([]);
  const design = buildDesign(result.files);
  expect(design.problems.filter(({ severity }) => severity === "error")).toEqual([]);
  return { ...result, design };
}
function refused(...hypotheses: string[]): string[] {
  return overlay(...hypotheses)
    .over([file()])
    .refusals.map(({ message }) => message);
}
type Design = ReturnType<typeof buildDesign>;
function item(design: Design, path: string) {
  const resolved = design.names.resolve({ path: path.split(".") });
  if (resolved.is !== "item") throw new Error(`no ${path}`);
  return resolved.item;
}

describe("a hypothesis", () => {
  test("is a target, a property and a value, with or without blanks", () => {
    expect(readHypothesis("INV.pv1.max-current=16 A")).toEqual({
      target: ["INV", "pv1"],
      property: "max-current",
      value: "16 A",
    });
    expect(readHypothesis(" site.note = a = b ")).toEqual({ target: ["site"], property: "note", value: "a = b" });
    expect(hypothesisText({ target: ["S1"], property: "count", value: "12" })).toBe("S1.count = 12");
  });
  test.each(["", "S1.count", "S1.count=", "count=12", ".count=12", "S1.=12", "S1..count = 12"])(
    "%j is none",
    (wrong) => {
      expect(readHypothesis(wrong)).toMatch(/supposes nothing\. Write TARGET\.PROPERTY = VALUE/);
    },
  );
});

describe("what may be supposed", () => {
  test("a property that the text states: the figure says that it is supposed", () => {
    const { design, suppositions } = laid("site.lowest-temperature=-15 degC");
    expect(given(design.site!, "lowest-temperature")).toMatchObject({
      value: 258.15,
      origin: { kind: "stated", whatIf: true, text: "site, lowest-temperature, what if" },
    });
    const [supposed] = suppositions;
    expect(supposed).toMatchObject({ target: "site", value: "−15 °C", written: "−10 °C" });
    expect(text.slice(supposed!.place.chunk.start + supposed!.place.from)).toMatch(/^-10 degC/);
  });
  test("one that only its part's sheet states, of this item alone", () => {
    const { design, suppositions } = laid("INV.max-dc-voltage=500 V");
    expect(given(item(design, "INV"), "max-dc-voltage")?.value).toBe(500);
    expect(given(design.parts.get("Mill5")!, "max-dc-voltage")?.value).toBe(600);
    expect(suppositions[0]).toMatchObject({ written: "600 V" });
    expect(textOf(item(design, "INV"), "location")).toBe("loft");
  });
  test("one of a part, for every item of it", () => {
    const { design } = laid("Sorrel420.open-circuit-voltage=40 V");
    expect(given(item(design, "S1").part!, "open-circuit-voltage")?.value).toBe(40);
  });
  test("one of a port that the part brings; the rest of the port stays", () => {
    const { design, suppositions } = laid("INV.pv1.max-current=20 A");
    expect(given(item(design, "INV.pv1"), "max-current")?.value).toBe(20);
    expect(design.runs[0]?.to?.item).toBe(item(design, "INV.pv1"));
    expect(item(design, "INV").children).toHaveLength(1);
    expect(suppositions[0]).toMatchObject({ target: "INV.pv1", written: "16 A" });
  });
  test("one of something deep inside a part, by its bare name as well", () => {
    for (const name of ["CU.R1.K1", "K1"]) {
      const { design, suppositions } = laid(`${name}.rated-current=20 A`);
      expect(given(item(design, "CU.R1.K1"), "rated-current")?.value).toBe(20);
      expect(wordOf(item(design, "CU.R1"), "type")).toBe("AC");
      expect(item(design, "CU").children).toHaveLength(1);
      expect(suppositions[0]?.target).toBe("CU.R1.K1");
    }
  });
  test("one of a block of a sheet", () => {
    const { design } = laid("Mill5.pv1.max-current=18 A");
    expect(given(item(design, "INV.pv1"), "max-current")?.value).toBe(18);
  });
  test("a count, also where none is written; a length, a part, a cable", () => {
    const { design, suppositions } = laid(
      "S1.count=12",
      "S2.count=3",
      "W1.length=2500 cm",
      "S2.part=Sorrel500",
      "W1.cable=Line6",
    );
    expect([item(design, "S1").count, item(design, "S2").count]).toEqual([12, 3]);
    expect(design.runs[0]?.declaration.length).toMatchObject({ value: { si: 25 }, whatIf: true });
    expect(item(design, "S2").part?.name).toBe("Sorrel500");
    expect(design.runs[0]?.cable?.name).toBe("Line6");
    expect(suppositions.map(({ value, written }) => [value, written])).toEqual([
      ["12", "10"],
      ["3", "1"],
      ["2500 cm", "12 m"],
      ["Sorrel500", "Sorrel420"],
      ["Line6", "Line4"],
    ]);
  });
  test("words, flags, ranges, texts, days and lists", () => {
    const { design, suppositions } = laid(
      "site.rules=iec",
      "site.date=2026-05-02",
      "INV.galvanic-separation=yes",
      "INV.pv1.voltage-range=120..430 V",
      'INV.location="plant wall"',
      "INV.shutdown-order=[ac, dc]",
      "site.designer=a b",
    );
    expect(suppositions.map(({ value }) => value)).toEqual([
      "iec",
      "2026-05-02",
      "yes",
      "120 V..430 V",
      '"plant wall"',
      "[ac, dc]",
      '"a b"',
    ]);
    expect(suppositions[2]?.written).toBeUndefined();
    expect(wordOf(design.site!, "rules")).toBe("iec");
  });
});

describe("what may not", () => {
  test.each([
    ["S9.count=12", "S9.count = 12: There is no item, run or part S9. Did you mean S1?"],
    ["INV.pv2.max-current=1 A", "There is no item, run or part INV.pv2. Did you mean INV.pv1?"],
    ["S1.out.tilt=1 deg", "S1.out is a terminal of S1. Name the item."],
    ["S1.tlit=1 deg", "S1 (PV string) has no property tlit. Did you mean tilt?"],
    ["W1.qqq=1", "W1 (run) has no property qqq. It has method, ambient,"],
    ["site.lowest-temperature=-15", "needs its unit, for example -10 degC"],
    ["site.lowest-temperature=-15 V", "is a temperature, for example -10 degC; -15 V is a voltage."],
    ["site.lowest-temperature=cold", "lowest-temperature is a number; this is cold."],
    ["site.lowest-temperature=-15 degc", "Did you mean degC?"],
    ["site.rules=uk", "rules cannot be uk"],
    ["site.date=2026-02-30", "date is a day such as 2026-06-12"],
    ["INV.galvanic-separation=maybe", "galvanic-separation is yes or no; this is maybe."],
    ["INV.pv1.voltage-range=80 V", "voltage-range is a range, as in 80..550 V; this is 80 V."],
    ["INV.max-dc-voltage=-500 V", "max-dc-voltage cannot be less than nothing; this is −500 V."],
    ["Sorrel420.open-circuit-voltage-coefficient=0.25 %/K", "open-circuit-voltage-coefficient is negative"],
    ["S1.count=1.5", "A count is a whole number from 1 without a unit; this is 1.5."],
    ["S1.count=0", "A count is a whole number from 1"],
    ["W1.length=25", "The length of a run needs its unit, for example 25 m."],
    ["W1.length=25 V", "The length of a run is a length"],
    ["S1.part=Sorrel421", "There is no part Sorrel421. Did you mean Sorrel420?"],
    ["S1.part=Line4", "Line4 is a part of kind cable; here a module is needed."],
  ])("%s", (hypothesis, message) => {
    const [told, ...others] = refused(hypothesis);
    expect(others).toEqual([]);
    expect(told).toContain(message);
  });
  test("a name that two things have", () => {
    const two = text.replace("board CU is Split", "board CU is Split\nboard CV is Split");
    const { refusals } = overlay("K1.rated-current=20 A").over([file(two)]);
    expect(refusals[0]).toMatchObject({ because: "no-target" });
    expect(refusals[0]?.message).toContain("K1 may be CU.R1.K1 or CV.R1.K1. Write the whole path.");
  });
  test("what is refused changes nothing, and the others hold", () => {
    const { files, suppositions, refusals } = overlay("S1.count=12", "S9.count=1").over([file()]);
    expect(refusals).toHaveLength(1);
    expect(suppositions).toHaveLength(1);
    expect(item(buildDesign(files), "S1").count).toBe(12);
  });
});

describe("identity", () => {
  test("what no hypothesis is about stays the same object", () => {
    const source = file();
    const { files } = overlay("S1.count=12").over([source]);
    const after = files[0]!.fragments;
    const changed = source.fragments.filter((fragment, index) => after[index] !== fragment);
    expect(changed.map(({ declarations }) => declarations.map((one) => "name" in one && one.name))).toEqual([["S1"]]);
    expect(buildDesign([source]).items.find(({ id }) => id === "S1")?.count).toBe(10);
  });
  test("what is supposed stays the same object while its text does, and is made anew with it", () => {
    const source = file();
    const lay = overlay("S1.count=12", "INV.pv1.max-current=20 A");
    const before = lay.over([source]).files[0]!.fragments;
    source.update(text.replace("12 m of", "13 m of"));
    const after = lay.over([source]).files[0]!.fragments;
    expect(after.map((fragment, index) => fragment === before[index])).toEqual(
      before.map((_, index) => index !== before.length - 1),
    );
    source.update(text.replace("tilt: 35", "tilt: 36"));
    const design = buildDesign(lay.over([source]).files);
    expect(given(item(design, "S1"), "tilt")?.unit).toBe("deg");
    expect(given(item(design, "S1"), "tilt")?.value).toBeCloseTo((36 * Math.PI) / 180);
    expect(item(design, "S1").count).toBe(12);
  });
});
