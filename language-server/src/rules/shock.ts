import { toSi } from "@sunwright/grammar";
import type { DisconnectionRow, DisconnectionTimes, FuseLoops, OperatingMultiple } from "../physics/disconnection.js";
import type { EnergyLimit } from "../physics/fault-energy.js";
import type { Given, Source } from "../physics/figure.js";
import { tabulated } from "../physics/make.js";
import { ruleFigure } from "./rule-set.js";

/** Figures of fault protection that the rule sets share, because their standards do; each set names its own clauses. */

type Band = readonly [system: "TN" | "TT", supply: "ac" | "dc", above: number, upTo: number, seconds: number];

/** Voltage to earth in V, time in s. Up to 120 V d.c. no disconnection is asked for on account of shock. */
const disconnectionBands: readonly Band[] = [
  ["TN", "ac", 50, 120, 0.8],
  ["TN", "ac", 120, 230, 0.4],
  ["TN", "ac", 230, 400, 0.2],
  ["TN", "ac", 400, Number.POSITIVE_INFINITY, 0.1],
  ["TT", "ac", 50, 120, 0.3],
  ["TT", "ac", 120, 230, 0.2],
  ["TT", "ac", 230, 400, 0.07],
  ["TT", "ac", 400, Number.POSITIVE_INFINITY, 0.04],
  ["TN", "dc", 120, 230, 1],
  ["TN", "dc", 230, 400, 0.4],
  ["TN", "dc", 400, Number.POSITIVE_INFINITY, 0.1],
  ["TT", "dc", 120, 230, 0.4],
  ["TT", "dc", 230, 400, 0.2],
  ["TT", "dc", 400, Number.POSITIVE_INFINITY, 0.1],
];

export function disconnectionTimes(table: Source, distribution: Source, scope: Source): DisconnectionTimes {
  const time = (seconds: number, text: string, source: Source): Given =>
    tabulated("t", seconds, "time", "s", text, source);
  const rating = (amperes: number, text: string): Given =>
    ruleFigure("In", amperes, "current", "A", `final circuits ${text}, up to this rating`, scope);
  return {
    rows: disconnectionBands.map(([system, supply, above, upTo, seconds]): DisconnectionRow => {
      const text = `longest disconnection time, ${system}, ${supply === "ac" ? "a.c." : "d.c."}`;
      // The times for d.c. differ between editions; the shorter was taken, from memory.
      const source: Source = supply === "dc" ? { ...table, basis: "memory" } : table;
      return { system, supply, above, upTo, time: time(seconds, text, source) };
    }),
    otherwise: {
      TN: time(5, "longest disconnection time of distribution circuits, TN", distribution),
      TT: time(1, "longest disconnection time of distribution circuits, TT", distribution),
    },
    withSockets: rating(63, "with socket-outlets"),
    fixedOnly: rating(32, "with fixed equipment only"),
  };
}

/** Upper ends of the instantaneous ranges of IEC 60898-1. Slowest first within a curve. */
export function operatingMultiples(source: Source): readonly OperatingMultiple[] {
  const row = (curve: string, from: number, multiple: number, basis: Source["basis"] = source.basis) => ({
    curve,
    from,
    multiple: ruleFigure("m", multiple, "number", "", `a type ${curve} breaker trips at so many times its rating`, {
      ...source,
      basis,
    }),
  });
  return [row("B", 0, 5), row("C", 0, 10), row("D", 5, 10, "memory"), row("D", 0, 20)];
}

/** gG fuses to BS 88-2 at 230 V, Cmin 0.95 in them: Ω by rating in A. */
const loops04 = [
  [2, 33.1],
  [4, 15.6],
  [6, 7.8],
  [10, 4.65],
  [16, 2.43],
  [20, 1.68],
  [25, 1.29],
  [32, 0.99],
  [40, 0.75],
  [50, 0.57],
  [63, 0.44],
] as const;
const loops5 = [
  [2, 44],
  [4, 21],
  [6, 12],
  [10, 6.8],
  [16, 4],
  [20, 2.8],
  [25, 2.2],
  [32, 1.7],
  [40, 1.3],
  [50, 0.99],
  [63, 0.78],
  [80, 0.55],
  [100, 0.42],
] as const;

function fuses(within: number, table: string, rows: readonly (readonly [number, number])[]): FuseLoops {
  const source: Source = { title: "BS 7671:2018", clause: `Table ${table}`, basis: "memory" };
  const loops = rows.map(([rating, ohms]): [number, Given] => [
    rating,
    tabulated("Zs,max", ohms, "resistance", "ohm", `BS 7671 Table ${table}, gG fuse of ${rating} A`, source),
  ]);
  return { category: "gG", within, voltage: 230, loops: new Map(loops) };
}

export const fuseLoops: readonly FuseLoops[] = [fuses(0.4, "41.2", loops04), fuses(5, "41.4", loops5)];

const breakers: Source = { title: "IEC 60898-1", clause: "instantaneous tripping in less than 0.1 s", basis: "read" };

export const instantaneousTime = ruleFigure(
  "t",
  0.1,
  "time",
  "s",
  "a circuit-breaker in its instantaneous range opens within this time",
  breakers,
);

const energyClass: Source = { title: "EN 60898-1", clause: "energy limiting class 3, by fault level", basis: "memory" };

/** Nobody states the class; it is what circuit-breakers of 6 kA and more are sold as in Europe. */
function energy(curve: string, kiloamperes: number, upTo: number, squared: number): EnergyLimit {
  return {
    curve,
    breakingCapacity: toSi(kiloamperes, "kA"),
    upTo,
    energy: {
      kind: "given",
      symbol: "Elim",
      value: squared,
      dimension: "let-through",
      unit: "A2s",
      origin: {
        kind: "assumed",
        text: `let-through of a type ${curve} breaker up to ${upTo} A, for faults up to ${kiloamperes} kA: energy limiting class 3, which its sheet should say`,
        source: energyClass,
      },
    },
  };
}

/** The class has its figures up to 32 A, and allows 40 A a fifth more. */
export const energyLimits: readonly EnergyLimit[] = [
  energy("B", 3, 16, 15_000),
  energy("B", 3, 32, 18_000),
  energy("B", 3, 40, 21_600),
  energy("B", 6, 16, 35_000),
  energy("B", 6, 32, 45_000),
  energy("B", 6, 40, 54_000),
  energy("B", 10, 16, 70_000),
  energy("B", 10, 32, 90_000),
  energy("B", 10, 40, 108_000),
  energy("C", 3, 16, 18_000),
  energy("C", 3, 32, 22_000),
  energy("C", 3, 40, 26_400),
  energy("C", 6, 16, 42_000),
  energy("C", 6, 32, 55_000),
  energy("C", 6, 40, 66_000),
  energy("C", 10, 16, 84_000),
  energy("C", 10, 32, 110_000),
  energy("C", 10, 40, 132_000),
];
