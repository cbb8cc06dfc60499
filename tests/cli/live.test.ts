import { describe, expect, it } from "vitest";
import type { LiveAnswer } from "../../language-server/src/cli/report/switching.js";
import { referenceHouse } from "../circuit/reference-house.js";
import { design, parts } from "./designs.js";
import { folderWith, type Ran, sunwright, sunwrightHere } from "./program.js";
import { answerOf } from "./schemas.js";

// The questions are those of the acceptance list of the reference house; the answers there name the same parts and
// sources.
const files = { "house.sun": referenceHouse };

function live(...words: string[]): Promise<Ran> {
  return sunwrightHere(["live", "house.sun", ...words], folderWith(files));
}
async function answer(...words: string[]): Promise<LiveAnswer> {
  const { out } = await live(...words, "--format", "json");
  return answerOf<LiveAnswer>("live", out);
}
/** What reaches a terminal, in words. */
function at({ things }: LiveAnswer, terminal: string): string[] | undefined {
  const found = things.flatMap(({ terminals }) => terminals).find((each) => each.terminal === terminal);
  return found?.arrivals.map(({ text }) => text);
}

describe("what stays live if I open Q2?", () => {
  it("answers from the built program: the roof cable of B up to 256 V, and the other side through INV", () => {
    const { code, out, err } = sunwright(["live", "house.sun", "--open", "Q2"], { folder: folderWith(files) });
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toContain("What is live with Q2 open, by day and by night, with the grid and in an island\n");
    // 6 · 38.8 V · 1.10 = 256.1 V.
    expect(out).toContain("  B, Q2.in, W4\n      B in any light (up to 256.1 V)\n");
    expect(out).toContain(`  Q2.out, U2, INV.pv2, W5, W6
      GRID through INV (with the grid)
      A in any light through INV
      BAT through INV
      charge in the capacitors of INV (discharge-wait not stated: its maker's sheet says how long)
`);
    expect(out).toContain("Prove dead at the point of work");
    expect(out).toContain("if it is wired as written");
  });
  it("is told per mode, by day and by night", async () => {
    const all = await answer("--open", "Q2");
    expect(all.modes).toHaveLength(4);
    const grid = all.things
      .flatMap(({ terminals }) => terminals)
      .find(({ terminal }) => terminal === "Q2.out")
      ?.arrivals.find(({ source }) => source === "GRID");
    expect(grid?.modes).toEqual([
      { light: "day", supply: "grid" },
      { light: "night", supply: "grid" },
    ]);
    const night = await answer("--open", "Q2", "--light", "night", "--mode", "island");
    expect(night.modes).toEqual([{ light: "night", supply: "island" }]);
    expect(at(night, "Q2.in")).toEqual([]);
    expect(night.dead).toContain("B");
    expect(at(night, "Q2.out")?.[0]).toBe("BAT through INV");
  });
});

describe("a run that is joined to charged capacitors", () => {
  it("is not among what nothing reaches, nor is its other end", async () => {
    const found = await answer("--open", "Q1,Q2,Q3,Q4,Q7");
    for (const terminal of ["INV.ac", "Q4.in"])
      expect(at(found, terminal), terminal).toEqual([expect.stringContaining("charge in the capacitors of INV")]);
    expect(found.dead).not.toContain("W10");
    expect(at(found, "Q4.out")).not.toContainEqual(expect.stringContaining("charge"));
  });
});

describe("main switch Q6 off: what is live?", () => {
  it("its supply side, the old bar until INV disconnects, the backup board, all d.c.", async () => {
    const { out } = await live("--open", "Q6", "--mode", "grid", "--light", "day");
    expect(out).toContain("What is live with OLD.Q6 open, by day, with the grid\n");
    expect(out).toContain("  GRID, OLD.in, OLD.Q6.in, W14\n      GRID\n");
    expect(out).toContain("A in any light through INV, until INV disconnects");
    const told = await answer("--open", "Q6");
    expect(at(told, "NEW.bar")).toEqual([
      "A in any light through INV",
      "B in any light through INV",
      "BAT through INV",
    ]);
    expect(at(told, "OLD.bar")?.[0]).toBe("A in any light through INV, until INV disconnects (with the grid)");
    expect(at(told, "INV.pv1")?.[0]).toContain("A in any light");
  });
  it("in an island the supply is dead and may return", async () => {
    const told = await answer("--mode", "island");
    expect(at(told, "OLD.bar")).toEqual(["GRID, dead now, may return at any time"]);
    expect((await answer()).places.flatMap(({ arrivals }) => arrivals.map(({ text }) => text))).toContain(
      "GRID (with the grid; in an island it is dead and may return at any time)",
    );
  });
});

describe("what runs in a power cut, and where is neutral tied to earth?", () => {
  it("the circuits behind Q7 up to the port's power; one link in each mode, and an electrode in the island", async () => {
    const named = referenceHouse.replace("serves LIGHTS", 'serves "lights"');
    const { out } = await sunwrightHere(["live", "house.sun"], folderWith({ "house.sun": named }));
    expect(out).toContain(
      'Goes on without the grid\n  INV feeds NEW.K4 (FREEZER), NEW.K5 ("lights") (up to 5 kW); overload, or a fault that no device clears, may end it.\n',
    );
    expect(out).toContain("  With the grid: neutral is tied to earth by the supplier's link of GRID.\n");
    expect(out).toContain("  In an island: neutral is tied to earth by K1. Earth electrode: E2 (48 Ω).\n");
  });
  it("only of the modes asked about", async () => {
    const told = await answer("--mode", "grid");
    expect(told.goesOn).toEqual([]);
    expect(told.neutralEarth.map(({ supply }) => supply)).toEqual(["grid"]);
  });
  it("a fact that is missing is named, and nothing is made up", async () => {
    const unsaid = referenceHouse
      .replace("disconnects-all-poles: yes", "")
      .replace("backup {\n        rated-power: 5 kW\n", "backup {\n");
    const { out } = await sunwrightHere(["live", "house.sun"], folderWith({ "house.sun": unsaid }));
    expect(out).toContain("perhaps the supplier's link of GRID (disconnects-all-poles of INV.ac is not stated)");
    expect(out).toContain("(rated-power not stated)");
  });
});

