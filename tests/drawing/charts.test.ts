import { describe, expect, test } from "vitest";
import { chartsOf, pagesOf } from "../../language-server/src/drawing/charts/charts.js";
import { currentVoltagePlot } from "../../language-server/src/drawing/charts/current-voltage.js";
import { marginsOf } from "../../language-server/src/drawing/charts/margins.js";
import type { Plot } from "../../language-server/src/drawing/charts/plot.js";
import { stringVoltagePlot } from "../../language-server/src/drawing/charts/string-voltage.js";
import { ticks } from "../../language-server/src/drawing/charts/ticks.js";
import type { Picture } from "../../language-server/src/drawing/picture.js";
import { dropsOf } from "../../language-server/src/drawing/run-drops.js";
import { scaleOn } from "../../language-server/src/drawing/sheets/paper.js";
import { svgOf } from "../../language-server/src/drawing/svg.js";
import { light } from "../../language-server/src/drawing/themes.js";
import { assessed, designs } from "../examples/examples.js";
import { assessText } from "./drawn.js";
import { texts } from "./texts.js";

function plotted(plot: Plot | string): Plot {
  if (typeof plot === "string") throw new Error(plot);
  return plot;
}

describe("string voltage against cell temperature", () => {
  const assessment = assessed("training/one-module-too-many.sun");
  const [array] = assessment.zones[0]!.arrays.filter(({ strings }) => strings.length > 0);
  const plot = plotted(stringVoltagePlot(assessment, array!.strings[0]!, array!));

  test("the curve goes through the figure that the check found", () => {
    const check = assessment.checks.find(
      ({ rule, outcome }) => rule.id === "string-voltage" && outcome.outcome === "finding",
    );
    const found = check?.outcome.outcome === "finding" ? check.outcome.value : undefined;
    expect(plot.points[0]?.y).toBeCloseTo(found!.value, 9);
  });

  test("the crossing lies on the lowest limit and on the curve", () => {
    const [, crossing] = plot.points;
    const [from, to] = plot.curves[0]!.points;
    const slope = (to!.y - from!.y) / (to!.x - from!.x);
    expect(from!.y + slope * (crossing!.x - from!.x)).toBeCloseTo(crossing!.y, 9);
    expect(crossing!.y).toBe(Math.min(...plot.limits.filter(({ isStrict }) => isStrict).map(({ y }) => y)));
  });

  test("limits that lie beyond the picture are named below it", () => {
    expect(plot.notes.join(" ")).toMatch(/Higher limits, not drawn: .*1500 V/);
  });

  test("without the site's temperatures the curve is drawn, and what is missing is said", () => {
    const text = `part M is module { open-circuit-voltage: 38.9 V  open-circuit-voltage-coefficient: -0.25 %/K }\nstring S1 is 9 x M\ninverter INV { max-dc-voltage: 600 V  tracker a {} }\nrun W1 from S1 to INV.a: 3 m of M`;
    const bare = assessText(text);
    const [own] = bare.zones[0]!.arrays;
    const { notes, curves } = plotted(stringVoltagePlot(bare, own!.strings[0]!, own!));
    expect(curves.map(({ words }) => words)).toEqual(["open circuit"]);
    expect(notes.join(" ")).toContain("the site's lowest-temperature is not stated");
    expect(notes.join(" ")).toContain("M voltage-at-max-power");
  });
});

describe("current against voltage", () => {
  const assessment = assessed("training/unequal-strings-in-parallel.sun");
  const [array] = assessment.zones[0]!.arrays.filter(({ strings }) => strings.length > 1);
  const plot = plotted(currentVoltagePlot(assessment, array!));

  test("currents of strings in parallel add at one voltage", () => {
    const [together, ...each] = plot.curves;
    const short = each.reduce((sum, { points }) => sum + points[0]!.y, 0);
    expect(together!.points[0]!.y).toBeCloseTo(short, 9);
  });

  test("at standard test conditions a string gives its data sheet's power", () => {
    // The fit goes through the sheet's point of maximum power, or says that it is a little beside it.
    const cottage = assessed("alder-cottage/alder-cottage.sun");
    const own = cottage.zones[0]!.arrays.find(({ id }) => id === "INV.pv1")!;
    const [best] = plotted(currentVoltagePlot(cottage, own)).points;
    expect((best!.x * best!.y) / (11 * 32.6 * 13.2)).toBeCloseTo(1, 3);
  });

  test("less light, less current; hotter cells, less voltage", () => {
    const dim = plotted(currentVoltagePlot(assessment, array!, { irradiance: 500, cell: 298.15 }));
    const hot = plotted(currentVoltagePlot(assessment, array!, { irradiance: 1000, cell: 338.15 }));
    const ends = ({ curves }: Plot): [number, number] => [curves[0]!.points[0]!.y, curves[0]!.points.at(-1)!.x];
    expect(ends(dim)[0]).toBeLessThan(0.51 * ends(plot)[0]);
    expect(ends(hot)[1]).toBeLessThan(ends(plot)[1]);
  });
});

