import { describe, expect, it } from "vitest";
import type { IsolateAnswer } from "../../language-server/src/cli/report/switching.js";
import { referenceHouse } from "../circuit/reference-house.js";
import { folderWith, type Ran, sunwright, sunwrightHere } from "./program.js";
import { answerOf } from "./schemas.js";

const files = { "house.sun": referenceHouse };
const ordered = referenceHouse.replace(
  "galvanic-separation: no",
  "galvanic-separation: no  discharge-wait: 5 min  shutdown-order: [ac, backup, dc, battery]",
);

function isolate(text: string, ...words: string[]): Promise<Ran> {
  return sunwrightHere(["isolate", "house.sun", ...words], folderWith({ "house.sun": text }));
}
async function answer(text: string, ...words: string[]): Promise<IsolateAnswer> {
  const { out } = await isolate(text, ...words, "--format", "json");
  return answerOf<IsolateAnswer>("isolate", out);
}

describe("which devices to work inside INV, in what order?", () => {
  it("answers from the built program: the sets, the wait, what stays live, what parts the rest", () => {
    const { code, out, err } = sunwright(["isolate", "house.sun", "INV"], { folder: folderWith(files) });
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toContain("Open Q1, Q2, Q3 and Q4: INV is dead, if it is wired as written. Prove it dead.\n");
    expect(out).toContain("  Q1, Q2, Q3 and OLD.Q5\n  Q1, Q2, Q3 and OLD.Q6\n");
    expect(out).toContain(
      "  Q1.in, from A in any light\n  Q2.in, from B in any light\n  Q3.in, from BAT\n  Q4.out, from GRID\n",
    );
    expect(out).toMatch(/open these as well\n {2}NEW\.Q7\n/);
    expect(out).toContain("Prove dead at the point of work");
  });
  it("never invents an order or a wait: it names the properties that are missing", async () => {
    const { out } = await isolate(referenceHouse, "INV");
    expect(out).toContain("Order: shutdown-order of INV is not stated. Take it from its maker's shutdown sheet.\n");
    expect(out).toContain("INV holds charge, and discharge-wait is not stated");
    const told = await answer(referenceHouse, "INV");
    expect(told.order).toEqual([{ inverter: "INV", text: expect.stringContaining("not stated") }]);
    expect(told.waits).toEqual([{ inverter: "INV", text: expect.stringContaining("not stated") }]);
  });
  it("takes the order from the maker's sheet, with the nearest devices of each side", async () => {
    const { out } = await isolate(ordered, "INV");
    expect(out).toContain(
      "Order, as the maker's sheet of INV states it: ac (Q4), then backup (NEW.Q7), then dc (Q1, Q2), then battery (Q3).\n",
    );
    expect(out).toContain("Wait 5 min for the capacitors of INV.\n");
    const [order] = (await answer(ordered, "INV")).order;
    expect(order?.sides).toEqual([
      { side: "ac", devices: ["Q4"] },
      { side: "backup", devices: ["NEW.Q7"] },
      { side: "dc", devices: ["Q1", "Q2"] },
      { side: "battery", devices: ["Q3"] },
    ]);
    expect((await answer(ordered, "U1")).order[0]?.text).toContain("ac (Q4)");
  });
});

describe("sunwright isolate", () => {
  it("gives sets as names, and what stays live whatever is opened", async () => {
    const told = await answer(referenceHouse, "Q2");
    expect(told.sets).toContainEqual(["Q1", "Q2", "Q3", "Q4"]);
    expect(told.complete).toBe(true);
    expect(told.staysLive).toEqual([{ terminal: "Q2.in", source: "B", text: "B in any light" }]);
  });
  it("names devices near it that do not count, and why, and not those elsewhere", async () => {
    const { out } = await isolate(referenceHouse, "SHOWER");
    expect(out).toMatch(/Does not count\n( {2}.*\n)* {2}OLD\.RCD2\.K3: it opens 1 of 2 live conductors\n/);
    expect((await answer(referenceHouse, "FREEZER")).notCounted).toEqual([]);
  });
  it("has exit code 1 where some of it stays live whatever is opened, and names the source and why", async () => {
    const text = referenceHouse
      .replace("isolator Q4 is AcSwitch", "isolator Q4 is AcSwitch { poles: 1 }")
      .replace("isolator Q6 is MainSwitch", "isolator Q6 is MainSwitch { poles: 1 }")
      .replace("rcbo Q5 is Rcbo40 serves INV", "rcbo Q5 is Rcbo40 serves INV { poles: 1 }");
    const { code, out } = await isolate(text, "INV");
    expect(code).toBe(1);
    expect(out).toContain("nothing reaches INV but what is named as still live");
    expect(out).toContain("  INV.ac, from GRID\n");
    for (const device of ["Q4", "OLD.Q5", "OLD.Q6"])
      expect(out).toContain(`  ${device}: it opens 1 of 2 live conductors\n`);
  });
  it("looks at a run as well", async () => {
    const { out } = await isolate(referenceHouse, "W5");
    expect(out).toContain("Open Q1, Q2, Q3 and Q4: W5 is dead, if it is wired as written. Prove it dead.\n");
  });
  it("has exit code 1 where the text has errors, and calls nothing dead without saying so", async () => {
    const { code, out } = await isolate(referenceHouse.replace("from Q2 to INV.pv2", "from Q2 to INV.pv9"), "INV");
    expect(code).toBe(1);
    expect(out).toContain("The text has errors.");
  });
  it("takes a hypothesis", async () => {
    const { out } = await isolate(referenceHouse, "INV", "--set", "Q4.poles=1");
    expect(out).toContain("What if Q4.poles = 1 (written: 2). No file says so.");
    expect(out).toContain("Open Q1, Q2, Q3 and OLD.Q5: INV is dead");
  });
});

describe("what cannot be answered", () => {
  it.each([
    [["isolate"], "isolate needs a file and an item or run in it: isolate FILE INV."],
    [["isolate", "house.sun"], "isolate needs a file and an item or run in it: isolate FILE INV."],
    [["isolate", "house.sun", "INW"], "house.sun: There is no item, run or part INW. Did you mean INV?"],
    [["isolate", "house.sun", "Hybrid5.pv1"], "house.sun: Hybrid5.pv1 is on a part's sheet. Name an item or a run."],
    [["isolate", "house.sun", "INV", "--set", "INV.x=1"], "--set INV.x = 1: INV (inverter) has no property x."],
  ])("%j", async (words, message) => {
    const { code, out, err } = await sunwrightHere(words, folderWith(files));
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toContain(message);
  });
});
