import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import type { Diagnostic } from "vscode-languageserver/node";
import { AssessmentMemory, assess } from "../../language-server/src/assessment/assess.js";
import { notices } from "../../language-server/src/assessment/notices.js";
import { createChunkParser } from "../../language-server/src/language/parser-module.js";
import { SourceFile } from "../../language-server/src/language/source-file.js";
import { designOf, jsonOf, lengthen, spoil } from "./design.js";
import { reportIsolation } from "./isolation.js";
import { reportRequests } from "./requests.js";
import { Session } from "./session.js";
import { digits, median, quantile, timed } from "./statistics.js";

/**
 * Measures what a user waits for: from a key to the diagnostics for it, through real pipes, on designs of three sizes;
 * beside it the same kind of edit in a JSON server, in the same run on the same machine.
 */

const sizes = [100, 1_000, 10_000];
const goals = { change: { 100: 5, 1000: 12, 10000: 80 } as Record<number, number>, cold: 400 };
/** What the edit gives: a string above its inverter's voltage. */
const tooLong = "string-voltage";
const here = fileURLToPath(new URL(".", import.meta.url));
const server = join(here, "..", "..", "language-server", "dist", "server.cjs");

interface Measured {
  readonly lines: number;
  readonly parse: number;
  readonly build: number;
  readonly change: number;
  readonly p95: number;
  readonly json: number;
  readonly jsonP95: number;
  readonly burst: number;
  readonly memory: number | undefined;
}