describe("margins", () => {
  test.each(designs)("%s: what passes uses no more than its limit, what is found more, the tightest first", (path) => {
    const { margins } = marginsOf(assessed(path));
    expect(margins.filter(({ used, outcome }) => outcome === "pass" && used > 1 + 1e-9)).toEqual([]);
    expect(margins.filter(({ used, outcome }) => outcome === "finding" && used < 1)).toEqual([]);
    const used = margins.map((margin) => margin.used);
    expect(used).toEqual([...used].sort((a, b) => b - a));
  });

  test("every check is counted: as a bar, or as one of those that have none", () => {
    const assessment = assessed("long-barn/long-barn.sun");
    const { margins, chosenToReach, withoutFigures, notChecked } = marginsOf(assessment);
    const applicable = assessment.checks.filter(({ outcome }) => outcome.outcome !== "not-applicable");
    expect(margins.length + chosenToReach + withoutFigures + notChecked).toBe(applicable.length);
  });

  test("what is chosen to be equal, and counts, have no bar; how many there are is said", () => {
    const assessment = assessed("alder-cottage/alder-cottage.sun");
    const { margins, chosenToReach } = marginsOf(assessment);
    const passes = margins.filter(({ outcome }) => outcome === "pass").map(({ words }) => words);
    expect(passes.filter((words) => words.includes("mm²") || /^\d+ against \d+$/.test(words))).toEqual([]);
    expect(chosenToReach).toBeGreaterThan(0);
    const { description } = chartsOf(assessment)
      .find(({ name }) => name === "margins")!
      .picture();
    expect(description).toContain(`Checks without a bar: ${chosenToReach} that hold compare counts`);
  });

  test("on paper they take as many pages as are printed no smaller than they are drawn", () => {
    const chart = chartsOf(assessed("alder-cottage/alder-cottage.sun")).find(({ name }) => name === "margins")!;
    const pages = pagesOf(chart);
    expect(pages.length).toBeGreaterThan(1);
    expect(pages.map((page) => scaleOn("A4", page))).toEqual(pages.map(() => 1));
    const bars = (pictures: readonly Picture[]) =>
      pictures.flatMap(({ shapes }) => shapes).flatMap((shape) => (shape.is === "group" ? [shape.label] : []));
    expect(bars(pages)).toEqual(bars([chart.picture()]));
  });
});

test("the drop along a way is what the check on it found", () => {
  const assessment = assessed("alder-cottage/alder-cottage.sun");
  const way = dropsOf(assessment).paths.find(({ id }) => id === "S2");
  const sum = way!.steps.reduce((total, { share }) => total + share!.value, 0);
  const check = assessment.checks.find(
    ({ rule, outcome }) => rule.id === "dc-voltage-drop" && outcome.outcome === "departure",
  );
  const found = check?.outcome.outcome === "departure" ? check.outcome.finding.value : undefined;
  expect(sum).toBeCloseTo(found!.value, 12);
});

test("each limit on the drop is called by its name", () => {
  const { shapes } = chartsOf(assessed("alder-cottage/alder-cottage.sun"))
    .find(({ name }) => name === "drop")!
    .picture();
  const words = texts(shapes).map((each) => each.words);
  expect(words).toEqual(expect.arrayContaining(["design limit 1 %", "ceiling 3 %", "limit 1 %"]));
});

describe("charts in figures", () => {
  const cottage = assessed("alder-cottage/alder-cottage.sun");
  const tableOf = (name: string, index = 0) =>
    chartsOf(cottage)
      .find((chart) => chart.name === name)!
      .tables()[index]!;

  test("say what the curves say at round steps", () => {
    const { columns, rows } = tableOf("voltage:S1");
    expect(columns).toEqual(["cell temperature in °C", "open circuit, V", "maximum power, V"]);
    // The reference house's string: 11 × 38.9 V, −0.25 %/K, ten degrees below nothing.
    expect(rows.find(({ cells }) => cells[0] === "−10")?.cells[1]).toBe("465.3");
    // Its module's short-circuit current, 14 A on the sheet, under standard test conditions.
    expect(tableOf("curve:INV.pv1").rows[0]!.cells).toEqual(["0", "14"]);
  });

  test("name every limit on the way, and when it is reached", () => {
    const { rows } = tableOf("voltage:S1", 1);
    const holders = rows.map(({ cells }) => cells[0]);
    expect(holders).toEqual(expect.arrayContaining(["INV", "Q1", "F1", "W1", "W2", "Hollin430"]));
  });

  test.each(designs)("every bar and row of %s has a name of its own", (path) => {
    const { margins } = marginsOf(assessed(path));
    expect(new Set(margins.map(({ id }) => id)).size).toBe(margins.length);
  });
});

test.each(designs)("every chart of %s can be drawn", (path) => {
  for (const chart of chartsOf(assessed(path))) {
    const drawn = svgOf(chart.picture(), light);
    expect(drawn, chart.name).not.toMatch(/NaN|Infinity|undefined/);
    expect(JSON.stringify(chart.tables()), chart.name).not.toMatch(/NaN|Infinity|undefined/);
  }
});

test("steps of an axis are round", () => {
  expect(ticks(0, 1.1)).toEqual([0, 0.2, 0.4, 0.6, 0.8, 1]);
  expect(ticks(-30, 80, 8)).toEqual([-20, 0, 20, 40, 60, 80]);
  expect(ticks(3, 3)).toEqual([]);
});
