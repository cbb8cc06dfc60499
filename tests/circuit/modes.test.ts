import { describe, expect, test } from "vitest";
import { isolate } from "../../language-server/src/circuit/cuts.js";
import { traceLive } from "../../language-server/src/circuit/live.js";
import type { Mode } from "../../language-server/src/circuit/modes.js";
import { polesOf } from "../../language-server/src/circuit/poles.js";
import { ids, type Wired, wired } from "./from-text.js";

const day: Mode = { light: "day", supply: "grid" };
const island: Mode = { light: "day", supply: "island" };
const cable = "part Lead is cable {}\npart Panel is module {}\n";

function sources(house: Wired, terminal: string, mode: Mode, open: readonly string[] = []): string[] {
  const { arrivals } = traceLive(house.circuit, { ...mode, open: new Set(open.map((name) => house.item(name))) });
  return (arrivals.get(house.terminal(terminal)) ?? [])
    .filter(({ through }) => through !== "stored")
    .map(
      ({ source, mayReturn, untilDisconnects }) => `${source.id}${mayReturn ? "?" : ""}${untilDisconnects ? "…" : ""}`,
    );
}
function whyNot(house: Wired, ...open: string[]): string[] {
  const { ineffective } = traceLive(house.circuit, { ...day, open: new Set(open.map((name) => house.item(name))) });
  return ineffective.map(({ device, why, missing }) => [device.id, why, missing].filter(Boolean).join(": "));
}

describe("a changeover", () => {
  const house = wired(`${cable}
supply GRID { phases: 1 }
inverter INV { battery {} ac {} backup {} }
battery BAT {}
changeover CHG { poles: 2  operation: automatic  off-position: no }
board CU { breaker MAINS { poles: 2 }  way 1: breaker K1 serves "sockets" { poles: 2 } }
run W1 from GRID to CHG.grid: 1 m of Lead
run W2 from INV.backup to CHG.backup: 1 m of Lead
run W3 from CHG.out to CU: 1 m of Lead
run W4 from GRID to INV.ac: 1 m of Lead
run W5 from BAT to INV.battery: 1 m of Lead`);

  test("feeds the board from the grid, and in an island from the backup port", () => {
    expect(sources(house, "CU.bar", day)).toEqual(["GRID", "BAT…"]);
    expect(sources(house, "CU.bar", island)).toEqual(["BAT"]);
  });
  test("never lets one side through to the other", () => {
    expect(sources(house, "CHG.grid", island)).toEqual(["GRID?"]);
    expect(sources(house, "GRID.out", island)).toEqual(["GRID?"]);
  });
  test("isolates nothing where it has no off position, and where that is not stated", () => {
    expect(whyNot(house, "CHG")).toEqual(["CHG: it has no position in which nothing is joined"]);
    const unsaid = wired(`${cable}changeover CHG { poles: 2 }`);
    expect(whyNot(unsaid, "CHG")).toEqual(["CHG: it is not said to have an off position: off-position"]);
    const withOff = wired(`${cable}changeover CHG { poles: 2  off-position: yes }`);
    expect(whyNot(withOff, "CHG")).toEqual([]);
  });
});

describe("a grid port", () => {
  test("follows a backup port in an island, and stops with it", () => {
    const house = wired(`${cable}
inverter INV { battery {} backup {} }
inverter OLD { tracker pv1 {} ac {} }
battery BAT {}
string S1 is 8 x Panel
isolator Q7 { poles: 2 }
run W1 from BAT to INV.battery: 1 m of Lead
run W2 from INV.backup to Q7: 1 m of Lead
run W3 from Q7 to OLD.ac: 1 m of Lead
run W4 from S1 to OLD.pv1: 1 m of Lead`);
    expect(sources(house, "INV.backup", island)).toEqual(["BAT", "S1…"]);
    expect(sources(house, "OLD.pv1", island)).toEqual(["BAT", "S1"]);
  });
  test("stays silent in an island where nothing stands in for the grid", () => {
    const house = wired(`${cable}
inverter OLD { tracker pv1 {} ac {} }
string S1 is 8 x Panel
supply GRID { phases: 1 }
run W3 from GRID to OLD.ac: 1 m of Lead
run W4 from S1 to OLD.pv1: 1 m of Lead`);
    expect(sources(house, "OLD.ac", day)).toEqual(["S1…", "GRID"]);
    expect(sources(house, "OLD.ac", island)).toEqual(["GRID?"]);
    expect(sources(house, "OLD.ac", { light: "night", supply: "island" })).toEqual(["GRID?"]);
  });
});

describe("a generating unit", () => {
  const text = (facts: string): string => `${cable}
supply GRID { phases: 1 }
generator OLD { energy-source: sun ${facts} }
run W1 from GRID to OLD: 1 m of Lead`;
  test("feeds by day beside the grid until it disconnects", () => {
    const house = wired(text(""));
    expect(sources(house, "GRID.out", day)).toEqual(["GRID", "OLD…"]);
    expect(sources(house, "GRID.out", { light: "night", supply: "grid" })).toEqual(["GRID"]);
    expect(sources(house, "GRID.out", island)).toEqual(["GRID?"]);
  });
  test("feeds without the grid where its sheet says so", () => {
    expect(sources(wired(text("runs-without-grid: yes")), "GRID.out", island)).toEqual(["GRID?", "OLD"]);
  });
});

