import { parseQuantity } from "@sunwright/grammar";
import { describe, expect, test } from "vitest";
import { figuresOf } from "../../language-server/src/editor/hover/check.js";
import { workingLines } from "../../language-server/src/physics/working.js";
import { filesOf } from "../editor-room/example-files.js";
import { TestWorkspace, uriOf } from "../editor-room/workspace.js";

/**
 * Whoever works a printed sum out again, with nothing but the figures that stand in it, comes to the printed result: as
 * near as its terms are known that were rounded before they were printed, and nearly always to its last digit.
 */

const number = /\d+(?:\.\d+)?/.source;
const unit = /(?:[%°µa-zA-ZΩ][%°µa-zA-ZΩ²/0-9]*)/.source;
const quantity = new RegExp(`(${number}) (${unit})(?![\\wΩ,])`, "gu");

/** In SI units; temperatures in the degrees of the formula, because it adds and subtracts constants in them. */
function inSi(written: string, name: string): number {
  if (name === "°C") return Number(written);
  const { si, dimension } = parseQuantity(`${written} ${name}`);
  if (dimension === undefined) throw new SyntaxError(`${name} is no unit`);
  return si;
}

/** What comes out of the figures of a line; undefined for a line that is no plain arithmetic. */
function workedOut(figures: string): number | undefined {
  const script = figures
    .replace(quantity, (_, written: string, name: string) => `(${inSi(written, name)})`)
    .replaceAll("°", "")
    .replace(/√\(/g, "Math.sqrt(")
    .replace(/√(\d+)/g, "Math.sqrt($1)")
    .replace(/\b(max|min)\(/g, "Math.$1(")
    .replaceAll(";", ",")
    .replaceAll("·", "*")
    .replaceAll("−", "-")
    .replaceAll("²", "**2");
  if (!/^[\d\s.()+*/,eE-]*$/.test(script.replace(/Math\.(sqrt|max|min)/g, ""))) return undefined;
  const result: unknown = new Function(`return ${script}`)();
  return typeof result === "number" ? result : undefined;
}

interface Line {
  readonly text: string;
  /** How far the printed result is from the one by hand, in units of its last digit. */
  readonly off: number;
  /** How far it may be, because the terms were rounded. */
  readonly allowed: number;
}

function readLine(text: string): Line | undefined {
  const parts = text.split(" = ");
  const figures = parts[parts.length - 2] ?? "";
  const [, written = "", name = ""] = /^([−\d.]+)(?: (.+))?$/.exec(parts[parts.length - 1] ?? "") ?? [];
  // The constant k of a conductor is printed without its unit, A√s/mm².
  if (parts.length < 3 || written === "" || text.includes("/ k = ")) return undefined;
  const plain = written.replace("−", "");
  try {
    const result = workedOut(figures);
    if (result === undefined || !Number.isFinite(result)) return undefined;
    const unitSize = name === "" ? 1 : inSi("1", name);
    const digit = lastDigit(plain) * unitSize;
    const printed = (written.startsWith("−") ? -1 : 1) * Number(plain) * unitSize;
    return { text, off: Math.abs(result - printed) / digit, allowed: 0.5 + roundedAway(figures, result) / digit };
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

/** What one in the last of three digits is worth, or of as many as are printed. */
function lastDigit(plain: string): number {
  const significant = Math.max(plain.replace(".", "").replace(/^0+/, "").length, 3);
  return 10 ** (Math.floor(Math.log10(Number(plain))) - significant + 1);
}

/** How much the result moves, all told, when each term moves by half its last digit. */
function roundedAway(figures: string, result: number): number {
  let moved = 0;
  for (const { 0: term, index } of figures.matchAll(/\d+\.?\d*/g)) {
    // A small whole number is a count or a constant of the formula.
    if (!term.includes(".") && term.length < 3) continue;
    const other = (Number(term) + lastDigit(term) / 2).toFixed(12);
    moved += Math.abs(
      (workedOut(figures.slice(0, index) + other + figures.slice(index + term.length)) ?? result) - result,
    );
  }
  return moved;
}

describe.each([
  "alder-cottage/alder-cottage.sun",
  "backup-house/backup-house.sun",
  "three-phase-barn/three-phase-barn.sun",
])("%s", (design) => {
  const workspace = new TestWorkspace(filesOf(design));
  const figures = new Set(workspace.view.assessment(uriOf(design)).checks.flatMap(figuresOf));
  const sums = [...new Set([...figures].flatMap(workingLines))].filter((line) => line.split(" = ").length > 2);
  const read = sums.map(readLine).filter((line) => line !== undefined);

  test("most sums are plain arithmetic, which is worked out here again", () => {
    expect(read.length / sums.length).toBeGreaterThan(0.8);
  });
  test("and come to what is printed, as near as the terms are known", () => {
    const off = read.filter((line) => line.off > line.allowed * 1.001);
    expect(off.map(({ text }) => text)).toEqual([]);
  });
  test("nearly all of them to the last digit", () => {
    expect(read.filter(({ off }) => off <= 1).length / read.length).toBeGreaterThan(0.9);
  });
});
