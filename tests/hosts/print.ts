import type { SessionRun } from "./run-session.js";

const marks = { passed: "✓", failed: "✗", skipped: "-" } as const;

/** Prints what became of each test of a run. */
export function printRun({ results, failure, seconds }: SessionRun): void {
  for (const { title, state, ms, note } of results)
    console.log(`  ${marks[state]} ${title} (${ms} ms)${note ? `\n      ${note.replaceAll("\n", "\n      ")}` : ""}`);
  if (failure && !results.some(({ state }) => state === "failed")) console.log(`  ✗ ${failure}`);
  console.log(`  ${seconds} s`);
}

/** Prints the sums; true where every run was without a failure and had tests. */
export function printSummary(runs: readonly SessionRun[]): boolean {
  console.log("\nhost      tests  passed  failed  left out  seconds");
  let [passed, failed, skipped] = [0, 0, 0];
  for (const host of new Set(runs.map((run) => run.host))) {
    const own = runs.filter((run) => run.host === host);
    const results = own.flatMap((run) => run.results);
    const count = (state: string) => results.filter((result) => result.state === state).length;
    // A run that broke off counts as one failure even where no single test failed.
    const broken = own.filter((run) => run.failure && !run.results.some(({ state }) => state === "failed")).length;
    const row = [results.length, count("passed"), count("failed") + broken, count("skipped")];
    const seconds = Math.round(own.reduce((sum, run) => sum + run.seconds, 0));
    console.log(`${host.padEnd(8)}${[...row, seconds].map((value) => String(value).padStart(8)).join("")}`);
    passed += row[1]!;
    failed += row[2]!;
    skipped += row[3]!;
  }
  console.log(`\neditor: ${passed} passed, ${failed} failed, ${skipped} skipped`);
  return failed === 0 && passed > 0;
}
