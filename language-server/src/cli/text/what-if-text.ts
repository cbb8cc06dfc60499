import { changeText } from "../../assessment/what-if-text.js";
import type { DesignReport } from "../report/report.js";
import type { Page } from "./page.js";

/** What is supposed of a design: before any of its results. */
export function writeSuppositions(page: Page, { whatIf }: DesignReport): void {
  if (!whatIf) return;
  if (whatIf.suppositions.length === 0)
    page.text(2, "What if: nothing of that name here; these results are of the text.");
  for (const { text } of whatIf.suppositions) page.text(2, `What if ${text}`, (line) => page.paint.bold(line));
}

/** Which checks come out otherwise than for the text as it is. */
export function writeChanges(page: Page, { whatIf }: DesignReport): void {
  if (!whatIf || whatIf.suppositions.length === 0) return;
  if (whatIf.changes.length === 0) page.text(2, "What changes: no check has another outcome than as written.");
  else page.text(2, "What changes");
  for (const change of whatIf.changes) page.text(4, changeText(change));
}

/** Printed at the end of what is not true of any file. */
export function whatIfClosing(supposed: readonly string[]): string {
  return `What if: these results suppose ${supposed.join(" and ")}. No file says so, and none was changed.`;
}
