/** A share in per cent with three digits that count: `85.4 %`. */
export function percent(share: number): string {
  return `${Number((share * 100).toPrecision(3))} %`;
}
