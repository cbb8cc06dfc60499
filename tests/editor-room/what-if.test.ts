import { describe, expect, test } from "vitest";
import { actionsAt } from "../../language-server/src/editor/actions.js";
import { type Mark, marksOf } from "../../language-server/src/editor/diagnostics.js";
import { hintsIn } from "../../language-server/src/editor/hints/hints.js";
import { hoverAt } from "../../language-server/src/editor/hover/hover.js";
import { lensesOf } from "../../language-server/src/editor/lenses/lenses.js";
import { definitionAt, referencesAt } from "../../language-server/src/editor/navigate.js";
import { defaultSettings } from "../../language-server/src/editor/settings.js";
import { supposed } from "../../language-server/src/editor/what-if/suppose.js";
import { cottage, files, plant } from "./alder-cottage.js";
import { TestWorkspace, textsOf, uriOf } from "./workspace.js";

const uri = uriOf("cottage.sun");

function supposing(text: string, texts: Record<string, string> = files, name = "cottage.sun"): TestWorkspace {
  const workspace = new TestWorkspace(texts);
  const wanted = supposed(workspace.view, uriOf(name), text);
  if (typeof wanted === "string") throw new Error(wanted);
  workspace.view.suppose(wanted.entries, wanted.overlay);
  return workspace;
}
function refused(text: string): string {
  const wanted = supposed(new TestWorkspace(files).view, uri, text);
  return typeof wanted === "string" ? wanted : "";
}
function marks(workspace: TestWorkspace, name = "cottage.sun"): Mark[] {
  return marksOf(workspace.view, uriOf(name), { ...defaultSettings, notChecked: "off" });
}
function markOf(workspace: TestWorkspace, id: string): Mark | undefined {
  return marks(workspace).find((mark) => mark.id === id);
}
function hover(workspace: TestWorkspace, marked: string): string {
  const inside = marked.indexOf("|");
  const start = (workspace.text(uri) ?? "").indexOf(marked.replace("|", ""));
  if (inside < 0 || start < 0) throw new Error(`${marked} is not there`);
  return hoverAt(workspace.view, uri, start + inside, { to: () => undefined })?.markdown ?? "";
}

describe("what is supposed", () => {
  test("is marked at the words in place of which it is, in the file where they stand", () => {
    const workspace = supposing("site.lowest-temperature = -15 degC; Brook4.max-dc-voltage = 500 V");
    const [mark, ...others] = marks(workspace).filter(({ id }) => id === "what-if");
    expect(others).toEqual([]);
    expect(textsOf(workspace, [mark!.span])).toEqual([`cottage.sun:${cottage.indexOf("-10 degC")} -10 degC`]);
    expect(mark?.severity).toBe("note");
    expect(mark?.message).toContain("What if site.lowest-temperature = −15 °C (written: −10 °C).");
    const [other] = marks(workspace, "plant.sun");
    expect(textsOf(workspace, [other!.span])).toEqual([`plant.sun:${plant.indexOf("600 V")} 600 V`]);
  });
  test("makes findings that say so, and takes them back with it", () => {
    const workspace = supposing("S1.count = 15");
    expect(markOf(workspace, "string-voltage")?.message).toMatch(/^What if: S1: 15 × Hollin430 reach 634\.6 V/);
    workspace.view.suppose([], undefined);
    expect(marks(workspace)).toEqual([]);
  });
  test("leaves the marks of what it does not touch as they are", () => {
    const workspace = supposing("S2.count = 7", { ...files, "cottage.sun": cottage.replace("8 x", "15 x") });
    expect(markOf(workspace, "string-voltage")?.message).toMatch(/^S1: 15 × Hollin430 reach/);
  });
  test("marks what can no longer be checked", () => {
    const workspace = supposing("Hollin430.technology = thin-film");
    const hints = marksOf(workspace.view, uri, defaultSettings).filter(({ id }) => id === "not-checked");
    expect(hints.length).toBeGreaterThan(0);
  });
  test("goes on while its text is edited, and says when it has no place there any more", () => {
    const workspace = supposing("S1.count = 15");
    workspace.write("cottage.sun", cottage.replace("8 x", "9 x"));
    expect(markOf(workspace, "what-if")?.message).toContain("S1.count = 15 (written: 9)");
    expect(markOf(workspace, "string-voltage")?.message).toContain("15 × Hollin430");
    workspace.write("cottage.sun", cottage.replaceAll("S1", "S7"));
    expect(markOf(workspace, "what-if")).toMatchObject({
      span: { start: 0 },
      message: expect.stringContaining("Cannot be supposed any more: S1.count = 15: There is no item, run or part S1."),
    });
    expect(markOf(workspace, "string-voltage")).toBeUndefined();
  });
  test("is about the designs that have something of that name, and no other", () => {
    const texts = { ...files, "other.sun": cottage.replaceAll("S1", "S9") };
    const workspace = supposing("S9.count = 15", texts, "plant.sun");
    expect(marks(workspace)).toEqual([]);
    expect(marks(workspace, "other.sun").map(({ id }) => id)).toContain("string-voltage");
  });
});

