import { Uri, workspace } from "vscode";
import "mocha/mocha.js";
import { isOpen, place } from "./place";
import { resultsFile, type TestResult } from "./results.js";
import { until } from "./until";

/** Runs the tests of some modules in the extension host and leaves their results in the workspace; rejects where one failed. */
export async function runAll(modules: readonly (() => void)[]): Promise<void> {
  // A workspace file that is on no disk is read by an extension, so its folders come later.
  if (isOpen) await until("the workspace has its folders", () => (workspace.workspaceFolders ?? []).length > 0);
  const mocha = new Mocha({
    reporter: Quiet as unknown as Mocha.ReporterConstructor,
    timeout: 60_000,
    slow: 10_000,
    retries: 1,
    // What is broken for good, as a server that is gone, would cost every later test its whole time.
    bail: true,
  });
  // Gives the modules "describe" and "it"; what Mocha does by itself reads files, or a page's address.
  mocha.suite.emit("pre-require", globalThis, "", mocha);
  for (const load of modules) load();
  const results: TestResult[] = [];
  const failures = await new Promise<number>((resolve) => {
    const runner = mocha.run(resolve);
    const keep = (test: Mocha.Test, state: TestResult["state"], note?: string) =>
      results.push({ title: test.fullTitle(), state, ms: test.duration ?? 0, ...(note ? { note } : {}) });
    runner.on("pass", (test) => keep(test, "passed", notes.get(test.fullTitle())?.join("; ")));
    runner.on("pending", (test) => keep(test, "skipped", notes.get(test.fullTitle())?.join("; ")));
    // Keys and pictures go through a whole browser: a test has a second try, and it is told that it took one.
    runner.on("retry", (test, error) =>
      keepNote(test.fullTitle(), `this was the second try; the first: ${error.message}`),
    );
    runner.on("fail", (test, error) => {
      const said = notes.get(test.fullTitle()) ?? [];
      keep(test as Mocha.Test, "failed", [error.stack ?? error.message, ...said].join("\n"));
    });
  });
  const file = Uri.joinPath(place, resultsFile);
  await workspace.fs.writeFile(file, new TextEncoder().encode(JSON.stringify(results)));
  if (failures > 0) throw new Error(`${failures} of ${results.length} tests failed`);
}

/** What tests say beside passing or not: measurements, and why they were left out. */
const notes = new Map<string, string[]>();

export function note(test: Mocha.Context, text: string): void {
  keepNote(test.test!.fullTitle(), text);
}

function keepNote(title: string, text: string): void {
  notes.set(title, [...(notes.get(title) ?? []), text]);
}

/** Leaves a test out, with the reason printed. */
export function leaveOut(test: Mocha.Context, why: string): never {
  note(test, why);
  return test.skip();
}

/** Prints nothing: that is done outside, for all hosts alike. */
class Quiet {}
