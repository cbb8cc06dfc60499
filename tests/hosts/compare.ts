import type { SessionRun } from "./run-session.js";

/** What the editor showed of each example, by path. */
type Shown = Readonly<Record<string, unknown>>;

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
