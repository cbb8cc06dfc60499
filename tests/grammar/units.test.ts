import { displayUnit, findUnit, fromSi, nearestUnit, parseQuantity, toSi, units, unitsOf } from "@sunwright/grammar";
import fc from "fast-check";
import { describe, expect, test } from "vitest";

describe("conversion", () => {
  test("every unit comes back from SI to within 1e-12", () => {
    const value = fc
      .double({ min: -1e6, max: 1e6, noNaN: true })
      .filter((drawn) => drawn === 0 || Math.abs(drawn) > 1e-9);
    fc.assert(
      fc.property(fc.constantFrom(...units), value, (unit, drawn) => {
        const written = unit.name === "AWG" ? (drawn / 1e6) * 40 : drawn;
        const si = toSi(written, unit);
        const back = fromSi(si, unit);
        // An offset costs precision near zero: a temperature is compared on the scale of its kelvins.
        const scale = Math.max(Math.abs(written), Math.abs(unit.offset ?? 0), unit.name === "AWG" ? 36 : 0);
        expect(Math.abs(back - written)).toBeLessThanOrEqual(1e-12 * scale);
      }),
    );
  });

  test("the same length in three units is the same number", () => {
    expect(parseQuantity("1800 cm").si).toBe(18);
    expect(parseQuantity("0.018 km").si).toBe(18);
    expect(parseQuantity("18m").si).toBe(18);
  });

  test("decimals do not gain digits on the way", () => {
    expect(toSi(1.1, "mV")).toBe(0.0011);
    expect(toSi(550, "Mohm")).toBe(5.5e8);
    expect(toSi(-0.25, "%/K")).toBe(-0.0025);
  });

  test("fixed points of the temperature scales: 0 degC = 32 degF = 273.15 K (definition of the scales)", () => {
    expect(toSi(0, "degC")).toBe(273.15);
    expect(toSi(32, "degF")).toBeCloseTo(273.15, 10);
    expect(toSi(-40, "degF")).toBeCloseTo(toSi(-40, "degC"), 10);
    expect(findUnit("K")?.dimension).toBe("temperature-difference");
  });

  test("a table of units has no name twice, and every unit knows its way", () => {
    expect(new Set(units.map((unit) => unit.name)).size).toBe(units.length);
    for (const unit of units) expect(Number.isFinite(toSi(10, unit)), unit.name).toBe(true);
    expect(unitsOf("length").map((unit) => unit.name)).toEqual(["m", "cm", "mm", "km", "ft", "in"]);
  });

  test("a unit that does not exist is refused, never taken as plain", () => {
    expect(() => toSi(1, "furlong")).toThrow(RangeError);
    expect(() => fromSi(1, "")).not.toThrow();
  });
});

describe("reading a quantity", () => {
  test.each([
    ["18 m", 18, "m"],
    ["18 Ω", 18, "ohm"],
    ["0.24 Ω", 0.24, "ohm"],
    ["-10 °C", -10, "degC"],
    ["−0.25 %/K", -0.25, "%/K"],
    ["16 mm²", 16, "mm2"],
    ["0.5 /km²/yr", 0.5, "/km2/yr"],
    ["640 W/m²", 640, "W/m2"],
    ["550 MΩ", 550, "Mohm"],
    ["90 kA²s", 90, "kA2s"],
    ["1e3 V", 1000, "V"],
    ["+3 K", 3, "K"],
    ["35 °", 35, "deg"],
    ["10 AWG", 10, "AWG"],
    ["2/0 AWG", -1, "AWG"],
    ["11", 11, ""],
  ])("%s", (text, written, unit) => {
    expect(parseQuantity(text)).toMatchObject({ written, unit, problems: [] });
  });

  test("the wrong case is an error that offers the right one", () => {
    const { dimension, si, problems } = parseQuantity("18 M");
    expect(dimension).toBeUndefined();
    expect(si).toBeNaN();
    expect(problems).toMatchObject([{ id: "unknown-unit", from: 3, to: 4, suggestions: [{ text: "18 m" }] }]);
    expect(problems[0]?.message).toContain("case");
    expect(parseQuantity("4 KW").problems[0]?.suggestions[0]?.text).toBe("4 kW");
    expect(parseQuantity("4MOhm").problems[0]?.suggestions.map((each) => each.text)).toEqual(["4 Mohm", "4 mohm"]);
  });

  test("a unit in words is an error that offers the symbol", () => {
    expect(parseQuantity("18 metres").problems[0]?.suggestions[0]?.text).toBe("18 m");
    expect(parseQuantity("35 C").problems[0]?.suggestions[0]?.text).toBe("35 degC");
    expect(nearestUnit("C").map((unit) => unit.name)).toEqual(["degC"]);
    expect(nearestUnit("constructor")).toEqual([]);
  });

  test("a decimal comma is an error with a quick fix; three digits after it are no number at all", () => {
    expect(parseQuantity("1,2 m")).toMatchObject({
      written: 1.2,
      problems: [{ id: "decimal-comma", from: 0, to: 3, suggestions: [{ text: "1.2 m" }] }],
    });
    const doubtful = parseQuantity("1,200 V");
    expect(doubtful.si).toBeNaN();
    expect(doubtful.problems[0]?.suggestions.map((each) => each.text)).toEqual(["1.200 V", "1200 V"]);
  });

  test("no text makes it throw", () => {
    fc.assert(fc.property(fc.string({ unit: "binary" }), (text) => parseQuantity(text).problems.length >= 0));
  });

  test("units are printed the way people write them", () => {
    expect(["mm2", "degC", "Mohm", "W/m2", "kA2s", "/km2/yr", "mohm/m", "%/K", "V", "m"].map(displayUnit)).toEqual([
      "mm²",
      "°C",
      "MΩ",
      "W/m²",
      "kA²s",
      "/km²/yr",
      "mΩ/m",
      "%/K",
      "V",
      "m",
    ]);
  });
});

describe("wire gauges", () => {
  test("an AWG number is the area of its circle: 4/0 is 0.46 in, 36 is 0.005 in across (ASTM B258)", () => {
    const area = (inches: number) => (Math.PI / 4) * (inches * 0.0254) ** 2;
    expect(parseQuantity("36 AWG").si).toBeCloseTo(area(0.005), 15);
    expect(parseQuantity("4/0 AWG").si / area(0.46)).toBeCloseTo(1, 6);
    expect(toSi(211.6, "kcmil") / parseQuantity("4/0 AWG").si).toBeCloseTo(1, 5);
  });
});
