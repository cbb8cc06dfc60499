import type { Assessment } from "../../language-server/src/assessment/assessment.js";
import { diagramOf } from "../../language-server/src/drawing/diagram-of.js";
import { layout } from "../../language-server/src/drawing/layout.js";
import { assessText, renderSvg } from "../drawing/drawn.js";
import { largeSite } from "../drawing/large-site.js";
import { assessed, textOf } from "../examples/examples.js";
import { digits, median } from "./statistics.js";

/**
 * `tsx tests/bench/drawing.ts`: how long a picture takes, from the assessment to the SVG, in processor time, as a share
 * of its goal. Every round draws a design that was not drawn before; a second figure is that of a change in one line.
 */
const rounds = 15;

interface Case {
  readonly name: string;
  /** Milliseconds for a design that was not drawn before. */
  readonly goal: number;
  readonly text: (round: number) => string;
  readonly assess: (text: string) => Assessment;
  readonly atOnce?: number;
}

/** Devices with places of different lengths: no plant of the site is as wide as the next, and no round as the last. */
function uneven(round: number): string {
  let number = 0;
  return largeSite(300).replace(/\{ poles: 2 \}/g, () => {
    number++;
    return `{ poles: 2  location: "${"m".repeat((number + round) % 9)} ${"n".repeat(round)}" }`;
  });
}

const cottage = "alder-cottage/alder-cottage.sun";
const site = { goal: 400, text: uneven, assess: assessText } as const;
const cases: readonly Case[] = [
  {
    name: "Alder Cottage",
    goal: 60,
    text: (round) => textOf(cottage).replaceAll("plant wall", "w".repeat(round + 1)),
    assess: (text) => assessed(cottage, text),
  },
  { name: "300 items", ...site },
  { name: "300 items, in one go", ...site, atOnce: Number.POSITIVE_INFINITY },
];

async function picture(assessment: Assessment, atOnce?: number): Promise<number> {
  const { user, system } = process.cpuUsage();
  renderSvg(await layout(diagramOf(assessment), atOnce));
  const used = process.cpuUsage({ user, system });
  return (used.user + used.system) / 1000;
}

for (const { name, goal, text, assess, atOnce } of cases) {
  const [fresh, changed]: [number[], number[]] = [[], []];
  for (let round = 0; round < rounds; round++) {
    const own = text(round);
    fresh.push(await picture(assess(own), atOnce));
    // One device's place is another.
    changed.push(await picture(assess(own.replace(/location: "/, 'location: "another ')), atOnce));
  }
  // The first rounds load and warm the layout engine.
  const [whole, line] = [median(fresh.slice(3)), median(changed.slice(3))];
  console.log(
    `${name}: ${digits(whole)} ms, ${digits(whole / goal)} of the goal; a change in one line ${digits(line / whole)} of that`,
  );
}
