import { describe, expect, test } from "vitest";
import { isolationReport } from "../../language-server/src/isolation/isolation-report.js";
import { type LiveRequest, liveReport } from "../../language-server/src/isolation/live-report.js";
import { house } from "./house.js";

/**
 * Questions 1, 2, 3, 17 and 18 on the reference house, asked of what the command line and the editor print. The expected
 * answers follow from the house as it is written: which conductors join what, and what the inverter passes on.
 */
const reference = house();

/** What is said of the place that a terminal, an item or a run belongs to; nothing where it is dead. */
function live(at: string, open: readonly string[], mode: Partial<LiveRequest> = {}): readonly string[] {
  const report = liveReport(reference.assessment, { ...mode, open: open.map((name) => reference.item(name)) });
  if (report.dead.includes(at)) return [];
  const place = report.places.find(({ where }) => where.includes(at));
  if (!place) throw new Error(`nothing is said of ${at}`);
  return place.arrivals.map(({ text }) => text);
}

describe("1: what stays live if I open Q2?", () => {
  test("the cable of B from the roof to Q2, up to 256.1 V in the cold", () => {
    expect(live("Q2.in", ["Q2"])).toEqual(["B in any light (up to 256.1 V)"]);
    expect(live("W4", ["Q2"])).toEqual(["B in any light (up to 256.1 V)"]);
  });
  test("which is dead at night and at no other time", () => {
    expect(live("W4", ["Q2"], { light: "night" })).toEqual([]);
    expect(live("W4", ["Q2"], { light: "day", supply: "island" })).toEqual(["B in any light (up to 256.1 V)"]);
  });
  test("the side towards INV is to be treated as live: grid, A, BAT and charge reach it through INV", () => {
    expect(live("Q2.out", ["Q2"])).toEqual([
      "GRID through INV (with the grid)",
      "A in any light through INV",
      "BAT through INV",
      "charge in the capacitors of INV (discharge-wait not stated: its maker's sheet says how long)",
    ]);
  });
  test("in each mode what that mode leaves: no grid in an island, no string at night", () => {
    const sources = (mode: Partial<LiveRequest>) =>
      live("Q2.out", ["Q2"], mode).map((text) => text.replace(/ .*/, "").replace("charge", "INV"));
    expect(sources({ light: "day", supply: "grid" })).toEqual(["GRID", "A", "BAT", "INV"]);
    expect(sources({ light: "night", supply: "grid" })).toEqual(["GRID", "BAT", "INV"]);
    expect(sources({ light: "day", supply: "island" })).toEqual(["A", "BAT", "INV"]);
    expect(sources({ light: "night", supply: "island" })).toEqual(["BAT", "INV"]);
  });
});

describe("2: which devices to work inside INV, in what order?", () => {
  const report = isolationReport(reference.assessment, reference.item("INV"));
  test("Q1, Q2, Q3 and Q4; in place of Q4 the way Q5 or the main switch; Q7 besides", () => {
    expect(report.sets).toEqual([
      ["Q1", "Q2", "Q3", "Q4"],
      ["Q1", "Q2", "Q3", "OLD.Q5"],
      ["Q1", "Q2", "Q3", "OLD.Q6"],
    ]);
    expect(report.besides).toEqual(["NEW.Q7"]);
    expect(report.complete).toBe(true);
  });
  test("the order is the maker's and nobody's else: not stated, so none is given", () => {
    expect(report.order).toEqual([
      {
        inverter: "INV",
        text: "Order: shutdown-order of INV is not stated. Take it from its maker's shutdown sheet.",
      },
    ]);
    const stated = house((text) =>
      text.replace("galvanic-separation: no", "galvanic-separation: no  shutdown-order: [ac, backup, dc, battery]"),
    );
    expect(isolationReport(stated.assessment, stated.item("INV")).order[0]?.sides).toEqual([
      { side: "ac", devices: ["Q4"] },
      { side: "backup", devices: ["NEW.Q7"] },
      { side: "dc", devices: ["Q1", "Q2"] },
      { side: "battery", devices: ["Q3"] },
    ]);
  });
  test("then wait, for as long as the maker's sheet says", () => {
    expect(report.waits).toEqual([
      {
        inverter: "INV",
        text: "INV holds charge, and discharge-wait is not stated: see its maker's sheet before touching anything.",
      },
    ]);
  });
  test("then prove it dead; the roof cables and the terminals of BAT stay live", () => {
    expect(report.open).toBe("Open Q1, Q2, Q3 and Q4: INV is dead, if it is wired as written. Prove it dead.");
    expect(report.stillLive).toEqual([
      "Q1.in, from A in any light",
      "Q2.in, from B in any light",
      "Q3.in, from BAT",
      "Q4.out, from GRID",
    ]);
  });
});

