import { expect, test } from "vitest";
import { acCurrent, type DirectedCurrent, designCurrent } from "../../language-server/src/physics/ac-current.js";
import {
  acRunDrop,
  type DropPerMetre,
  findDropColumn,
  shareOfVoltage,
  smallestSizeForAcDrop,
  tabulatedDrop,
} from "../../language-server/src/physics/ac-drop.js";
import { expectedDemand, totalDemand } from "../../language-server/src/physics/backup-demand.js";
import { batteryCurrent } from "../../language-server/src/physics/battery.js";
import { joinedCurrent } from "../../language-server/src/physics/board-current.js";
import { largestLoopWithResidual, operatingCurrent } from "../../language-server/src/physics/disconnection.js";
import { gridRoute } from "../../language-server/src/physics/grid-route.js";
import { islandFaultCurrent, largestElectrodeResistance } from "../../language-server/src/physics/island.js";
import {
  leakageBudget,
  nonOperatingCurrent,
  residualTypeNeeded,
} from "../../language-server/src/physics/residual-current.js";
import {
  inverterVoltage,
  supplyLoop,
  supplyRise,
  supplyVoltageAtTrip,
  terminalVoltage,
} from "../../language-server/src/physics/supply-voltage.js";
import { gb } from "../../language-server/src/rules/gb/index.js";
import { amperes, metres, milliamperes, ohms, ratio, volts, watts } from "./figures.js";

/**
 * The a.c. side of the same house: 5 kW hybrid inverter, 6 mm² of 7.3 mV/A/m over 14 m, 80 A cut-out, 100 A board, 51.2 V
 * battery of 44.8 V at the least. All expected figures are arithmetic, worked apart from this program.
 */
const u0 = volts(230, "U0");
const rated = acCurrent(watts(5000), u0, 1);
const loop = ohms(0.25, "ZL-N");
const column = findDropColumn(gb.ac.drop, {
  type: "twin-and-earth",
  insulation: "thermoplastic-70",
  method: "clipped-direct",
  loadedConductors: 2,
})!;
const perMetreOf = (size: number): DropPerMetre | undefined => tabulatedDrop(column, size);
const rise = (size: number, length: number) =>
  acRunDrop({ length: metres(length), current: rated, perMetre: perMetreOf(size * 1e-6)! });
const percent = (size: number, length: number) => 100 * shareOfVoltage(rise(size, length), u0).value;

test("5 kW is 21.7 A and asks first; 3.68 kW is 16.0 A and notifies", () => {
  expect(rated.value).toBeCloseTo(21.7, 1);
  expect(acCurrent(watts(3680), u0, 1).value).toBe(16);
  expect(gridRoute(rated, gb.limits.notifyCurrent)).toBe("apply-first");
  expect(gridRoute(acCurrent(watts(3680), u0, 1), gb.limits.notifyCurrent)).toBe("connect-and-notify");
});

test("the rise is 0.97 % over 14 m and 1.38 % over 20 m; 10 mm² makes that 0.83 %", () => {
  expect(rise(6, 14).value).toBeCloseTo(2.22, 2);
  expect(percent(6, 14)).toBeCloseTo(0.97, 2);
  expect(percent(6, 20)).toBeCloseTo(1.38, 2);
  expect(percent(10, 20)).toBeCloseTo(0.83, 2);
  const allowed = volts(gb.limits.acVoltageRise.value * 230);
  const size = smallestSizeForAcDrop({ length: metres(20), current: rated, allowed, perMetreOf });
  expect(size).toBeCloseTo(10e-6, 12);
});

test("30 m of 6 mm² rise by 4.76 V or 2.07 %, of 10 mm² by 1.25 %", () => {
  expect(rise(6, 30).value).toBeCloseTo(4.76, 2);
  expect(percent(6, 30)).toBeCloseTo(2.07, 2);
  expect(percent(10, 30)).toBeCloseTo(1.25, 2);
});

test("at 246 V the terminals reach 251.4 V and the inverter 253.7 V; it would leave from 254.5 V on", () => {
  const atSupply = supplyRise(rated, loop, 1);
  expect(atSupply.value).toBeCloseTo(5.4, 1);
  const terminal = terminalVoltage(volts(246, "U"), atSupply);
  expect(terminal.value).toBeCloseTo(251.4, 1);
  expect(terminal.value).toBeLessThan(gb.limits.highestSupplyVoltage.value);
  expect(inverterVoltage(terminal, rise(6, 14)).value).toBeCloseTo(253.7, 1);
  expect(supplyVoltageAtTrip(gb.limits.overVoltageTrip, atSupply, rise(6, 14)).value).toBeCloseTo(254.5, 1);
});

