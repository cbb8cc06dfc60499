import { describe, expect, test } from "vitest";
import type { Assessment } from "../../language-server/src/assessment/assessment.js";
import type { Refactoring } from "../../language-server/src/editor/refactor/refactoring.js";
import { refactoringsAt } from "../../language-server/src/editor/refactor/refactorings.js";
import { format } from "../../language-server/src/format/format.js";
import { absolute } from "../../language-server/src/place.js";
import { designs } from "../examples/examples.js";
import { filesOf } from "./example-files.js";
import { errors, outcomes, textsAfter } from "./refactored.js";
import { TestWorkspace, uriOf } from "./workspace.js";

/** Every refactoring of everything that is declared in a design's own file. */
function* all(workspace: TestWorkspace, uri: string): Generator<Refactoring> {
  for (const { declarations } of workspace.fragments(uri))
    for (const declaration of declarations) {
      if (!("namePlace" in declaration)) continue;
      const { start } = absolute(declaration.namePlace);
      const found = refactoringsAt(workspace.view, uri, start, start, { isWanted: () => true, canCreate: true });
      const [move] = found.filter(({ kind, creates }) => kind === "refactor.move" && !creates);
      // One file that takes a declaration is like another; the exercises are short, and of one make.
      for (const each of found) if (each.kind !== "refactor.move" || each === move) yield each;
    }
}

/** Everything that is named in what changes, and every array that any of it belongs to. */
function touchedBy({ changes }: Refactoring, { zones, plants }: Assessment): Set<string> {
  const words = changes.flatMap(({ text }) => text.match(/[\p{L}_][\p{L}\p{N}_.-]*/gu) ?? []);
  const touched = new Set(words.flatMap((word) => [word, ...word.split("."), word.replace(/\.[^.]*$/, "")]));
  for (const { battery, path } of plants.flatMap(({ batteries }) => batteries))
    if (path?.hops.some(({ by }) => touched.has(by.id))) touched.add(battery.id);
  for (const { arrays, inverter } of zones)
    for (const { strings, runs, devices, surge, tracker } of arrays) {
      const own = [
        ...strings.map(({ string }) => string),
        ...runs.keys(),
        ...devices.keys(),
        ...surge.map(({ spd }) => spd),
      ];
      const leads = surge.flatMap(({ run }) => (run ? [run] : []));
      if (!own.some(({ id }) => touched.has(id))) continue;
      for (const { id } of [...own, ...leads, tracker, inverter].flatMap((each) => each ?? [])) touched.add(id);
    }
  return touched;
}

/** Of strings in parallel the later in the text is compared with the earlier: what moves changes which that is. */
function whichever(lines: readonly string[]): string[] {
  return lines.map((line) => line.replace(/^(parallel-mismatch) on \S+:/, "$1:")).sort();
}

/** Rules that ask about the whole of a way, or of all arrays of an inverter: a device or a cable on it is their matter. */
const ofWays = /^(isolation-incomplete|ac-isolator|reading-loop|surge-needed) /;

function ofOthers(lines: readonly string[], touched: ReadonlySet<string>): string[] {
  return lines.filter((line) => !ofWays.test(line) && !touched.has(/ on (\S+): /.exec(line)?.[1] ?? ""));
}

function formatted(workspace: TestWorkspace, uri: string): string {
  return format(workspace.text(uri)!, workspace.fragments(uri)).text;
}

describe("whatever is offered can be done: no new error, nothing unformatted, what it leaves alone judged as before", () => {
  test.each(designs.map((name) => [name]))("%s", (name) => {
    const texts = filesOf(name);
    const workspace = new TestWorkspace(texts);
    const other = new TestWorkspace(texts);
    const uri = uriOf(name);
    const before = workspace.view.assessment(uri);
    const errorsBefore = new Set(errors(before));
    const outcomesBefore = outcomes(before);
    const wasFormatted = formatted(workspace, uri) === workspace.text(uri);
    let number = 0;
    for (const refactoring of all(workspace, uri)) {
      number++;
      const { title, kind } = refactoring;
      const after = textsAfter(workspace, refactoring);
      for (const [file, text] of after) other.write(file.slice(uriOf("").length), text);
      const assessment = other.view.assessment(uri);
      expect(
        errors(assessment).filter((error) => !errorsBefore.has(error)),
        title,
      ).toEqual([]);
      if (wasFormatted) expect(formatted(other, uri), `${title}: is formatted`).toBe(other.text(uri));
      if (kind === "refactor.rewrite") {
        const touched = touchedBy(refactoring, assessment);
        expect(ofOthers(outcomes(assessment), touched), title).toEqual(ofOthers(outcomesBefore, touched));
      } else {
        expect(whichever(outcomes(assessment)), title).toEqual(whichever(outcomesBefore));
      }
      for (const file of after.keys()) {
        const known = file.slice(uriOf("").length);
        other.write(known, texts[known] ?? "");
      }
    }
    expect(number).toBeGreaterThan(0);
  });
});
