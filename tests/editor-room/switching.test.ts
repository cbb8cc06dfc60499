import { describe, expect, test } from "vitest";
import { hoverAt } from "../../language-server/src/editor/hover/hover.js";
import { type Answer, isolationAnswer, liveAnswer } from "../../language-server/src/editor/switching/answer.js";
import { designChoices, thingAt } from "../../language-server/src/editor/switching/choices.js";
import { supposed } from "../../language-server/src/editor/what-if/suppose.js";
import { referenceHouse } from "../circuit/reference-house.js";
import { TestWorkspace, uriOf } from "./workspace.js";

const uri = uriOf("house.sun");
const workspace = new TestWorkspace({ "house.sun": referenceHouse });
const { view } = workspace;

function page(answer: Answer): string {
  if ("refused" in answer) throw new Error(answer.refused);
  return answer.markdown;
}
function hover(marked: string, text = referenceHouse): string {
  const inside = marked.indexOf("|");
  const own = new TestWorkspace({ "house.sun": text });
  const at = text.indexOf(marked.replace("|", "")) + inside;
  return hoverAt(own.view, uri, at, { to: () => undefined })?.markdown ?? "";
}

describe("what stays live", () => {
  test("is a page: places by what reaches them, then what nothing reaches, then cautions", () => {
    const text = page(liveAnswer(view, uri, ["Q2"], {}));
    expect(text).toMatch(
      /^# What is live with Q2 open, by day and by night, with the grid and in an island\n\nReference house\n/,
    );
    expect(text).toContain("- **B, Q2.in, W4**\n  - B in any light (up to 256.1 V)\n");
    expect(text).toContain("  - BAT through INV\n");
    expect(text).toMatch(/## Mind\n\n(- .*\n)*- Prove dead at the point of work/);
  });
  test("in one mode", () => {
    const text = page(liveAnswer(view, uri, ["OLD.Q6", "K2"], { light: "night", supply: "island" }));
    expect(text).toMatch(/^# What is live with OLD\.Q6, OLD\.RCD2\.K2 open, by night, in an island\n/);
    expect(text).toContain("## Reached by nothing: dead if wired as written");
    expect(text).toContain("## Traced as closed all the same\n\n- OLD.RCD2.K2: it opens 1 of 2 live conductors");
  });
  test("names that are none are refused in words", () => {
    expect(liveAnswer(view, uri, ["Q9"], {})).toEqual({
      refused: "There is no item, run or part Q9. Did you mean Q1?",
    });
    expect(liveAnswer(view, uri, ["W1"], {})).toEqual({ refused: "W1 is a run and cannot be opened. Name a device." });
  });
  test("what is supposed stands at its head", () => {
    const own = new TestWorkspace({ "house.sun": referenceHouse });
    const wanted = supposed(own.view, uri, "Q1.poles = 1");
    if (typeof wanted === "string") throw new Error(wanted);
    own.view.suppose(wanted.entries, wanted.overlay);
    const text = page(liveAnswer(own.view, uri, ["Q1"], {}));
    expect(text).toContain("> What if Q1.poles = 1 (written: 2). No file says so.");
    expect(text).toContain("- Q1: it opens 1 of 2 live conductors");
  });
  test("nothing is called dead while the text has errors", () => {
    const broken = new TestWorkspace({ "house.sun": referenceHouse.replace("to INV.pv2", "to INV.pv9") });
    const text = page(liveAnswer(broken.view, uri, ["Q7"], {}));
    expect(text).toContain("> The text has errors.");
    expect(text).not.toContain("dead if wired as written");
  });
});

describe("how to isolate", () => {
  test("is a page: the set, others, order, wait, what stays live", () => {
    const text = page(isolationAnswer(view, uri, "INV"));
    expect(text).toContain("# How to isolate INV\n");
    expect(text).toContain("**Open Q1, Q2, Q3 and Q4: INV is dead, if it is wired as written. Prove it dead.**");
    expect(text).toContain("Order: shutdown-order of INV is not stated. Take it from its maker's shutdown sheet.");
    expect(text).toContain("## Open instead, for the same\n\n- Q1, Q2, Q3 and OLD.Q5\n");
    expect(text).toContain("## Stays live\n\n- Q1.in, from A in any light\n");
    expect(text).toContain("open these as well\n\n- NEW.Q7\n");
  });
  test("names that are none are refused in words", () => {
    expect(isolationAnswer(view, uri, "Hybrid5")).toEqual({
      refused: "Hybrid5 is on a part's sheet. Name an item or a run.",
    });
  });
});

describe("what may be chosen", () => {
  const [design] = designChoices(view, uri);
  test("devices that count first, then those that do not", () => {
    const ids = design?.devices.map(({ id }) => id) ?? [];
    expect(ids.slice(0, 4)).toEqual(["Q1", "Q2", "Q3", "Q4"]);
    expect(design?.devices.find(({ id }) => id === "OLD.RCD2.K2")?.detail).toContain("does not count as isolation");
    expect(ids.indexOf("OLD.RCD2.K2")).toBeGreaterThan(ids.indexOf("OLD.Q6"));
    expect(ids).not.toContain("INV");
  });
  test("things with a terminal, and runs; what stands at the cursor", () => {
    const ids = design?.things.map(({ id }) => id) ?? [];
    expect(ids).toEqual(expect.arrayContaining(["A", "INV", "INV.pv1", "OLD", "OLD.RCD2.K3", "W1"]));
    expect(ids).not.toContain("site");
    expect(thingAt(view, uri, referenceHouse.indexOf("inverter INV") + 10)).toBe("INV");
    expect(thingAt(view, uri, referenceHouse.indexOf("inverter INV") + 2)).toBe("INV");
    expect(thingAt(view, uri, referenceHouse.indexOf("to INV.pv1") + 8)).toBe("INV.pv1");
    expect(thingAt(view, uri, referenceHouse.indexOf("run W4") + 5)).toBe("W4");
    expect(thingAt(view, uri, referenceHouse.indexOf("rules: gb"))).toBeUndefined();
  });
  test("a file of parts has the designs that use it", () => {
    const own = new TestWorkspace({
      "house.sun": `use "more.sun"\n${referenceHouse}`,
      "more.sun": "part X is cable {}\n",
    });
    expect(designChoices(own.view, uriOf("more.sun")).map(({ entry, title }) => [entry, title])).toEqual([
      [uri, "Reference house"],
    ]);
  });
});

describe("a hover on a thing", () => {
  test("says what makes it dead, and what stays live", () => {
    expect(hover("inverter IN|V")).toContain(
      `Open Q1, Q2, Q3 and Q4: INV is dead, if it is wired as written. Prove it dead.

Stays live:
- Q1.in, from A in any light
- Q2.in, from B in any light
- Q3.in, from BAT
- Q4.out, from GRID
`,
    );
    expect(hover("run W|5")).toContain("Open Q1, Q2, Q3 and Q4: W5 is dead");
    expect(hover("string |A is")).toContain(
      "Open Q1: nothing reaches A but what is named as still live, if it is wired as written. Prove the rest dead.\n\nStays live:\n- A.out, from A in any light\n",
    );
  });
  test("says nothing of what has no terminal, and does not guess while the text has errors", () => {
    expect(hover('si|te "Reference')).not.toContain("dead");
    expect(hover("inverter IN|V", referenceHouse.replace("to INV.pv2", "to INV.pv9"))).toContain(
      "What makes INV dead is not worked out while the text has errors.",
    );
  });
});
