import { expect, test } from "vitest";
import { exampleText } from "../../language-server/src/rules/example-parts.js";
import { labelSchedule } from "../../language-server/src/rules/label-schedule.js";
import { ruleSets } from "../../language-server/src/rules/rule-sets.js";
import { assessText } from "./designs.js";

const house = `supply GRID {}
board CU is SplitBoard { way 9: rcbo K9 is Rcbo25A serves INV }
isolator Q3 is Switch63
inverter INV is Fell5
battery BAT is Stack51
string S1 is 11 x Hollin430
isolator Q1 is RotaryDc32
run W1 from GRID to CU: 3 m of Tails25
run W2 from CU.K9 to Q3: 8 m of Twin6
run W3 from Q3 to INV.ac: 1 m of Twin6
run W4 from BAT to INV.battery: 1 m of Lead35
run W5 from S1 to Q1: 24 m of Solar4
run W6 from Q1 to INV.pv1: 1 m of Solar4
`;

test("a house: signs at the origin, at every point of isolation, and along the d.c. cable", () => {
  const rows = labelSchedule(assessText(exampleText(house))).map(
    ({ label, thing, quantity }) => `${thing.id}: ${label}${quantity > 1 ? ` x ${quantity}` : ""}`,
  );
  // Where each belongs: published lists of labels (BS 7671 514.15 and 712.514, MCS guide, PAS 63100); d.c. cables carry
  // one every 5 m to 10 m (MCS guide), so three on 24 m and none on 1 m.
  expect(rows).toEqual([
    "GRID: multiple-supplies",
    "GRID: solar-and-battery-sign",
    "CU: multiple-supplies",
    "CU: circuit-diagram",
    "CU: shutdown-procedure",
    "CU: rcd-test",
    "Q3: ac-isolator",
    "Q3: multiple-supplies",
    "INV: isolate-both-sides",
    "BAT: battery",
    "Q1: dc-isolator",
    "Q1: live-in-daylight",
    "W5: dc-cable x 3",
  ]);
});

test("an array without any a.c. side has the labels of its d.c. side only", () => {
  const array = `string S1 is 11 x Hollin430
inverter INV is Brook4
run W1 from S1 to INV.pv1: 3 m of Solar4
`;
  const rows = labelSchedule(assessText(exampleText(array))).map(({ label, thing }) => `${thing.id}: ${label}`);
  expect(rows).toEqual(["INV: isolate-both-sides"]);
});

test.each(ruleSets)("rule set $id has a text and a source for every label", ({ labels }) => {
  for (const [word, { text, source }] of Object.entries(labels)) {
    expect(text, word).not.toBe("");
    expect(source.title, word).not.toBe("");
  }
});