async function main(): Promise<void> {
  if (!existsSync(server)) throw new Error("The server is not built: run npm run build first");
  const folder = mkdtempSync(join(tmpdir(), "sunwright-bench-"));
  try {
    const json = await buildJsonServer(folder);
    const measured: Measured[] = [];
    for (const lines of sizes) measured.push(await measure(lines, json));
    const cold = await coldStart(server, designOf(100), "sunwright", false);
    const coldJson = await coldStart(json, jsonOf(100), "json", true);
    report(measured, cold, coldJson);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function buildJsonServer(folder: string): Promise<string> {
  const outfile = join(folder, "json-server.cjs");
  await build({
    entryPoints: [join(here, "json-server.ts")],
    outfile,
    bundle: true,
    minify: true,
    platform: "node",
    format: "cjs",
    mainFields: ["module", "main"],
    logLevel: "error",
  });
  return outfile;
}

async function measure(lines: number, json: string): Promise<Measured> {
  const text = designOf(lines);
  const session = await Session.open(server, "sunwright", text, false);
  const { offset, texts } = lengthen(text);
  const other = jsonOf(lines);
  const jsonSession = await Session.open(json, "json", other, true);
  const spoiled = spoil(other);

  // Turn about, so that whatever else the machine does meets both alike.
  const changes: number[] = [];
  const jsonChanges: number[] = [];
  const rounds = lines > 5_000 ? 150 : 600;
  for (let round = 0; round < rounds; round++) {
    const key = texts[round % 2]!;
    changes.push(await timed(() => session.edit(offset, key, (told) => tells(told, tooLong) === (round % 2 === 0))));
    const jsonKey = spoiled.texts[round % 2]!;
    jsonChanges.push(await timed(() => expectJson(jsonSession.editAndPull(spoiled.offset, jsonKey), round)));
  }
  const bursts: number[] = [];
  for (let round = 0; round < 15; round++) bursts.push(await burst(session, offset, texts));
  const memory = session.memory();
  await session.close();
  await jsonSession.close();

  const warm = (values: number[]) => values.slice(rounds / 3);
  return {
    lines,
    ...(await inProcess(text)),
    change: median(warm(changes)),
    p95: quantile(warm(changes), 0.95),
    json: median(warm(jsonChanges)),
    jsonP95: quantile(warm(jsonChanges), 0.95),
    burst: median(bursts),
    memory,
  };
}

/** The edit makes one problem come and go; a measurement in which it does not is none. */
async function expectJson(diagnostics: Promise<Diagnostic[]>, round: number): Promise<void> {
  const found = await diagnostics;
  if (found.length > 0 !== (round % 2 === 0))
    throw new Error(`The edit of round ${round} gave ${found.length} problems`);
}

function tells(diagnostics: readonly Diagnostic[], code: string): boolean {
  return diagnostics.some((diagnostic) => String(diagnostic.code) === code);
}

/** Twenty keys at once, until the diagnostics of the last one. */
async function burst(session: Session, offset: number, texts: readonly [string, string]): Promise<number> {
  const start = performance.now();
  // The last key makes the string too long as every second one does: all that is sent before the end is waited for.
  let last = 0;
  const settled = session.until((told) => last > 0 && tells(told, tooLong));
  for (let key = 0; key < 19; key++) void session.change(offset, texts[key % 2 === 0 ? 1 : 0]);
  const sent = session.change(offset, texts[0]);
  last = 1;
  await sent;
  await settled;
  const time = performance.now() - start;
  await session.edit(offset, texts[1], (told) => !tells(told, tooLong));
  return time;
}

/** Reading a text from scratch, and everything from text to notices, in a warm process. */
async function inProcess(text: string): Promise<{ parse: number; build: number }> {
  const parser = createChunkParser();
  const parses: number[] = [];
  const builds: number[] = [];
  for (let round = 0; round < 12; round++) {
    const file = new SourceFile("file:///bench.sun", parser);
    const parse = await timed(() => file.update(text));
    const rest = await timed(() => notices(assess([file], new AssessmentMemory())));
    parses.push(parse);
    builds.push(parse + rest);
  }
  return { parse: median(parses.slice(4)), build: median(builds.slice(4)) };
}

/** From starting the process to the first diagnostics of an opened file. */
async function coldStart(program: string, text: string, languageId: string, pull: boolean): Promise<number> {
  const times: number[] = [];
  for (let round = 0; round < 7; round++) {
    const start = performance.now();
    const session = await Session.open(program, languageId, text, pull);
    times.push(performance.now() - start);
    await session.close();
  }
  return median(times);
}

function report(measured: readonly Measured[], cold: number, coldJson: number): void {
  const rows = measured.map((row) => [
    String(row.lines),
    digits(row.parse),
    digits(row.build),
    digits(row.change),
    digits(row.p95),
    digits(row.json),
    digits(row.jsonP95),
    digits(row.change / row.json),
    digits(row.burst / row.change),
    digits(row.memory),
  ]);
  const heads = ["lines", "parse", "build", "change", "p95", "JSON", "JSON p95", "÷ JSON", "20 keys ÷ 1", "MB"];
  print([heads, ...rows]);
  console.log(
    "\nMilliseconds, medians. parse and build: from scratch, in a warm process. change: one character, from the",
  );
  console.log(
    "editor's message to the diagnostics for it, through pipes. JSON: the same in a JSON server, pull diagnostics.",
  );
  console.log(`Cold start to the first diagnostics: ${digits(cold)} ms (JSON ${digits(coldJson)} ms).\n`);

  // Ten times the lines may cost ten times the time, step by step; above 1 it grows faster than the design.
  const growth = Math.max(
    ...measured.slice(1).map((row, index) => {
      const smaller = measured[index]!;
      return row.change / smaller.change / (row.lines / smaller.lines);
    }),
  );
  const goalsMet: [string, boolean][] = [
    ...measured.map(({ lines, change }): [string, boolean] => [
      `${lines} lines: ${digits(change)} ms, goal ${goals.change[lines]} ms`,
      change < goals.change[lines]!,
    ]),
    ...measured.map(({ lines, change, json }): [string, boolean] => [
      `${lines} lines: ${digits(change / json)} of the JSON server's time`,
      change <= json,
    ]),
    [`growth of the change: ${digits(growth)} of linear, at the steepest step`, growth <= 1],
    [`cold start: ${digits(cold)} ms, goal ${goals.cold} ms`, cold < goals.cold],
  ];
  for (const [text, met] of goalsMet) console.log(`${met ? "met " : "MISS"}  ${text}`);
}

function print(rows: readonly (readonly string[])[]): void {
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
  for (const row of rows) console.log(row.map((cell, column) => cell.padStart(widths[column]!)).join("  "));
}

await main();
await reportRequests(server);
reportIsolation();
