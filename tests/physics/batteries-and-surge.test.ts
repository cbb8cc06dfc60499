import { describe, expect, test } from "vitest";
import { batteriesTogether, faultCurrentOfLead } from "../../language-server/src/physics/batteries-together.js";
import { stated } from "../../language-server/src/physics/make.js";
import { calculatedRiskLevel, leastContinuousVoltage } from "../../language-server/src/physics/surge-ac.js";
import { workingLine } from "../../language-server/src/physics/working.js";
import { ruleSetOf } from "../../language-server/src/rules/rule-sets.js";

const kiloamperes = (value: number) => stated("Ik", value * 1000, "current", "kA", "sheet");
/** Per year and km², in the SI unit that the language stores it in. */
const flashes = (value: number) => stated("Ng", value / 1e6 / 31_557_600, "flash-density", "/km2/yr", "site");

describe("a fault in the lead of one of several batteries (arithmetic)", () => {
  test("is fed by that battery alone where it is the only one", () => {
    expect(faultCurrentOfLead(kiloamperes(4), []).value).toBe(4000);
  });
  test("is fed by all the others where they give more: 3 + 3 kA against 4 kA", () => {
    const fault = faultCurrentOfLead(kiloamperes(4), [kiloamperes(3), kiloamperes(3)]);
    expect(fault.value).toBe(6000);
    expect(workingLine(fault)).toBe("Ik = max(Iown; Σ Ibank) = max(4 kA; (3 kA + 3 kA)) = 6 kA");
  });
  test("never carries less with one battery more", () => {
    const two = faultCurrentOfLead(kiloamperes(4), [kiloamperes(3)]);
    const three = faultCurrentOfLead(kiloamperes(4), [kiloamperes(3), kiloamperes(0.5)]);
    expect(three.value).toBeGreaterThanOrEqual(two.value);
    expect(batteriesTogether([kiloamperes(4), kiloamperes(3)]).value).toBe(7000);
  });
});

describe("surge protection on the a.c. side", () => {
  test("Uc is at least 253 V at 230 V (IEC 60364-5-53, 534: 1.1 · U0; from memory)", () => {
    const factor = ruleSetOf("iec").limit("surge-continuous-factor");
    const voltage = stated("U0", 230, "voltage", "V", "supply");
    expect(leastContinuousVoltage(factor, voltage).value).toBeCloseTo(253, 9);
  });
  test("the risk level of a kilometre of line in town at half a flash a year is 1700 (IEC 60364-4-44, 443.5; from memory)", () => {
    const risk = ruleSetOf("iec").ac.surgeRisk!;
    const level = calculatedRiskLevel(risk.environment.get("urban")!, risk.line, flashes(0.5));
    expect(level.value).toBeCloseTo(1700, 0);
    expect(level.value).toBeGreaterThan(risk.least.value);
  });
  test("more lightning and a longer line never make the risk level better", () => {
    const risk = ruleSetOf("iec").ac.surgeRisk!;
    const fenv = risk.environment.get("rural")!;
    const long = { ...risk.line, value: 2 * risk.line.value };
    const level = calculatedRiskLevel(fenv, risk.line, flashes(0.5)).value;
    expect(calculatedRiskLevel(fenv, long, flashes(0.5)).value).toBeLessThan(level);
    expect(calculatedRiskLevel(fenv, risk.line, flashes(1)).value).toBeLessThan(level);
  });
});