test("a supply that states no line-to-neutral loop: Ze on TN-C-S, assumed aloud; else from the fault current", () => {
  const known = { earthing: "TN-C-S", external: ohms(0.24, "Ze"), voltage: u0, prospective: amperes(1900, "Ipf") };
  const assumedLoop = supplyLoop(known)!;
  expect(assumedLoop.value).toBe(0.24);
  expect(assumedLoop.kind === "given" && assumedLoop.origin.kind).toBe("assumed");
  expect(supplyLoop({ ...known, earthing: "TN-S" })!.value).toBeCloseTo(230 / 1900, 10);
  expect(supplyLoop({ ...known, lineNeutral: ohms(0.31) })!.value).toBe(0.31);
  expect(supplyLoop({ earthing: "TT", external: ohms(18, "Ze") })).toBeUndefined();
});

test("80 A and 21.7 A make 101.7 A on a bar of 100 A; a 60 A cut-out makes 81.7 A", () => {
  expect(joinedCurrent(amperes(80, "In"), [rated]).value).toBeCloseTo(101.7, 1);
  expect(joinedCurrent(amperes(60, "In"), [rated]).value).toBeCloseTo(81.7, 1);
});

test("5 kW from 44.8 V at 95 % draw 117.5 A", () => {
  const { batteryEfficiency: efficiency } = gb.ac;
  expect(efficiency.origin.kind).toBe("assumed");
  const current = batteryCurrent({ power: watts(5000), lowestVoltage: volts(44.8, "Umin"), efficiency });
  expect(current.value).toBeCloseTo(117.5, 1);
});

test("the port that passes 40 A decides, not the 21.7 A it exports", () => {
  const currents: DirectedCurrent[] = [
    { direction: "export", current: rated },
    { direction: "import", current: amperes(40) },
  ];
  const design = designCurrent(currents)!;
  expect([design.direction, design.current.value]).toEqual(["import", 40]);
  expect(designCurrent([])).toBeUndefined();
});

test("30 mA: 1667 Ω by touch voltage, 200 Ω that stay; a budget of 9 mA; no trip below 15 mA", () => {
  const residual = milliamperes(30);
  const { touchVoltage, electrodeResistance, leakageShare, residualNonOperatingShare } = gb.limits;
  expect(Math.round(largestLoopWithResidual(touchVoltage, residual).value)).toBe(1667);
  expect(largestElectrodeResistance(touchVoltage, residual, electrodeResistance).value).toBe(200);
  expect(leakageBudget(residual, leakageShare).value).toBeCloseTo(0.009, 12);
  expect(nonOperatingCurrent(residual, residualNonOperatingShare).value).toBeCloseTo(0.015, 12);
});

test("a B32 needs 160 A; an island inverter of 45 A does not give them, however short the loop", () => {
  const operating = operatingCurrent(gb.ac.operatingMultiples, { curve: "B", rating: amperes(32, "In") }, 0.4)!;
  expect(operating.value).toBe(160);
  expect(islandFaultCurrent(amperes(45), u0, ohms(0.4, "Zs")).value).toBe(45);
  expect(islandFaultCurrent(amperes(45), u0, ohms(10, "Zs")).value).toBe(23);
  expect(islandFaultCurrent(amperes(45), u0).value).toBe(45);
});

test("an inverter neither separated nor declared needs type B; of an unknown one nothing is said", () => {
  const need = (separated?: boolean, declared?: boolean) =>
    residualTypeNeeded({ separated, declared }, gb.ac.residualType)?.type;
  expect(need(false, false)).toBe("B");
  expect(need(false, true)).toBe("A");
  expect(need(true, undefined)).toBe("A");
  expect(need(false, undefined)).toBeUndefined();
  expect(need(undefined, false)).toBeUndefined();
  expect(need()).toBeUndefined();
});

test("loads of 3 kW, 7 kW at 40 % and 1.4 kW ask 7.2 kW of a port of 5 kW", () => {
  const demands = [expectedDemand(watts(3000)), expectedDemand(watts(7000), ratio(0.4)), expectedDemand(watts(1400))];
  expect(totalDemand(demands).value).toBeCloseTo(7200, 9);
});
