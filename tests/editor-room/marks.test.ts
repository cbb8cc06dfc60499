import { describe, expect, test } from "vitest";
import { marksOf } from "../../language-server/src/editor/diagnostics.js";
import { cottage, files, plant, roof } from "./alder-cottage.js";
import { TestWorkspace, uriOf } from "./workspace.js";

function marks(workspace: TestWorkspace, name: string, notChecked: "hint" | "off" = "off") {
  const text = workspace.text(uriOf(name)) ?? "";
  return marksOf(workspace.view, uriOf(name), { notChecked, docs: "file:///docs/" }).map((mark) => ({
    ...mark,
    at: text.slice(mark.span.start, mark.span.end),
  }));
}
function ids(workspace: TestWorkspace, name: string): string[] {
  return marks(workspace, name).map(({ id, at }) => `${id} ${at}`);
}

const tooMany = cottage.replace("8 x", "15 x");

describe("what is marked in a file", () => {
  test("a good design has no mark", () => {
    const workspace = new TestWorkspace(files);
    for (const name of Object.keys(files)) expect(ids(workspace, name)).toEqual([]);
  });

  test("a finding stands at the choice, links to its page and to the line of the limit", () => {
    const workspace = new TestWorkspace({ ...files, "cottage.sun": tooMany });
    const [mark] = marks(workspace, "cottage.sun").filter(({ id }) => id === "string-voltage");
    expect(mark).toMatchObject({
      at: "15",
      severity: "error",
      page: "file:///docs/rules/string-voltage.md",
      thing: "S1",
    });
    const limit = mark!.related.find(({ span }) => span.uri === uriOf("plant.sun"));
    expect(plant.slice(limit!.span.start, limit!.span.end)).toBe("600 V");
  });

  test("problems of the text link to the language page", () => {
    const workspace = new TestWorkspace({ "a.sun": "string S1 is 2 x Nothing { tilt: 3 }\n" });
    expect(marks(workspace, "a.sun").map(({ id, at, page }) => [id, at, page])).toEqual([
      ["unwired-item", "S1", "file:///docs/language.md"],
      ["unknown-name", "Nothing", "file:///docs/language.md"],
      ["missing-unit", "3", "file:///docs/language.md"],
    ]);
  });

  test("a parts file is judged in every design that uses it, each thing once", () => {
    const workspace = new TestWorkspace({
      ...files,
      "cottage.sun": tooMany,
      "barn.sun": tooMany.replace("Alder Cottage", "Ash Barn"),
      "roof.sun": roof.replace("430 W", "430"),
    });
    expect(ids(workspace, "roof.sun")).toEqual(["missing-unit 430"]);
    expect(workspace.view.entries(uriOf("roof.sun")).sort()).toEqual([uriOf("barn.sun"), uriOf("cottage.sun")]);
    expect(workspace.view.concerned([uriOf("roof.sun")])).toEqual(
      new Set(Object.keys(files).concat("barn.sun").map(uriOf)),
    );
  });

  test("files that only use each other are judged all the same", () => {
    const workspace = new TestWorkspace({
      "a.sun": 'use "b.sun"\npart P is module { power: 3 }\n',
      "b.sun": 'use "a.sun"\npart Q is module { power: 4 }\n',
    });
    expect(ids(workspace, "a.sun")).toContain("missing-unit 3");
    expect(ids(workspace, "b.sun")).toContain("missing-unit 4");
  });

  test("while a line is half typed, it is marked once and nothing is guessed about it", () => {
    const workspace = new TestWorkspace({ ...files, "cottage.sun": tooMany });
    workspace.write("cottage.sun", tooMany.replace("15 x Hollin430 {", "15 x {"));
    const shown = marks(workspace, "cottage.sun").filter(({ span }) => span.start < tooMany.indexOf("string S2"));
    expect(shown.map(({ id }) => id)).toEqual(["syntax"]);
  });

  test.each([
    ["run W6 from Q2 to F2: 0.4 m of Solar4", "run W6 from Q2 to F2: 0.4 m o"],
    ["spd F2 is SurgeDc800", "spd F2 is"],
    ["azimuth: 270 deg", "azimuth 270 deg"],
    ["rules: gb", "rules: gb\n    build"],
    ["isolator Q2 is RotaryDc32 {", "isolator Q2 is RotaryDc32 { loc"],
    ["inverter INV is Brook4", "inverter INV is Brook4 {"],
  ])("the findings elsewhere stay while %s is being typed", (before, after) => {
    const workspace = new TestWorkspace({ ...files, "cottage.sun": tooMany });
    const start = tooMany.indexOf(before);
    const whole = marks(workspace, "cottage.sun")
      .filter(({ span }) => span.start < start || span.start > start + before.length)
      .map(({ id, message }) => `${id} ${message}`);
    expect(whole.length).toBeGreaterThan(0);
    workspace.write("cottage.sun", tooMany.replace(before, after));
    const left = marks(workspace, "cottage.sun");
    expect(left.filter(({ id }) => id === "syntax")).toHaveLength(1);
    expect(left.filter(({ id }) => id !== "syntax").map(({ id, message }) => `${id} ${message}`)).toEqual(whole);
  });

  test("what could not be checked is one hint a thing, naming what is missing and whose it is", () => {
    const workspace = new TestWorkspace({
      ...files,
      "roof.sun": roof.replace("    max-system-voltage: 1500 V\n", ""),
    });
    const hints = marks(workspace, "cottage.sun", "hint").filter(({ id }) => id === "not-checked");
    const hint = hints.find(({ at }) => at === "S1")!;
    expect(hint.severity).toBe("hint");
    expect(hint.message).toContain("string-voltage: max-system-voltage of Hollin430 is not stated");
    expect(hint.related.map(({ message }) => message)).toContain("Hollin430 does not state max-system-voltage");
    expect(new Set(hints.map(({ span }) => span.start)).size).toBe(hints.length);
    expect(marks(workspace, "cottage.sun", "off").filter(({ severity }) => severity === "hint")).toEqual([]);
  });

  test("an assessment is computed once a version", () => {
    const workspace = new TestWorkspace(files);
    const first = workspace.view.assessment(uriOf("cottage.sun"));
    expect(workspace.view.assessment(uriOf("cottage.sun"))).toBe(first);
    workspace.write("plant.sun", `${plant}\n// a remark\n`);
    expect(workspace.view.assessment(uriOf("cottage.sun"))).not.toBe(first);
  });
});
