import { existsSync, readFileSync } from "node:fs";
import { describe, test } from "vitest";

/**
 * Published tables that are kept beside the repository, not in it. Where they are absent the checks against them are
 * skipped, and that is said aloud: a skipped comparison must not look like one that held.
 */
const folder = new URL("../../../shared/values/", import.meta.url);

function whereKept(file: string, check: (text: string) => void): void {
  const url = new URL(file, folder);
  if (existsSync(url)) {
    check(readFileSync(url, "utf8"));
    return;
  }
  const message = `NOT COMPARED: ../shared/values/${file} is not on this machine`;
  console.warn(message);
  test.skip(message, () => undefined);
}

/** Runs `check` on a published JSON table. Its tests are grouped under the table's name. */
// biome-ignore lint/suspicious/noExplicitAny: the shapes of published tables differ from table to table
export function withJson(file: string, check: (values: any) => void): void {
  describe(file, () => whereKept(file, (text) => check(JSON.parse(text))));
}

export type Row = Readonly<Record<string, string>>;

/** Runs `check` on the rows of a published CSV table, by column name. */
export function withCsv(file: string, check: (rows: readonly Row[]) => void): void {
  describe(file, () =>
    whereKept(file, (text) => {
      const [head = [], ...lines] = text.trim().split(/\r?\n/).map(cells);
      check(lines.map((line) => Object.fromEntries(head.map((name, index) => [name, line[index] ?? ""]))));
    }),
  );
}

function cells(line: string): string[] {
  return [...line.matchAll(/("[^"]*"|[^,]*)(?:,|$)/g)].map(([, cell = ""]) => cell.replaceAll('"', ""));
}

/** Numbers of a row by column name. */
export function numbers(row: Row): (name: string) => number {
  return (name) => Number(row[name]);
}

/** How far a value is from the published one, as a ratio. */
export function off(value: number, published: number): number {
  return Math.abs(value / published - 1);
}
