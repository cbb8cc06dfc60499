import { styleText } from "node:util";
import { sunwright } from "./programs.js";

const example = "examples/alder-cottage";
const exercise = "examples/training/one-module-too-many.sun";

/** Checks the example house and one training fault in the terminal; throws an Error where the example does not hold. */
export function showCheck(): void {
  heading(`The example house: sunwright check ${example}`);
  const house = sunwright("check", example);
  console.log(house.text.trimEnd());
  if (house.code !== 0) throw new Error("The example house should have no finding, and has one.");

  heading(`A training design with one fault, with its working: sunwright check ${exercise} --show-working`);
  const fault = sunwright("check", exercise, "--show-working");
  // What held follows the finding; here the finding is what is to be seen.
  const [finding = ""] = fault.text.split(/^ {2}Passed$/m);
  console.log(finding.trimEnd());
  if (!finding.includes("string-voltage")) throw new Error("The training design should show its fault, and does not.");
}

function heading(text: string): void {
  console.log(`\n${styleText("bold", text)}\n`);
}
