import { describe, expect, test } from "vitest";
import { itemsOn, openingOn, pathBetween, protectionOn, runsOn } from "../../language-server/src/circuit/feed.js";
import type { Plant } from "../../language-server/src/circuit/plant.js";
import { plants } from "../../language-server/src/circuit/plants.js";
import { ids, type Wired, wired } from "./from-text.js";
import { referenceHouse } from "./reference-house.js";

const house = wired(referenceHouse);
const only = (wiredHouse: Wired): Plant => {
  const all = plants(wiredHouse.design, wiredHouse.circuit);
  expect(all).toHaveLength(1);
  return all[0]!;
};

describe("the plant of the reference house", () => {
  const plant = only(house);
  const [old, backup] = plant.boards;

  test("is named by its supply and holds everything once", () => {
    expect(plant.id).toBe("GRID");
    expect(ids(plant.boards.map(({ item }) => item))).toEqual(["OLD", "NEW"]);
    expect(ids(plant.inverters.map(({ inverter }) => inverter))).toEqual(["INV"]);
    expect(ids(plant.meters)).toEqual(["M1"]);
    expect(plant.earthing).toBe(house.item("earthing"));
    expect(plant.lines.map(({ run }) => run.id).sort()).toEqual(["W10", "W11", "W12", "W13", "W14"]);
  });
  test("the old board: main switch, RCD section, ways with what they feed", () => {
    expect(ids(old?.mainSwitches ?? [])).toEqual(["OLD.Q6"]);
    expect(ids(old?.rcds ?? [])).toEqual(["OLD.RCD2"]);
    expect(
      old?.circuits.map(({ way, device, rcds, serves, servesText }) => [
        way,
        device.name,
        ids(rcds).join(),
        serves?.id ?? servesText,
      ]),
    ).toEqual([
      [1, "K2", "OLD.RCD2", "kitchen sockets"],
      [2, "K3", "OLD.RCD2", "SHOWER"],
      [8, "Q5", "", "INV"],
    ]);
    const solar = old?.circuits[2]?.beyond;
    expect(ids(solar?.gridPorts ?? [])).toEqual(["INV.ac"]);
    expect(ids(solar?.runs ?? [])).toEqual(["W12", "W11", "W10"]);
    expect(ids(solar?.devices ?? [])).toEqual(["M1", "Q4"]);
    expect(solar?.loads).toEqual([]);
  });
  test("who feeds each board, and by which way", () => {
    const [feed] = old?.feeds ?? [];
    expect(feed).toMatchObject({ mode: "grid", source: house.item("GRID") });
    expect(feed && ids(runsOn(feed.path))).toEqual(["W14"]);
    expect(feed && ids(openingOn(feed.path))).toEqual(["OLD.Q6"]);
    expect(backup?.feeds.map(({ source, mode, root }) => [source.id, mode, root.id])).toEqual([
      ["INV", "both", "INV.backup"],
    ]);
  });
  test("the inverter's way to the supply, the way it lands on, and the isolators before it", () => {
    const grid = plant.inverters[0]?.grid;
    expect(grid?.circuit?.device).toBe(house.item("Q5"));
    expect(ids(grid?.isolators ?? [])).toEqual(["Q4"]);
    expect(grid?.toSupply && ids(runsOn(grid.toSupply))).toEqual(["W10", "W11", "W12", "W14"]);
    expect(grid?.toSupply && ids(itemsOn(grid.toSupply))).toEqual(["Q4", "M1", "OLD.Q5", "OLD", "OLD.Q6"]);
  });
  test("the battery's way from its cells, with what protects and what isolates", () => {
    const [battery] = plant.batteries;
    expect(battery?.path && ids(runsOn(battery.path))).toEqual(["W7", "W8", "W9"]);
    expect(ids(battery?.protection ?? [])).toEqual(["F1"]);
    expect(ids(battery?.isolators ?? [])).toEqual(["Q3"]);
    expect(plant.inverters[0]?.storage?.batteries).toEqual([house.item("BAT")]);
  });
  test("each run knows what protects it and what lies beyond", () => {
    const line = (id: string) => plant.lines.find(({ run }) => run.id === id);
    expect(line("W10")).toMatchObject({ protectedBy: house.item("Q5"), circuit: old?.circuits[2] });
    expect(line("W10")?.near.id).toBe("Q4.in");
    expect(ids(line("W11")?.beyond.gridPorts ?? [])).toEqual(["INV.ac"]);
    expect(line("W14")?.protectedBy).toBeUndefined();
    expect(ids(line("W14")?.beyond.boards ?? [])).toEqual(["OLD"]);
    expect(line("W13")?.root.id).toBe("INV.backup");
  });
  test("a transformer around the tails sees everything", () => {
    const [ct] = plant.transformers;
    expect(ct?.run).toBe(house.run("W14"));
    expect(ct?.readBy).toBe(house.item("INV"));
    expect(ct?.unseen).toEqual([]);
  });
  test("the signature changes with a line of the a.c. side, and not with one of the roof", () => {
    const signature = (text: string) => only(wired(text)).signature.map((part) => JSON.stringify(part, shallow));
    const before = signature(referenceHouse);
    expect(signature(referenceHouse.replace("azimuth: 90 deg", "azimuth: 91 deg"))).toEqual(before);
    expect(signature(referenceHouse.replace("13 m of Twin6", "14 m of Twin6"))).not.toEqual(before);
    expect(signature(referenceHouse.replace("max-import-current: 40 A", "max-import-current: 39 A"))).not.toEqual(
      before,
    );
    expect(signature(referenceHouse.replace("closed-in: island", "closed-in: both"))).not.toEqual(before);
    expect(signature(referenceHouse.replace("resistance: 48 ohm", "resistance: 49 ohm"))).not.toEqual(before);
    expect(signature(referenceHouse.replace("0.3 m of Lead35", "0.4 m of Lead35"))).not.toEqual(before);
    expect(signature(referenceHouse.replace("arrow: towards-load", "arrow: towards-supply"))).not.toEqual(before);
  });
});

