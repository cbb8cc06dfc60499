import { type Dimension, fromSi } from "@sunwright/grammar";
import { formatValue, statedDigits, worthyDigits } from "./display.js";
import type { Derived, Figure, Source } from "./figure.js";

/** The sum as a designer would write it by hand, made from a figure only when somebody asks for it. */

/** Value and unit: `38.9 V`. Stated figures in the unit and with the digits that they were written with. */
export function formatFigure(figure: Figure): string {
  return formatValue(figure.value, figure.dimension, figure.unit, digitsOf(figure, figure.unit));
}

function digitsOf({ kind, value, dimension }: Figure, unit: string | undefined): number {
  return kind === "given" ? statedDigits : worthyDigits(value, dimension, unit);
}

/**
 * Two figures of one dimension for a sentence that compares them: in one unit, the second's where it has one (a limit
 * as a rule), and with as many digits as it takes for unequal values to look unequal (600.04 V above 600 V, not 600 V
 * above 600 V).
 */
export function formatApart(figure: Figure, other: Figure): [string, string] {
  const unit = sharedUnit(figure, other);
  for (let more = 0; more < 8; more++) {
    const texts = [figure, other].map((each) => {
      const own = digitsOf(each, unit) + (each.kind === "given" ? 0 : more);
      return formatValue(each.value, each.dimension, unit, own);
    }) as [string, string];
    if (texts[0] !== texts[1] || figure.value === other.value) return texts;
  }
  return [formatFigure(figure), formatFigure(other)];
}

function sharedUnit(figure: Figure, other: Figure): string | undefined {
  if (figure.dimension !== other.dimension) return undefined;
  const unit = other.unit || figure.unit;
  return unit && isFarSmaller(figure, unit) ? undefined : unit;
}

const measuredInSteps: ReadonlySet<Dimension> = new Set(["voltage", "current", "resistance", "power"]);

/** Whether a figure is so small in a unit that nobody would say it so: 17.5 A beside 10 kA is no 0.0175 kA. */
function isFarSmaller({ value, dimension }: Figure, unit: string): boolean {
  return value !== 0 && measuredInSteps.has(dimension) && Math.abs(fromSi(value, unit)) < 0.02;
}

/** One line: `symbol = formula = figures = result`; for a given figure `symbol = value (where it comes from)`. */
export function workingLine(figure: Figure): string {
  if (figure.kind === "given") return `${figure.symbol} = ${formatFigure(figure)} (${figure.origin.text})`;
  const figures = substituted(figure);
  const middle = figures === figure.formula ? figure.formula : `${figure.formula} = ${figures}`;
  const result = formatFigure(figure);
  return figures === result ? `${figure.symbol} = ${middle}` : `${figure.symbol} = ${middle} = ${result}`;
}

/** All steps, each once, the innermost first and the figure itself last. */
export function workingLines(figure: Figure): string[] {
  const lines: string[] = [];
  const seen = new Set<Figure>();
  collect(figure, seen, lines);
  if (figure.kind === "given") lines.push(workingLine(figure));
  return lines;
}

function collect(figure: Figure, seen: Set<Figure>, lines: string[]): void {
  if (figure.kind === "given" || seen.has(figure)) return;
  seen.add(figure);
  for (const term of figure.terms) collect(term, seen, lines);
  lines.push(workingLine(figure));
}

/** Who says so: title, clause, and how well it is known. */
export function sourceText(source: Source): string {
  if (source.basis === "practice") return `${source.title}: common practice, no published source`;
  const name = source.clause === undefined ? source.title : `${source.title}, ${source.clause}`;
  return source.basis === "memory" ? `${name} (from memory: confirm against the current edition)` : name;
}

/**
 * The formula with its symbols replaced by figures, longest symbol first. `Σ x` becomes the sum of all terms called x.
 * Nothing is evaluated.
 */
function substituted(figure: Derived): string {
  const { formula, terms } = figure;
  if (terms.length === 0) return formula;
  const bySymbol = new Map<string, Figure[]>();
  for (const term of terms) {
    const same = bySymbol.get(term.symbol);
    if (same) same.push(term);
    else bySymbol.set(term.symbol, [term]);
  }
  const symbols = [...bySymbol.keys()].sort((a, b) => b.length - a.length).map(escaped);
  // A symbol ends where the letters, digits and the comma inside names like Uoc,max end; a power of it may follow.
  const pattern = new RegExp(`(Σ )?(?<![\\p{L}\\p{N}_])(${symbols.join("|")})(?![\\p{L}\\p{Nd}_]|,\\p{L})`, "gu");
  return formula.replace(pattern, (match, sum: string | undefined, symbol: string, offset: number) => {
    const figures = bySymbol.get(symbol) ?? [];
    if (sum === undefined) {
      const text = inFormula(figures[0]!);
      // A power is one of the figure with its unit.
      return formula[offset + match.length] === "²" ? `(${text})` : wrapped(text, formula, offset);
    }
    const texts = figures.map((each) => inFormula(each)).map((text, index) => (index > 0 ? guarded(text) : text));
    const total = texts.join(" + ");
    return texts.length === 1 || stands(formula, offset, match.length) ? total : `(${total})`;
  });
}

/** Temperatures in a formula are all printed in degrees Celsius, because the 25 °C of the formulas is. */
function inFormula(figure: Figure): string {
  if (figure.dimension !== "temperature") return formatFigure(figure);
  return formatValue(figure.value, "temperature", "degC", digitsOf(figure, "degC"));
}

/** A negative figure after an operator needs brackets; at the start of a bracket it needs none. */
function wrapped(text: string, formula: string, offset: number): string {
  const before = formula.slice(0, offset).trimEnd();
  return before === "" || before.endsWith("(") || before.endsWith(";") ? text : guarded(text);
}

function guarded(text: string): string {
  return text.startsWith("−") ? `(${text})` : text;
}

/** Whether a stretch is the whole formula or fills a bracket, so that a sum there needs no brackets of its own. */
function stands(formula: string, offset: number, length: number): boolean {
  const before = formula.slice(0, offset).trimEnd();
  const after = formula.slice(offset + length).trimStart();
  return (before === "" && after === "") || (before.endsWith("(") && after.startsWith(")"));
}

function escaped(symbol: string): string {
  return symbol.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}
