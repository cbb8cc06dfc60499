import { expect, test } from "vitest";
import { exampleText } from "../../language-server/src/rules/example-parts.js";
import { assessText } from "./designs.js";
import { describeCheck } from "./expectations.js";

/** A file without a site is read while it is being written, and by whoever opens a file of items by itself. */
const design = exampleText(`string S1 is 11 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 12 m of Solar4
`).replace(/^site [\s\S]*?^}\n/m, "");

test("what only a site says is named as missing, and the factor for an unknown temperature is taken", () => {
  const { checks, ruleSet } = assessText(design);
  expect(ruleSet.id).toBe("iec");
  const said = checks.map(describeCheck);
  expect(said).toContain(
    "not-checked building-voltage on S1:  (there is no site, so it is not known what carries the array)",
  );
  expect(said).toContain(
    "not-checked tracker-window on S1:  (there is no site, so its highest-temperature is not known)",
  );
  // 11 · 38.9 V · 1.2 = 513.48 V; 513.48 / 600 = 85.58 % (factor: IEC 60364-7-712:2017, Annex B, from memory)
  const inverter = checks.find((check) => describeCheck(check).endsWith(": INV") && check.rule.id === "string-voltage");
  expect(inverter?.outcome).toMatchObject({ outcome: "pass" });
  expect(inverter?.outcome.outcome === "pass" && inverter.outcome.utilisation).toBeCloseTo(0.8558, 4);
});