describe("a hover", () => {
  const workspace = supposing("S1.count = 15; W1.length = 40 m; site.lowest-temperature = -15 degC");
  test("shows the supposed figure, marked, with its working", () => {
    const text = hover(workspace, "string S|1");
    expect(text).toContain("**S1**: PV string, 15 (what if) × Hollin430");
    expect(text).toMatch(/What if: Finding \(error\), string-voltage\. S1: 15 × Hollin430 reach 641\.9 V/);
    expect(text).toContain("15 · 38.9 V · (1 + (−0.25 %/K) · (−15 °C − 25 °C)) = 641.9 V");
    expect(text).toContain("Tmin = −15 °C, site, lowest-temperature, what if");
  });
  test("over the written words says what is supposed in their place", () => {
    expect(hover(workspace, "-10| degC")).toContain("What if site.lowest-temperature = −15 °C (written: −10 °C)");
    expect(hover(workspace, "|8 x")).toContain("What if S1.count = 15 (written: 8)");
    expect(hover(workspace, "9| m of")).toContain("**W1**: run from S1.out to Q1.in, 40 m (what if) of Solar4");
  });
  test("of what is untouched says nothing of it", () => {
    const text = hover(supposing("S2.count = 7"), "string S|1");
    expect(text).not.toMatch(/what if/i);
  });
});

describe("figures beside the text", () => {
  test("say that they are supposed, and only those", () => {
    const workspace = supposing("S1.count = 12");
    const hints = hintsIn(workspace.view, uri, 0, cottage.length, defaultSettings.hints).map(({ label }) => label);
    expect(hints.filter((label) => label.startsWith("Uoc")).map((label) => label.includes("what if"))).toEqual([
      true,
      false,
    ]);
    const lenses = lensesOf(workspace.view, uri).map(({ title }) => title);
    expect(lenses.filter((title) => title.startsWith("what if: works at"))).toHaveLength(1);
    expect(lenses.filter((title) => title.startsWith("works at"))).toHaveLength(1);
  });
});

describe("the text itself", () => {
  test("names lead where they always did", () => {
    const workspace = supposing(
      "S1.count = 12; INV.pv1.max-current = 10 A; Brook4.max-dc-voltage = 500 V; W1.length = 20 m",
    );
    for (const [marked, name, to] of [
      ["from S1 to", "S1 to", "S1"],
      ["to INV.pv1", "pv1", "pv1"],
      ["INV is Brook4", "Brook4", "Brook4"],
    ] as const) {
      const at = cottage.indexOf(marked) + marked.indexOf(name);
      const definition = definitionAt(workspace.view, uri, at, undefined);
      expect(definition?.goes === "to-text" && textsOf(workspace, [definition.to])[0]?.split(" ")[1]).toBe(to);
    }
    expect(referencesAt(workspace.view, uri, cottage.indexOf("string S1") + 7, true)).toHaveLength(2);
  });
  test("a fix changes what is written, never what is supposed", () => {
    const workspace = supposing("S1.count = 15; site.lowest-temperature = -15 degC");
    const at = cottage.indexOf("8 x");
    const fixes = actionsAt(workspace.view, uri, at, at + 1).filter(({ title }) => title.startsWith("Set S1"));
    for (const { changes } of fixes) expect(changes).toEqual([expect.objectContaining({ start: at, end: at + 1 })]);
    expect(fixes.length).toBeGreaterThan(0);
  });
  test("a property that is supposed and not written is not written by a fix either", () => {
    const texts = { ...files, "cottage.sun": cottage.replace("-10 degC", "-10 degC\n    building: dwelling") };
    const workspace = supposing("INV.max-dc-voltage = 300 V", texts);
    for (const { changes } of actionsAt(workspace.view, uri, 0, 10_000))
      for (const { uri: file, start, end } of changes)
        expect(workspace.text(file)?.slice(start, end)).not.toMatch(/^INV$/);
  });
});

describe("what makes no sense to suppose", () => {
  test.each([
    ["", "Write TARGET.PROPERTY = VALUE"],
    ["S1", '"S1" supposes nothing.'],
    ["S3.count = 4", "There is no item, run or part S3. Did you mean S1?"],
    ["S1.count = 4; S1.count = 5", "S1.count is supposed twice."],
    ["site.lowest-temperature = -15", "needs its unit"],
  ])("%s", (text, message) => expect(refused(text)).toContain(message));
  test("a semicolon inside quotation marks belongs to the text", () => {
    const wanted = supposed(new TestWorkspace(files).view, uri, 'site.note = "a; b"; S1.count = 9');
    expect(typeof wanted === "string" ? wanted : wanted.texts).toEqual([
      'site.note = "a; b" (not stated)',
      "S1.count = 9 (written: 8)",
    ]);
  });
});
