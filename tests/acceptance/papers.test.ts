import { describe, expect, test } from "vitest";
import { given, textOf } from "../../language-server/src/design/facts.js";
import { sourceText, workingLines } from "../../language-server/src/physics/working.js";
import { labelSchedule } from "../../language-server/src/rules/label-schedule.js";
import { house } from "./house.js";

/**
 * Questions 21 to 25 on the reference house: readings, labels, the form, and why something is flagged. The printed
 * papers themselves are not asked for here, but the data that they are printed from: expected readings, rows of the
 * label schedule, the way to the distributor with what is still blank.
 */
const reference = house();
const measured = (block: string) => house((text) => `${text}\nmeasured ${block}\n`);

describe("21: what should I measure today, at 18 °C and 650 W/m²?", () => {
  const conditions = "irradiance: 650 W/m2  cell-temperature: 18 degC";
  test("A 434.3 V, B 236.9 V by the temperature alone", () => {
    const a = measured("A on 2026-06-12 { open-circuit-voltage: 434.3 V  cell-temperature: 18 degC }");
    expect(a.passed("reading-voltage", "A")).toHaveProperty(["434.3 V expected"]);
    const b = measured("B on 2026-06-12 { open-circuit-voltage: 236.9 V  cell-temperature: 18 degC }");
    expect(b.passed("reading-voltage", "B")).toHaveProperty(["236.9 V expected"]);
  });
  test("with the weaker light in it as well, A 428 V: both are within 5 % of each other", () => {
    const a = measured(`A on 2026-06-12 { open-circuit-voltage: 434.3 V  ${conditions} }`);
    expect(a.passed("reading-voltage", "A")).toEqual({ "428 V expected": "1.48 % / 5 %" });
  });
  test("a short-circuit current of 9.0 A", () => {
    const a = measured(`A on 2026-06-12 { short-circuit-current: 9.05 A  ${conditions} }`);
    expect(a.passed("reading-current", "A")).toHaveProperty(["9.01 A expected"]);
  });
  test("insulation at 1000 V on A (1.25 · 426.8 V = 533.5 V) and at 500 V on B, 1 MΩ at least", () => {
    const right = measured("A on 2026-06-12 { insulation-test-voltage: 1000 V  insulation-resistance: 2 Mohm }");
    expect(right.passed("reading-insulation", "A")).toEqual({
      "least resistance": "2 MΩ / 1 MΩ",
      "tested at 1000 V": "holds",
    });
    const b = measured("B on 2026-06-12 { insulation-test-voltage: 500 V  insulation-resistance: 2 Mohm }");
    expect(b.passed("reading-insulation", "B")).toHaveProperty(["tested at 500 V"]);
    const wrong = measured("A on 2026-06-12 { insulation-test-voltage: 500 V  insulation-resistance: 2 Mohm }");
    expect(wrong.found("reading-insulation", "A")).toEqual([
      "A was tested at 500 V; 1000 V is the test voltage for Usys = 533.5 V.",
    ]);
  });
});

describe("22: I read 395 V on A", () => {
  const [finding] = measured("A on 2026-06-12 { open-circuit-voltage: 395 V  cell-temperature: 18 degC }").findings(
    "reading-voltage",
    "A",
  );
  test("−9 % of 434.3 V: one module is missing or by-passed", () => {
    expect(finding?.what).toBe("A: 395 V was read where 434.3 V is expected at 18 °C: −9.04 %, 5 % is accepted.");
    expect(finding?.todo).toContain("It would fit 10 modules in place of 11, one module short.");
  });
  test("a reading is a fact: nothing offers to change it or the design", () => {
    expect(finding?.fixes).toBeUndefined();
  });
});

