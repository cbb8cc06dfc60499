/** Milliseconds of one call. */
export async function timed(action: () => unknown): Promise<number> {
  const start = performance.now();
  await action();
  return performance.now() - start;
}

/** The value below which a share of the values lies. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

export function median(values: readonly number[]): number {
  return quantile(values, 0.5);
}

/** `3.14`, `31.4`, `314`: three digits that count. */
export function digits(value: number | undefined): string {
  if (value === undefined || Number.isNaN(value)) return "–";
  return value >= 100 ? value.toFixed(0) : value >= 10 ? value.toFixed(1) : value.toFixed(2);
}
