import { describe, expect, test } from "vitest";
import type { Part, Run } from "../../language-server/src/design/things.js";
import { applied } from "../../language-server/src/editor/edits/change.js";
import { nestDevices } from "../../language-server/src/editor/refactor/nest-devices.js";
import type { NestedDevice } from "../../language-server/src/rules/rule.js";
import { TestWorkspace, uriOf } from "./workspace.js";

const parts = `part B16 is breaker
part Switch is isolator
part Link is fuse
part Surge is spd
string S1 is 10 x P
part P is module
`;

type Devices = (part: (name: string) => Part, run: Run) => readonly NestedDevice[];

/** The text behind the parts after devices have been put into `BOX`. */
function after(text: string, devices: Devices): string | undefined {
  const whole = parts + text;
  const workspace = new TestWorkspace({ "house.sun": whole });
  const { design } = workspace.view.assessment(uriOf("house.sun"));
  const some = devices((name) => design.parts.get(name)!, design.runs[0]!);
  const changes = nestDevices(workspace.view, design.names.top.get("BOX")!, some);
  return changes && applied(whole, changes).slice(parts.length);
}

const onWay =
  (way: number): Devices =>
  (part) => [{ part: part("B16"), way }];

describe("a way is written in the order of its number, in the style of its board", () => {
  test.each([
    ["board BOX\n", "board BOX { way 3: breaker K1 is B16 }\n"],
    ["board BOX {}\n", "board BOX { way 3: breaker K1 is B16 }\n"],
    ["board BOX { ways: 6 }\n", "board BOX { ways: 6  way 3: breaker K1 is B16 }\n"],
    [
      "board BOX { ways: 6  way 4: breaker K1 is B16 }\n",
      "board BOX { ways: 6  way 3: breaker K2 is B16  way 4: breaker K1 is B16 }\n",
    ],
    ["board BOX { way 4: breaker K1 is B16 }\n", "board BOX { way 3: breaker K2 is B16  way 4: breaker K1 is B16 }\n"],
    ["board BOX {\n}\n", "board BOX {\n    way 3: breaker K1 is B16\n}\n"],
    [
      "board BOX {\n\t// spare\n\tway 4: breaker K1 is B16\n}\n",
      "board BOX {\n\tway 3: breaker K2 is B16\n\t// spare\n\tway 4: breaker K1 is B16\n}\n",
    ],
    [
      "board BOX {\r\n  ways: 6 // all\r\n  rcd R1 {\r\n    way 1: breaker K1 is B16\r\n  }\r\n  way 9: breaker K2 is B16\r\n}\r\n",
      "board BOX {\r\n  ways: 6 // all\r\n  rcd R1 {\r\n    way 1: breaker K1 is B16\r\n  }\r\n  way 3: breaker K3 is B16\r\n  way 9: breaker K2 is B16\r\n}\r\n",
    ],
    [
      "board BOX {\n    way 1: breaker K1 is B16 }\n",
      "board BOX {\n    way 1: breaker K1 is B16\n    way 3: breaker K2 is B16\n}\n",
    ],
  ])("%j", (before, wanted) => {
    expect(after(before, onWay(3))).toBe(wanted);
  });
});

test("a device without a way comes before all that is nested, behind the properties", () => {
  const before = "board BOX {\n    ways: 6  // of them two spare\n    way 1: breaker K1 is B16\n}\n";
  expect(after(before, (part) => [{ part: part("Switch") }])).toBe(
    "board BOX {\n    ways: 6  // of them two spare\n    isolator Q1 is Switch\n    way 1: breaker K1 is B16\n}\n",
  );
});

test("what a way feeds stands behind the board, with a run that asks for its length", () => {
  const before = "board BOX { ways: 6 }  // in the hall\nspd F1\n";
  expect(after(before, (part) => [{ part: part("B16"), way: 2, feeds: part("Surge") }])).toBe(
    [
      "board BOX { ways: 6  way 2: breaker K1 is B16 serves F2 }  // in the hall",
      "spd F2 is Surge",
      "run W1 from BOX.K1 to F2  // state its length and cable",
      "spd F1",
      "",
    ].join("\n"),
  );
});

test.each([
  ["run W1 from S1 to BOX\n", "to", "run W1 from S1 to BOX.F2\n"],
  ["run W1 from S1 to BOX.in: 3 m of C\n", "to", "run W1 from S1 to BOX.F2: 3 m of C\n"],
  ["run W1 from BOX.in to S1\n", "from", "run W1 from BOX.F2.in to S1\n"],
] as const)("a run lands on the device instead of the bar: %j", (run, end, wanted) => {
  const box = "combiner BOX {\n    spd F1 is Surge\n}\n";
  const text = after(box + run, (part, landing) => [{ part: part("Link"), landing: { run: landing, end } }]);
  expect(text).toBe(`combiner BOX {\n    spd F1 is Surge\n    fuse F2 is Link\n}\n${wanted}`);
});

test("nothing is written into a board whose text cannot be read", () => {
  expect(after("board BOX {\n    way 1\n}\n", onWay(3))).toBeUndefined();
});
