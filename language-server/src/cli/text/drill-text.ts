import { type Drill, isPassed } from "../../assessment/drill.js";
import { noticeOfCheck } from "../../assessment/notices.js";
import { label } from "../../design/facts.js";
import type { Locator } from "../report/locate.js";
import { place } from "./notice-text.js";
import { counted, Page, type PageOptions, printable } from "./page.js";

export interface Drilled {
  readonly file: string;
  readonly drill: Drill;
}

/** Which training designs hold, and what is missing and what is extra in the others. */
export function drillText(drilled: readonly Drilled[], locator: Locator, options: PageOptions): string {
  const page = new Page(options);
  const { paint } = page;
  for (const { file, drill } of drilled) {
    const passed = isPassed(drill);
    const mark = passed ? paint.green("holds ") : paint.red("failed");
    page.line(`${mark}  ${printable(file)}  ${paint.dim(`${drill.expected} expected`)}`);
    if (!passed) writeDifference(page, drill, locator);
  }
  const failed = drilled.filter(({ drill }) => !isPassed(drill)).length;
  const total = counted(drilled.length, "design");
  page.line();
  page.line(
    failed === 0 ? `${total}: findings and expectations are the same.` : `${total}: ${failed} failed, see above.`,
  );
  return page.toString();
}

function writeDifference(page: Page, drill: Drill, locator: Locator): void {
  for (const { rule, target, rulePlace } of drill.missing) {
    const thing = target ? ` on ${target.path.join(".")}` : "";
    page.text(2, `${place(locator.locate(rulePlace))}  missing: ${rule}${thing} is expected and was not found.`);
  }
  for (const check of drill.extra) {
    const notice = noticeOfCheck(check);
    if (!notice) continue;
    page.text(
      2,
      `${place(locator.locate(notice.place))}  extra: ${notice.id} on ${label(check.thing)} is found and not expected.`,
    );
    page.text(4, notice.message);
  }
  for (const problem of drill.errors) {
    page.text(2, `${place(locator.locate(problem.place))}  error of the text: ${problem.id}`);
    page.text(4, problem.message);
  }
}
