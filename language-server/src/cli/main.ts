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
import { type Checked, ReportBuilder } from "./report/build.js";
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
  const work = await begin(wanted.paths, around);
  const builder = new ReportBuilder(work.locator, { workings: wanted.showWorking });
  for (const checked of work.designs) builder.add(checked);
  const report = builder.finish(work.unreadable, packageInfo.version);
  if (wanted.format === "json") around.out(`${JSON.stringify(report, undefined, 2)}\n`);
  else if (report.files.length > 0) around.out(checkText(report, { ...wanted, ...around.page }));
  if (work.unreadable.length > 0) return exitCodes.unusable;
  return notices(report.files).some((notice) => fails(notice, wanted.failOn)) ? exitCodes.found : exitCodes.clean;
}

async function runDrill(wanted: DrillArguments, around: Surroundings): Promise<ExitCode> {
  const { designs, unreadable, locator } = await begin(wanted.paths, around);
  const drilled: Drilled[] = [];
  for (const { assessment, isDesign } of designs) {
    const result = drill(assessment);
    if (isDesign || !isPassed(result)) drilled.push({ file: locator.name(assessment.design.entry), drill: result });
  }
  if (drilled.length > 0) around.out(drillText(drilled, locator, around.page));
  else if (unreadable.length === 0) throw new UsageError("There is no design among these files, only parts.");
  if (unreadable.length > 0) return exitCodes.unusable;
  return drilled.every((each) => isPassed(each.drill)) ? exitCodes.clean : exitCodes.found;
}

function runRules({ id }: RulesArguments, around: Surroundings): ExitCode {
  const text = id === undefined ? rulesText(around.page) : ruleText(id, around.page);
  if (text === undefined) throw new UsageError(unknownRuleText(id!));
  around.out(text);
  return exitCodes.clean;
}

interface Work {
  /** Assessed one by one, as they are asked for. */
  readonly designs: Iterable<Checked>;
  /** Complete once all designs have been asked for. */
  readonly unreadable: readonly Unreadable[];
  readonly locator: Locator;
}

/** Reads what was asked for, and says on the error stream what could not be read or assessed. */
async function begin(paths: readonly string[], around: Surroundings): Promise<Work> {
  const inputs = await findFiles(paths, around.folder);
  const files = readFiles(inputs.files, around.folder);
  const { project, asked, locator } = files;
  const unreadable: Unreadable[] = [];
  const tell = (told: Unreadable): void => {
    unreadable.push(told);
    around.err(`${printable(told.message)}\n`);
  };
  for (const told of [...inputs.unreadable, ...files.unreadable]) tell(told);
  const designs = assessAll(project, asked, (uri, error) => {
    const file = locator.name(uri);
    tell({ file, message: `${file} could not be checked: there is a fault in sunwright itself (${String(error)}).` });
  });
  return { designs, unreadable, locator };
}
