/** Round steps of an axis: one, two or five times a power of ten, about so many. */
export function ticks(from: number, to: number, about = 6): number[] {
  const span = to - from;
  if (!(span > 0) || !Number.isFinite(span)) return [];
  const raw = span / about;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = [1, 2, 5, 10].map((each) => each * power).find((each) => each >= raw * 0.999) ?? 10 * power;
  const found: number[] = [];
  for (let index = Math.ceil(from / step - 1e-9); index * step <= to + step * 1e-9; index++)
    // Multiplying keeps the sums of a hundred steps from drifting.
    found.push(Number((index * step).toPrecision(12)));
  return found;
}
