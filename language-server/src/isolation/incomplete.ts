import type { Assessment } from "../assessment/assessment.js";

/** Whether something of the text is missing from the circuit, so that nothing may be called dead. */
export function isIncomplete({ design }: Assessment): boolean {
  return design.problems.some(({ severity }) => severity === "error");
}
