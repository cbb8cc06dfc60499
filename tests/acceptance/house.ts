import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { URI } from "vscode-uri";
import type { Assessment, Check, Departed } from "../../language-server/src/assessment/assessment.js";
import { assessAll } from "../../language-server/src/cli/assess-all.js";
import { readFiles } from "../../language-server/src/cli/read.js";
import { label } from "../../language-server/src/design/facts.js";
import type { Item } from "../../language-server/src/design/things.js";
import { readHypothesis } from "../../language-server/src/design/what-if/hypothesis.js";
import { Overlay } from "../../language-server/src/design/what-if/overlay.js";
import { formatFigure } from "../../language-server/src/physics/working.js";
import type { Finding, NotChecked, Pass } from "../../language-server/src/rules/rule.js";

/** The reference house, assessed as the command line and the editor assess it, and ways to ask about it. */
const path = join(dirname(fileURLToPath(import.meta.url)), "reference-house.sun");

/** The house as written, or as some change of its text makes it; with suppositions, as `--set` lays them over it. */
export function house(change: (text: string) => string = (text) => text, ...suppose: readonly string[]): House {
  const { project, asked } = readFiles([path], dirname(path));
  const text = readFileSync(path, "utf8");
  const changed = change(text);
  project.update(URI.file(path).toString(), changed);
  const overlay = suppose.length > 0 ? new Overlay(suppose.map(hypothesis)) : undefined;
  const [checked] = assessAll(project, asked, undefined, overlay);
  if (!checked) throw new Error("the reference house could not be read");
  return new House(checked.assessment);
}

/** The house with something supposed, its text untouched. */
export const whatIf = (...suppose: readonly string[]): House => house(undefined, ...suppose);

function hypothesis(text: string) {
  const read = readHypothesis(text);
  if (typeof read === "string") throw new Error(read);
  return read;
}

export class House {
  constructor(readonly assessment: Assessment) {
    const wrong = assessment.problems.filter(({ severity }) => severity === "error");
    if (wrong.length > 0) throw new Error(wrong.map(({ message }) => message).join("\n"));
  }

  item(name: string): Item {
    const resolved = this.assessment.design.names.resolve({ path: name.split(".") });
    if (resolved.is !== "item") throw new Error(`no item ${name}`);
    return resolved.item;
  }

  private outcomes<Word extends Check["outcome"]["outcome"]>(rule: string, thing: string, word: Word) {
    return this.assessment.checks
      .filter((check) => check.rule.id === rule && label(check.thing) === thing && check.outcome.outcome === word)
      .map(({ outcome }) => outcome as Extract<Check["outcome"], { outcome: Word }>);
  }

  /** What is found of a rule on a thing, the sentences that say what. */
  found(rule: string, thing: string): string[] {
    return this.findings(rule, thing).map(({ what }) => what);
  }

  findings(rule: string, thing: string): Finding[] {
    return this.outcomes(rule, thing, "finding");
  }

  /** Findings that the design answers for in writing. */
  departures(rule: string, thing: string): Departed[] {
    return this.outcomes(rule, thing, "departure");
  }

  /** `value / limit` of each comparison that passed, by what it was held against. */
  passed(rule: string, thing: string): Record<string, string> {
    return Object.fromEntries(
      this.outcomes(rule, thing, "pass").map(({ against, value, limit }: Pass) => [
        against ?? "",
        value && limit ? `${formatFigure(value)} / ${formatFigure(limit)}` : "holds",
      ]),
    );
  }

  pass(rule: string, thing: string, against: string): Pass {
    const found = this.outcomes(rule, thing, "pass").find((each) => each.against === against);
    if (!found) throw new Error(`${rule} on ${thing} has no pass against ${against}`);
    return found;
  }

  /** Properties that a check lacks, as `Q5.power-flow`; a reason in brackets where no property could say it. */
  unknown(rule: string, thing: string): string[] {
    return this.outcomes(rule, thing, "not-checked").flatMap(({ missing, reason }: NotChecked) =>
      missing.length > 0 ? missing.map((each) => `${label(each.thing)}.${each.property}`) : [`(${reason})`],
    );
  }
}