describe("23: which labels, exact text, where?", () => {
  const rows = labelSchedule(reference.assessment).map(({ label, thing, quantity }) => {
    const { text, source } = reference.assessment.ruleSet.labels[label];
    return { label, on: thing.id, quantity, text, from: sourceText(source) };
  });
  const where = (wanted: string) => rows.filter(({ label }) => label === wanted).map(({ on }) => on);
  test("a row for each device that needs one", () => {
    expect(where("multiple-supplies")).toEqual(["GRID", "OLD", "Q4"]);
    expect(where("dc-isolator")).toEqual(["Q1", "Q2"]);
    expect(where("live-in-daylight")).toEqual(["Q1", "Q2"]);
    expect(where("isolate-both-sides")).toEqual(["INV"]);
    expect(where("battery")).toEqual(["BAT"]);
    expect(where("backup-supply")).toEqual(["NEW"]);
    expect(where("electrode")).toEqual(["E2"]);
    expect(where("rcd-test")).toEqual(["OLD", "NEW"]);
    expect(where("shutdown-procedure")).toEqual(["OLD"]);
    expect(where("surge-protection")).toEqual(["U1", "U2"]);
  });
  test("cables along their length: one every ten metres", () => {
    expect(rows.filter(({ label }) => label === "dc-cable").map(({ on, quantity }) => [on, quantity])).toEqual([
      ["W1", 2],
      ["W4", 3],
    ]);
  });
  test("each with its exact text, and which rule wants it", () => {
    for (const { text, from } of rows) {
      expect(text).not.toBe("");
      expect(from).not.toBe("");
    }
  });
});

describe("24: what do I write on the form, before or after?", () => {
  const [finding] = reference.findings("grid-route", "GRID");
  test("before: 5 kW is 21.7 A, more than 16 A on a line", () => {
    expect(finding?.what).toBe("GRID: 21.7 A registered by INV, 16 A is the limit.");
    expect(finding?.todo).toContain("apply-first");
  });
  test("written down the wrong way it is an error", () => {
    const wrong = house((text) =>
      text.replace("    phases: 1\n    earthing", "    phases: 1\n    grid-route: connect-and-notify\n    earthing"),
    );
    expect(wrong.findings("grid-route", "GRID").map(({ severity }) => severity ?? "error")).toEqual(["error"]);
  });
  test("what the form needs is known or blank, and never made up", () => {
    const port = reference.item("INV.ac");
    expect(given(port, "rated-power")?.value).toBe(5000);
    expect(given(reference.item("BAT"), "energy")?.unit).toBe("kWh");
    expect(textOf(reference.item("GRID"), "supply-number")).toBeUndefined();
    expect(textOf(reference.item("INV"), "type-test-reference")).toBeUndefined();
  });
});

describe("25: why is this flagged, and how do I record that I disagree?", () => {
  const [finding] = reference.findings("dc-voltage-drop", "W4");
  test("the sum as one would do it by hand", () => {
    const lines = workingLines(finding!.value!);
    expect(lines).toContain("ΔU = 2 · L · r · I = 2 · 23 m · 5.09 Ω/km · 13.2 A = 3.09 V");
    expect(lines.at(-1)).toBe("Δu = ΔU,path / Ump,string = 3.23 V / 195.6 V = 1.65 %");
  });
  test("where each figure comes from, and the rule with its edition", () => {
    expect(workingLines(finding!.limit!)[0]).toContain("Designers differ between 1 % and 2 %");
    const rule = reference.assessment.checks.find((check) => check.rule.id === "dc-voltage-drop")?.rule;
    expect(rule?.sources.gb?.map(sourceText).join("; ")).toContain("IEC 60228:2004");
    expect(reference.assessment.ruleSet.editions.map(({ title }) => title).join("; ")).toContain("BS 7671");
  });
  test("a departure in writing with reason, name and day makes it a note that stays in every output", () => {
    const departed = house(
      (text) =>
        `${text}\ndeparture dc-voltage-drop on W4 because "24 m is the only route" { by: "J. Alder"  until: 2027-05-01 }\n`,
    );
    expect(departed.findings("dc-voltage-drop", "W4")).toEqual([]);
    const [departure] = departed.departures("dc-voltage-drop", "W4");
    expect(departure).toMatchObject({
      departure: { reason: "24 m is the only route" },
      finding: { what: finding!.what },
    });
    const stale = house((text) => `${text}\ndeparture dc-voltage-drop on W1 because "agreed"\n`);
    expect(stale.assessment.problems.map(({ id }) => id)).toContain("unused-departure");
  });
});
