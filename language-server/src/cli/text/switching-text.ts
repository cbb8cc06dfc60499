import type { NotCounted } from "../../isolation/report.js";
import type { IsolateAnswer, LiveAnswer } from "../report/switching.js";
import { Page, type PageOptions, printable } from "./page.js";

/** What is live, for people: places by what reaches them, then what nothing reaches. */
export function liveText(answer: LiveAnswer, options: PageOptions): string {
  const page = new Page(options);
  writeHead(page, answer);
  const open = answer.open.length > 0 ? `with ${answer.open.join(", ")} open` : "with nothing open";
  page.text(0, `What is live ${open}, ${answer.asked}`, (line) => page.paint.bold(line));
  if (answer.incomplete) page.text(2, incompleteText);
  for (const { where, arrivals } of answer.places) {
    page.text(2, where.join(", "));
    for (const { text } of arrivals) page.text(6, text);
  }
  if (answer.places.length === 0) page.text(2, "Nothing that is written here feeds anything.");
  if (answer.dead.length > 0) {
    page.line();
    page.text(
      0,
      answer.incomplete ? "Reached by nothing in what could be read" : "Reached by nothing: dead if wired as written",
      (line) => page.paint.bold(line),
    );
    page.text(2, answer.dead.join(", "));
  }
  writeNotCounted(page, "Traced as closed all the same", answer.notCounted);
  writeList(
    page,
    "Goes on without the grid",
    answer.goesOn.map(({ text }) => text),
  );
  writeList(
    page,
    "Neutral and earth",
    answer.neutralEarth.map(({ text }) => text),
  );
  writeCautions(page, answer.cautions);
  return page.toString();
}

/** How to make a thing dead, for people. */
export function isolateText(answer: IsolateAnswer, options: PageOptions): string {
  const page = new Page(options);
  writeHead(page, answer);
  page.text(0, answer.open, (line) => page.paint.bold(line));
  if (answer.incomplete) page.text(2, incompleteText);
  const others = "Open instead, for the same";
  writeList(page, answer.complete ? others : `${others} (there are more such sets)`, answer.instead);
  page.line();
  for (const { text } of answer.order) page.text(0, text);
  for (const { text } of answer.waits) page.text(0, text);
  writeList(page, "Stays live", answer.stillLive);
  writeList(page, "Parts it from what has no source in this text; open these as well", answer.besides);
  writeNotCounted(page, "Does not count", answer.notCounted);
  writeCautions(page, answer.cautions);
  return page.toString();
}

const incompleteText =
  "The text has errors. What they touch is missing from the circuit, so nothing here may be taken for dead: see sunwright check.";

function writeHead(page: Page, { file, site, whatIf }: LiveAnswer | IsolateAnswer): void {
  page.line(page.paint.underline(printable(file)) + (site === undefined ? "" : `  ${printable(site)}`));
  for (const { text } of whatIf ?? []) page.text(2, `What if ${text}. No file says so.`);
  page.line();
}

function writeNotCounted(page: Page, title: string, list: readonly NotCounted[]): void {
  writeList(
    page,
    title,
    list.map(({ device, why }) => `${device}: ${why}`),
  );
}

function writeList(page: Page, title: string, lines: readonly string[]): void {
  if (lines.length === 0) return;
  page.line();
  page.text(0, title, (line) => page.paint.bold(line));
  for (const line of lines) page.text(2, line);
}

function writeCautions(page: Page, cautions: readonly string[]): void {
  page.line();
  for (const caution of cautions) page.text(0, caution, (line) => page.paint.dim(line));
}
