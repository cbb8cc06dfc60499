/** What became of one test. */
export interface TestResult {
  readonly title: string;
  readonly state: "passed" | "failed" | "skipped";
  readonly ms: number;
  /** What was measured, why it was left out, or how it failed. */
  readonly note?: string;
}

/** Where the results are left, at the top of the folder of the tests. */
export const resultsFile = ".results.json";

/** Where is left what the editor showed of the examples. */
export const diagnosticsFile = ".diagnostics.json";
