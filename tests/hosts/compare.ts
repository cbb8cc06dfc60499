import type { SessionRun } from "./run-session.js";

/** What the editor showed of each example, by path. */
type Shown = Readonly<Record<string, unknown>>;

/** How many examples were looked at in each of several hosts. */
export function comparedExamples(runs: readonly SessionRun[]): number {
  const shown = runs.flatMap(({ diagnostics }) => (diagnostics ? [JSON.parse(diagnostics) as Shown] : []));
  return shown.length < 2 ? 0 : Math.min(...shown.map((one) => Object.keys(one).length));
}

/** Where two hosts do not show the same of the examples, to the letter. */
export function differences(runs: readonly SessionRun[]): string[] {
  const [first, ...others] = runs.flatMap(({ host, diagnostics }) =>
    diagnostics ? [{ host, shown: JSON.parse(diagnostics) as Shown }] : [],
  );
  if (!first) return [];
  return others.flatMap(({ host, shown }) => {
    const paths = new Set([...Object.keys(first.shown), ...Object.keys(shown)]);
    return [...paths]
      .filter((path) => JSON.stringify(first.shown[path]) !== JSON.stringify(shown[path]))
      .map((path) => `${path}, ${first.host} against ${host}`);
  });
}
