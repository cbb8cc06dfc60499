/** Roots of a function of one variable. */

/**
 * Where a function that changes sign between two points is zero: Newton's step where it stays inside the bracket, else
 * halving, so it always ends. `slope` is the derivative. NaN where there is no change of sign.
 */
export function bracketedNewton(
  value: (x: number) => number,
  slope: (x: number) => number,
  low: number,
  high: number,
): number {
  const atLow = value(low);
  const atHigh = value(high);
  if (atLow === 0) return low;
  if (atHigh === 0) return high;
  if (!(atLow > 0 !== atHigh > 0)) return Number.NaN;
  let negative = atLow < 0 ? low : high;
  let positive = atLow < 0 ? high : low;
  let x = (low + high) / 2;
  for (let step = 0; step < 200; step++) {
    const y = value(x);
    if (y === 0) return x;
    if (y < 0) negative = x;
    else positive = x;
    const newton = x - y / slope(x);
    const inside = newton > Math.min(negative, positive) && newton < Math.max(negative, positive);
    const next = inside ? newton : (negative + positive) / 2;
    if (next === x || Math.abs(next - x) <= 2 * Number.EPSILON * Math.abs(next)) return next;
    x = next;
  }
  return x;
}

const tolerance = 1e-14;

/** The same without a derivative: halving with secant steps (the Illinois rule). NaN without a change of sign. */
export function bracketedSecant(value: (x: number) => number, low: number, high: number): number {
  let a = low;
  let b = high;
  let fa = value(a);
  let fb = value(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa > 0 !== fb > 0)) return Number.NaN;
  for (let step = 0; step < 200; step++) {
    const x = b - (fb * (b - a)) / (fb - fa);
    const y = value(x);
    if (y === 0 || Number.isNaN(y)) return x;
    if (y > 0 !== fb > 0) {
      a = b;
      fa = fb;
    } else {
      // The same end twice: halve the weight of the other, or it would never move.
      fa /= 2;
    }
    const moved = Math.abs(x - b);
    b = x;
    fb = y;
    if (moved <= tolerance * Math.abs(b) || Math.abs(b - a) <= tolerance * Math.abs(b)) return b;
  }
  return b;
}
