import { NotKnown } from "../../rules/judge.js";
import { missingText } from "../run-drops.js";

/** What can be worked out, or what it lacks in words. */
export function attempt<Value>(compute: () => Value): Value | string {
  try {
    return compute();
  } catch (error) {
    if (error instanceof NotKnown) return `not known: ${missingText(error)}`;
    throw error;
  }
}
