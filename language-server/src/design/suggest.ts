/**
 * The nearest of some known words, for "did you mean": nothing where all are far off.
 * Distance counts single-letter edits and swaps of neighbours (optimal string alignment).
 */
export function nearest(word: string, known: Iterable<string>): string | undefined {
  const wanted = word.toLowerCase();
  let best: string | undefined;
  let bestDistance = Math.max(1, Math.floor(word.length / 3)) + 1;
  for (const candidate of known) {
    if (Math.abs(candidate.length - word.length) >= bestDistance) continue;
    const distance = editDistance(wanted, candidate.toLowerCase());
    if (distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best ?? startingWith(wanted, known);
}

/** A longer word that begins or ends with what was written: `voc` is not near `open-circuit-voltage`, `voltage` is. */
function startingWith(wanted: string, known: Iterable<string>): string | undefined {
  if (wanted.length < 3) return undefined;
  for (const candidate of known) {
    const lower = candidate.toLowerCase();
    if (lower.startsWith(wanted) || lower.endsWith(`-${wanted}`)) return candidate;
  }
  return undefined;
}

function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const same = a[row - 1] === b[column - 1];
      let cost = Math.min(last[column]! + 1, current[column - 1]! + 1, last[column - 1]! + (same ? 0 : 1));
      if (row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1])
        cost = Math.min(cost, beforeLast[column - 2]! + 1);
      current.push(cost);
    }
    beforeLast = last;
    last = current;
  }
  return last[b.length]!;
}
