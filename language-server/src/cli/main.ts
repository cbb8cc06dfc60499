import packageInfo from "../../package.json" with { type: "json" };
import { drill, isPassed } from "../assessment/drill.js";
import {
  type CheckArguments,
  type DrillArguments,
  type RulesArguments,
  readArguments,
  UsageError,
} from "./arguments.js";
import { assessAll } from "./assess-all.js";
import { findFiles } from "./inputs.js";
import { readFiles } from "./read.js";
import { buildReport, type Checked } from "./report/build.js";
import type { Locator } from "./report/locate.js";
import { notices } from "./report/notices.js";
import type { Unreadable } from "./report/report.js";
import { checkText, fails } from "./text/check-text.js";
import { type Drilled, drillText } from "./text/drill-text.js";
import { type PageOptions, printable } from "./text/page.js";
import { rulesText, ruleText, unknownRuleText } from "./text/rules-text.js";

/** What the program is run in: a terminal, or a test. */
export interface Surroundings {
  readonly folder: string;
  readonly page: PageOptions;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

export const exitCodes = { clean: 0, found: 1, unusable: 2 } as const;
export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];

/** Runs the command line. Never throws for anything a user can do. */
export async function main(words: readonly string[], around: Surroundings): Promise<ExitCode> {
  try {
    const wanted = readArguments(words, packageInfo.version);
    switch (wanted.command) {
      case "check":
        return await runCheck(wanted, around);
      case "drill":
        return await runDrill(wanted, around);
      case "rules":
        return runRules(wanted, around);
      case "done":
        return exitCodes.clean;
    }
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    around.err(`${error.message}\n`);
    return exitCodes.unusable;
  }
}

async function runCheck(wanted: CheckArguments, around: Surroundings): Promise<ExitCode> {
  const { checked, unreadable, locator } = await assessed(wanted.paths, around);
  const report = buildReport(checked, unreadable, packageInfo.version, locator, { workings: wanted.showWorking });
  if (wanted.format === "json") around.out(`${JSON.stringify(report, undefined, 2)}\n`);
  else if (report.files.length > 0) around.out(checkText(report, { ...wanted, ...around.page }));
  if (unreadable.length > 0) return exitCodes.unusable;
  return notices(report.files).some((notice) => fails(notice, wanted.failOn)) ? exitCodes.found : exitCodes.clean;
}

async function runDrill(wanted: DrillArguments, around: Surroundings): Promise<ExitCode> {
  const { checked, unreadable, locator } = await assessed(wanted.paths, around);
  const drilled = checked
    .map(({ assessment, isDesign }) => ({
      file: locator.name(assessment.design.entry),
      drill: drill(assessment),
      isDesign,
    }))
    .filter((each) => each.isDesign || !isPassed(each.drill));
  if (drilled.length > 0) around.out(drillText(drilled, locator, around.page));
  else if (unreadable.length === 0) throw new UsageError("There is no design among these files, only parts.");
  if (unreadable.length > 0) return exitCodes.unusable;
  return drilled.every((each: Drilled) => isPassed(each.drill)) ? exitCodes.clean : exitCodes.found;
}

function runRules({ id }: RulesArguments, around: Surroundings): ExitCode {
  const text = id === undefined ? rulesText(around.page) : ruleText(id, around.page);
  if (text === undefined) throw new UsageError(unknownRuleText(id!));
  around.out(text);
  return exitCodes.clean;
}

interface Assessed {
  readonly checked: readonly Checked[];
  readonly unreadable: readonly Unreadable[];
  readonly locator: Locator;
}

/** Reads and assesses what was asked for, and says on the error stream what could not be. */
async function assessed(paths: readonly string[], around: Surroundings): Promise<Assessed> {
  const inputs = await findFiles(paths, around.folder);
  const { project, asked, unreadable, locator } = readFiles(inputs.files, around.folder);
  const { checked, failed } = assessAll(project, asked);
  const faults = failed.map(({ uri, error }): Unreadable => {
    const file = locator.name(uri);
    return { file, message: `${file} could not be checked: there is a fault in sunwright itself (${String(error)}).` };
  });
  const all = [...inputs.unreadable, ...unreadable, ...faults];
  for (const { message } of all) around.err(`${printable(message)}\n`);
  return { checked, unreadable: all, locator };
}