describe("3: main switch Q6 off: what is live?", () => {
  test("its supply side", () => {
    expect(live("W14", ["Q6"])).toEqual(["GRID (with the grid; in an island it is dead and may return at any time)"]);
  });
  test("the old bar, through Q5, until INV disconnects", () => {
    expect(live("OLD.bar", ["Q6"])).toEqual([
      "A in any light through INV, until INV disconnects (with the grid)",
      "B in any light through INV, until INV disconnects (with the grid)",
      "BAT through INV, until INV disconnects (with the grid)",
    ]);
  });
  test("the backup board, in every mode", () => {
    const through = ["A in any light through INV", "B in any light through INV", "BAT through INV"];
    expect(live("NEW.bar", ["Q6"])).toEqual(through);
    expect(live("NEW.in", ["Q6"])).toEqual([...through, expect.stringContaining("charge in the capacitors of INV")]);
  });
  test("all of the d.c. side", () => {
    for (const at of ["W1", "W4", "W7"]) expect(live(at, ["Q6"]).length, at).toBeGreaterThan(0);
  });
  test("so the label at the board says that there is more than one supply", () => {
    const board = house((text) =>
      text.replace("    existing: yes\n    rated", "    existing: yes  labels: []\n    rated"),
    );
    expect(board.found("label-missing", "OLD")[0]).toContain("multiple-supplies");
  });
});

describe("17: do I need an earth electrode, and where is neutral tied to earth?", () => {
  test("in an island the supplier's earth does not count: E2 does, and is good enough", () => {
    expect(reference.passed("backup-earth", "INV")).toEqual({ E2: "48 Ω / 200 Ω", "a test point at E2": "holds" });
    const without = house((text) => text.replace(/^electrode .*$/m, "").replace("  electrode: E2", ""));
    expect(without.found("backup-earth", "INV")).toEqual([
      "Without the grid, what INV feeds relies on the earth of GRID (TN-C-S): no electrode of its own is declared for it.",
    ]);
  });
  test("exactly one link in each mode: the supplier's with the grid, K1 without", () => {
    expect(reference.passed("neutral-earth-link", "GRID")).toEqual({
      "the supplier's (GRID), with the grid": "holds",
    });
    expect(reference.passed("neutral-earth-link", "INV")).toEqual({ "K1, without the grid": "holds" });
    expect(house((text) => text.replace(/^link .*$/m, "")).found("neutral-earth-link", "INV")).toHaveLength(1);
    expect(
      house((text) => text.replace("closed-in: island", "closed-in: both")).found("neutral-earth-link", "GRID"),
    ).toHaveLength(1);
  });
});

describe("18: what runs in a power cut?", () => {
  const [plant] = reference.assessment.plants;
  test("the ways of the backup board behind Q7, and nothing on the old board", () => {
    expect(plant?.inverters[0]?.backup?.circuits.map(({ device }) => device.id)).toEqual(["NEW.K4", "NEW.K5"]);
    expect(live("FREEZER", [], { light: "night", supply: "island" })).toEqual(["BAT through INV"]);
    // The supply may come back while somebody works there.
    expect(live("SHOWER", [], { light: "night", supply: "island" })).toEqual([
      "GRID, dead now, may return at any time",
    ]);
    expect(live("FREEZER", ["Q7"], { supply: "island" })).toEqual([]);
  });
  test("up to 5 kW: 0.6 kW is asked for; a shower on that board is too much", () => {
    expect(reference.passed("backup-load", "INV")).toEqual({ "declared demand": "0.6 kW / 5 kW" });
    const shower = house((text) => text.replace("rcbo K5 is Rcbo32 serves LIGHTS", "rcbo K5 is Rcbo32 serves SHOWER"));
    expect(shower.found("backup-load", "INV")[0]).toContain("7.2 kW");
  });
  test("a breaker there would not open on the 45 A that INV gives; an RCBO does, on residual current", () => {
    expect(reference.passed("disconnection", "NEW.K4")).toEqual({
      "NEW.K4 opens on residual current in an island": "holds",
    });
    const breaker = house((text) => text.replace("rcbo K4 is Rcbo32", "breaker K4 is B32"));
    expect(breaker.found("disconnection", "NEW.K4")).toEqual([
      "Without the grid INV feeds 45 A into a fault; NEW.K4 needs 160 A to open within 0.4 s, and no RCD is on the way.",
    ]);
  });
});
