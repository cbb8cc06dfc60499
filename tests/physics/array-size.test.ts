import { describe, expect, test } from "vitest";
import { arrayPower, sizingRatio, stringPower } from "../../language-server/src/physics/array-power.js";
import { clippedShare, workingCurrentWithGain } from "../../language-server/src/physics/clipping.js";
import { stated } from "../../language-server/src/physics/make.js";
import { planeAngle } from "../../language-server/src/physics/plane-angle.js";
import { workingLine } from "../../language-server/src/physics/working.js";

/** Sums that follow from arithmetic and geometry alone. */

const number = (value: number) => stated("n", value, "number", "", "test");
const watts = (value: number) => stated("P", value, "power", "W", "test");
const amperes = (value: number) => stated("I", value, "current", "A", "test");

test("13 and 11 modules of 430 W are 10.32 kW, 2.064 times 5 kW", () => {
  const power = arrayPower([stringPower(number(13), watts(430)), stringPower(number(11), watts(430))]);
  expect(power.value).toBeCloseTo(10_320, 9);
  expect(sizingRatio(power, watts(5000)).value).toBeCloseTo(2.064, 12);
});

test("an input of 16 A takes all of 13.2 A and leaves 39.4 % of 26.4 A", () => {
  expect(clippedShare(amperes(13.2), amperes(16)).value).toBe(0);
  expect(clippedShare(amperes(26.4), amperes(16)).value).toBeCloseTo(1 - 16 / 26.4, 12);
});

test("a rear-side gain of 10 % makes 13.2 A 14.52 A; without one the figure is left as it is", () => {
  const gain = stated("b", 0.1, "ratio", "%", "test");
  expect(workingCurrentWithGain(amperes(13.2), gain).value).toBeCloseTo(14.52, 12);
  const current = amperes(13.2);
  expect(workingCurrentWithGain(current)).toBe(current);
});

describe("angle between planes", () => {
  const degrees = (value: number) => stated("a", (value * Math.PI) / 180, "angle", "deg", "test");
  const plane = (tilt: number, azimuth: number) => ({ tilt: degrees(tilt), azimuth: degrees(azimuth) });
  test.each([
    ["a plane and itself", plane(35, 180), plane(35, 180), 0],
    ["two sides of a ridge", plane(35, 90), plane(35, 270), 70],
    ["two walls at a corner", plane(90, 0), plane(90, 90), 90],
    ["flat, whatever is written", plane(0, 10), plane(0, 200), 0],
    ["two slopes one way", plane(30, 180), plane(42, 180), 12],
    ["once round the compass", plane(35, 2), plane(35, 362), 0],
  ])("%s", (_name, one, other, wanted) => {
    expect((planeAngle(one, other).value * 180) / Math.PI).toBeCloseTo(wanted, 6);
    expect(planeAngle(other, one).value).toBeCloseTo(planeAngle(one, other).value, 12);
  });

  test("is printed as it would be worked by hand", () => {
    expect(workingLine(planeAngle(plane(35, 90), plane(35, 270)))).toContain("(90° − 270°) / 2)) = 70°");
  });
});