describe("devices that are not counted on", () => {
  const text = (phases: number, device: string): Wired =>
    wired(`${cable}
supply GRID { phases: ${phases} }
${device}
load SHED {}
run W1 from GRID to D: 1 m of Lead
run W2 from D to SHED: 1 m of Lead`);

  test.each([
    [1, "isolator D { poles: 2 }", undefined],
    [1, "isolator D { poles: 1 }", "it opens 1 of 2 live conductors"],
    [1, "isolator D { poles: 1  switched-neutral: yes }", undefined],
    [1, "isolator D {}", "its number of poles is not stated: poles"],
    [1, "isolator D { poles: 2  opens-all-poles-together: no }", "its poles do not open together"],
    [1, "breaker D { poles: 2  suitable-for-isolation: no }", "its maker does not mark it as suitable for isolation"],
    [3, "isolator D { poles: 3 }", "it opens 3 of 4 live conductors"],
    [3, "isolator D { poles: 3  switched-neutral: yes }", undefined],
    [3, "isolator D { poles: 4 }", undefined],
    [3, "isolator D { poles: 2 }", undefined],
    [3, "isolator D { poles: 2  phases: 3 }", "it opens 2 of 4 live conductors"],
    [3, "isolator D { poles: 1  phase: L2 }", "it opens 1 of 2 live conductors"],
  ])("%i phases, %s", (phases, device, why) => {
    const house = text(phases, device);
    expect(whyNot(house, "D")).toEqual(why ? [`D: ${why}`] : []);
    expect(sources(house, "SHED.in", day, ["D"])).toEqual(why ? ["GRID"] : []);
    expect(isolate(house.circuit, house.item("SHED")).notCounted).toHaveLength(why ? 1 : 0);
  });

  test("things without anything to open", () => {
    const house = text(1, "meter D {}");
    expect(whyNot(house, "D", "SHED")).toEqual(["D: a meter has nothing to open", "SHED: a load has nothing to open"]);
  });

  test("d.c. wants both poles", () => {
    const house = wired(`${cable}string S1 is 3 x Panel\nisolator D { poles: 1 }\nrun W1 from S1 to D: 1 m of Lead`);
    expect(whyNot(house, "D")).toEqual(["D: it opens 1 of 2 live conductors"]);
    expect(polesOf(house.item("D"), "dc")).toEqual({ opened: 1, needed: 2 });
  });
});

describe("what is built in", () => {
  test("a battery's own switch leaves its cells live and its terminals dead", () => {
    const house = wired(`${cable}
battery BAT { built-in-isolator: yes }
inverter INV { battery {} }
run W1 from BAT to INV.battery: 1 m of Lead`);
    expect(sources(house, "BAT.out", day, ["BAT"])).toEqual([]);
    expect(sources(house, "BAT.cells", day, ["BAT"])).toEqual(["BAT"]);
    expect(isolate(house.circuit, house.item("INV")).cuts.map(ids)).toEqual([["BAT"]]);
  });
  test("a breaker nested in a battery lies between cells and terminals", () => {
    const house = wired(`${cable}
part Hearth is battery { breaker F { poles: 2  supply: dc } }
battery BAT is 2 x Hearth
inverter INV { battery {} }
run W1 from BAT to INV.battery: 1 m of Lead`);
    expect(sources(house, "INV.battery", day, ["BAT.F"])).toEqual([]);
  });
  test("a battery whose terminals nothing parts from its cells: the set keeps the others off", () => {
    const house = wired(`${cable}
battery BAT {}
supply GRID { phases: 1 }
isolator Q3 { poles: 2 }
inverter INV { battery {} ac {} }
run W1 from BAT to Q3: 1 m of Lead
run W2 from Q3 to INV.battery: 1 m of Lead
run W3 from GRID to INV.ac: 1 m of Lead`);
    const { cuts, staysLive } = isolate(house.circuit, house.item("BAT"));
    expect(cuts.map(ids)).toEqual([["Q3"]]);
    expect(staysLive.map(({ terminal, arrival }) => [terminal.id, arrival.source.id])).toEqual([["BAT.out", "BAT"]]);
  });
  test("an inverter's own d.c. isolator parts its inside from the strings, not its terminals", () => {
    const house = wired(`${cable}
string S1 is 3 x Panel
supply GRID { phases: 1 }
inverter INV { built-in-dc-isolator: yes  tracker pv1 {} ac {} }
run W1 from S1 to INV.pv1: 1 m of Lead
run W2 from GRID to INV.ac: 1 m of Lead`);
    expect(sources(house, "INV.ac", day, ["INV"])).toEqual(["GRID"]);
    expect(sources(house, "INV.pv1", day, ["INV"])).toEqual(["S1"]);
    expect(isolate(house.circuit, house.item("INV")).staysLive.map(({ terminal }) => terminal.id)).toContain("INV.pv1");
  });
  test("a fuse is no isolator, unless its carrier is drawn out as one", () => {
    const text = (fact: string): Wired =>
      wired(`${cable}battery BAT {}\nfuse F { ${fact} }\nload L {}
run W1 from BAT to F: 1 m of Lead\nrun W2 from F to L: 1 m of Lead`);
    const fixed = text("");
    expect(isolate(fixed.circuit, fixed.item("L")).staysLive.map(({ arrival }) => arrival.source.id)).toEqual(["BAT"]);
    const drawn = text("draws-out: yes");
    expect(isolate(drawn.circuit, drawn.item("L")).cuts.map(ids)).toEqual([["F"]]);
  });
});
