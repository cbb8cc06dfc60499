import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { AssessmentMemory, assess } from "../../language-server/src/assessment/assess.js";
import type { Assessment } from "../../language-server/src/assessment/assessment.js";
import { createChunkParser } from "../../language-server/src/language/parser-module.js";
import { SourceFile } from "../../language-server/src/language/source-file.js";
import { fixtureText } from "../rules/designs.js";
import { describeCheck } from "../rules/expectations.js";

/**
 * What an assessment remembers must never show: after any line is taken away or put back, the checks are those of an
 * assessment that remembers nothing. Tried on every fixture of the rules, line by line.
 */
const folder = fileURLToPath(new URL("../rules/fixtures", import.meta.url));
const parser = createChunkParser();

describe.each(readdirSync(folder))("%s", (ruleId) => {
  const names = readdirSync(`${folder}/${ruleId}`).filter((name) => name.endsWith(".sun"));
  test.each(names.map((name, index) => [name, index] as const))("%s", (name, index) => {
    const own = readFileSync(`${folder}/${ruleId}/${name}`, "utf8");
    const text = fixtureText(own);
    const file = new SourceFile("memory:///design.sun", parser);
    file.update(text);
    const whole = checksOf(assess([file]));
    const memory = new AssessmentMemory();
    assess([file], memory);
    for (const without of withoutEachLine(text, own, index)) {
      file.update(without);
      expect(checksOf(assess([file], memory))).toEqual(checksOf(assess([file])));
      file.update(text);
      expect(checksOf(assess([file], memory))).toEqual(whole);
    }
  });
});

function checksOf({ checks }: Assessment): string[] {
  return checks.map(describeCheck);
}

/** Of what all fixtures share, each takes another share of the lines away. */
const shares = 4;

/** Lines whose braces are closed: taking another one away would move what is inside what. */
function* withoutEachLine(text: string, own: string, turn: number): Generator<string> {
  const lines = text.split("\n");
  const ownFrom = lines.length - own.split("\n").length;
  for (const [index, line] of lines.entries()) {
    if (index < ownFrom && index % shares !== turn % shares) continue;
    if (line.trim() === "" || line.startsWith("//") || /[{}]/.test(line.replace(/\{[^{}]*\}/g, ""))) continue;
    yield [...lines.slice(0, index), ...lines.slice(index + 1)].join("\n");
  }
}