describe("sunwright live", () => {
  it("says which open devices do not count, and traces them as closed", async () => {
    const { out } = await live("--open", "K2,F1,Q1");
    expect(out).toContain("Traced as closed all the same\n");
    expect(out).toContain("  OLD.RCD2.K2: it opens 1 of 2 live conductors\n");
    expect(out).toContain("  F1: a fuse has nothing to open\n");
    const { notCounted } = await answer("--open", "K2,F1,Q1");
    expect(notCounted.map(({ device }) => device)).toEqual(["OLD.RCD2.K2", "F1"]);
  });
  it("never calls anything safe, nor tells how to work live", async () => {
    const { out } = await live("--open", "Q1,Q2,Q3,Q4,Q7");
    expect(out).toContain("Reached by nothing: dead if wired as written\n");
    expect(out).not.toMatch(/\bsafe\b|complian|work on it live/i);
  });
  it("lists a terminal that nothing reaches as such, and leaves out what nothing is joined to", async () => {
    const told = await answer("--open", "Q7");
    expect(at(told, "NEW.bar")).toEqual([]);
    expect(at(told, "U1.out")).toBeUndefined();
    expect(told.dead).toContain("FREEZER");
  });
  it("takes a hypothesis, and says that no file says so", async () => {
    const { out } = await live("--open", "Q1", "--set", "Q1.poles=1");
    expect(out).toContain("  What if Q1.poles = 1 (written: 2). No file says so.\n");
    expect(out).toContain("  Q1: it opens 1 of 2 live conductors\n");
    expect((await answer("--open", "Q1", "--set", "Q1.poles=1")).whatIf).toHaveLength(1);
  });
  it("calls nothing dead where the text has errors", async () => {
    const broken = { "house.sun": referenceHouse.replace("run W5 from Q2 to INV.pv2", "run W5 from Q2 to INV.pv9") };
    const folder = folderWith(broken);
    const { code, out } = await sunwrightHere(["live", "house.sun", "--open", "Q7"], folder);
    expect(code).toBe(1);
    expect(out).toContain("The text has errors.");
    expect(out).toContain("Reached by nothing in what could be read\n");
    expect(out).not.toContain("dead if wired as written");
    const { out: json } = await sunwrightHere(["live", "house.sun", "--format", "json"], folder);
    expect(answerOf<LiveAnswer>("live", json).incomplete).toBe(true);
  });
});

it("says where it traced changeovers", async () => {
  const backed = `supply GRID { phases: 1 }
inverter INV { battery {} backup {} }
battery BAT {}
changeover CHG { poles: 2 }
board CU { way 1: breaker K1 serves "sockets" { poles: 2 } }
part Lead is cable {}
run W1 from GRID to CHG.grid: 1 m of Lead
run W2 from INV.backup to CHG.backup: 1 m of Lead
run W3 from CHG.out to CU: 1 m of Lead
run W5 from BAT to INV.battery: 1 m of Lead
`;
  const { out } = await sunwrightHere(["live", "house.sun"], folderWith({ "house.sun": backed }));
  expect(out).toContain("Traced with CHG on the grid side with the grid, and on the backup side in an island.");
});

describe("what cannot be answered", () => {
  it.each([
    [["live"], "live needs a file: live FILE --open Q1,Q3."],
    [["live", "house.sun", "--open", "Q9"], "house.sun: There is no item, run or part Q9. Did you mean Q1?"],
    [["live", "house.sun", "--open", "W1"], "house.sun: W1 is a run and cannot be opened. Name a device."],
    [["live", "house.sun", "--open", "Rotary"], "house.sun: Rotary is on a part's sheet. Name an item or a run."],
    [["live", "house.sun", "--open", "Q1.in"], "house.sun: Q1.in is a terminal of Q1. Name the item."],
    [["live", "house.sun", "--mode", "sea"], "--mode cannot be sea. It is one of grid, island."],
    [["live", "house.sun", "--light", "dusk"], "--light cannot be dusk. It is one of day, night."],
    [["live", "house.sun", "--format", "xml"], "--format cannot be xml. It is one of text, json."],
    [["live", "house.sun", "spare"], "Unused args: `spare`. See sunwright live --help."],
    [["live", "parts.sun"], "There is no design in parts.sun, only parts."],
    [["live", "."], "live looks at one design. There are barn.sun, house.sun."],
    [["live", "gone.sun"], "gone.sun does not exist. Look at its spelling, and at the folder you are in."],
  ])("%j", async (words, message) => {
    const folder = folderWith({ ...files, "barn.sun": design(10), "parts.sun": parts });
    expect(await sunwrightHere(words, folder)).toEqual({ code: 2, out: "", err: `${message}\n` });
  });
});