/** Places move with every edit before them; what is written does not. */
function shallow(key: string, value: unknown): unknown {
  return /place|places/i.test(key) ? undefined : value;
}

describe("other plants", () => {
  const parts = "part Lead is cable {}\n";

  test("an a.c. surge device knows the way that protects it", () => {
    const { item, ...rest } = wired(`${parts}
supply GRID { phases: 1 }
board CU { isolator MS { poles: 2 }  way 8: breaker K8 serves F3 { rated-current: 20 A } }
spd F3 { supply: ac }
spd F4 { supply: ac }
run W12 from GRID to CU: 3 m of Lead
run W13 from CU.K8 to F3: 0.3 m of Lead
run W14 from GRID to F4: 0.3 m of Lead`);
    const [inBoard, before] = only({ item, ...rest }).surge;
    expect(inBoard).toMatchObject({ spd: item("F3"), protectedBy: item("CU.K8"), run: { id: "W13" } });
    expect(before?.protectedBy).toBeUndefined();
  });

  test("a transformer behind a tap misses what is fed before it", () => {
    const tapped = wired(`${parts}
supply GRID { phases: 1 }
terminal-block TB
board CU { way 1: breaker K1 serves "sockets" {} }
board CU2 { way 1: breaker K1 serves "heat pump" {} }
inverter INV { ac {} }
run W1 from GRID to TB: 1 m of Lead
run W2 from TB to CU: 1 m of Lead
run W3 from TB to CU2: 1 m of Lead
run W4 from INV.ac to TB: 1 m of Lead
ct CT1 { around: W2 }`);
    expect(ids(only(tapped).transformers[0]?.unseen ?? [])).toEqual(["INV.ac", "CU2.K1"]);
  });

  test("a changeover makes two feeds, one in each mode", () => {
    const both = wired(`${parts}
supply GRID { phases: 1 }
changeover CHG { poles: 2 }
inverter INV { ac {} backup {} }
board CU { way 1: breaker K1 serves "sockets" {} }
run W1 from GRID to CHG.grid: 1 m of Lead
run W2 from INV.backup to CHG.backup: 1 m of Lead
run W3 from CHG to CU: 1 m of Lead
run W4 from GRID to INV.ac: 1 m of Lead`);
    const plant = only(both);
    expect(plant.boards[0]?.feeds.map(({ source, mode }) => [source.id, mode])).toEqual([
      ["GRID", "grid"],
      ["INV", "island"],
    ]);
    expect(ids(plant.inverters[0]?.backup?.changeovers ?? [])).toEqual(["CHG"]);
    expect(ids(plant.inverters[0]?.backup?.circuits.map(({ device }) => device) ?? [])).toEqual(["CU.K1"]);
  });

  test("a sub-board hangs on the way that serves it, with a run or without", () => {
    const sub = wired(`${parts}
supply GRID { phases: 1 }
board CU { way 1: breaker K1 serves SHED { poles: 2 } }
board SHED { way 1: breaker K1 serves "light" { poles: 1 } }
run W1 from GRID to CU: 1 m of Lead`);
    const plant = only(sub);
    expect(ids(plant.boards[0]?.circuits[0]?.beyond.boards ?? [])).toEqual(["SHED"]);
    const path = pathBetween(sub.terminal("GRID.out"), sub.terminal("SHED.K1.out"));
    expect(path && ids(protectionOn(path))).toEqual(["CU.K1", "SHED.K1"]);
  });

  test("installations that nothing joins are apart, and a design without its supply is read all the same", () => {
    const two = wired(`${parts}
board CU { way 9: rcbo K9 serves INV { poles: 2 } }
inverter INV { ac {} }
run W1 from INV.ac to CU.K9: 1 m of Lead
inverter OTHER { ac {} }`);
    const [first, second] = plants(two.design, two.circuit);
    expect([first?.id, second?.id]).toEqual(["CU", "OTHER"]);
    expect(ids(first?.boards[0]?.circuits[0]?.beyond.gridPorts ?? [])).toEqual(["INV.ac"]);
    expect(first?.inverters[0]?.grid?.toSupply).toBeUndefined();
    expect(first?.lines.map(({ run, root }) => [run.id, root.id])).toEqual([["W1", "CU.bar"]]);
  });
});
