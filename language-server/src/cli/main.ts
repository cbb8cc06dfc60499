import packageInfo from "../../package.json" with { type: "json" };
import { drill, isPassed } from "../assessment/drill.js";
import {
  type CheckArguments,
  type DrillArguments,
  type RulesArguments,
  readArguments,
  UsageError,
} from "./arguments.js";
import { begin } from "./begin.js";
import { runDraw } from "./draw.js";
import { runFormat } from "./format.js";
import { Refusals } from "./refusals.js";
import { ReportBuilder } from "./report/build.js";
import { notices } from "./report/notices.js";
import { type ExitCode, exitCodes, type Surroundings } from "./surroundings.js";
import { runIsolate, runLive } from "./switching.js";
import { checkText, fails } from "./text/check-text.js";
import { type Drilled, drillText } from "./text/drill-text.js";
import { rulesText, ruleText, unknownRuleText } from "./text/rules-text.js";

/** Runs the command line. Never throws for anything a user can do. */
export async function main(words: readonly string[], around: Surroundings): Promise<ExitCode> {
  try {
    const wanted = readArguments(words, packageInfo.version);
    switch (wanted.command) {
      case "check":
        return await runCheck(wanted, around);
      case "drill":
        return await runDrill(wanted, around);
      case "format":
        return await runFormat(wanted, around);
      case "live":
        return await runLive(wanted, around);
      case "isolate":
        return await runIsolate(wanted, around);
      case "draw":
        return await runDraw(wanted, around);
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
  const work = await begin(wanted.paths, around, wanted.suppose);
  const builder = new ReportBuilder(
    work.locator,
    { workings: wanted.showWorking, severities: work.severities },
    wanted.suppose,
  );
  const refusals = new Refusals();
  for (const checked of work.designs) {
    refusals.add(checked.assessment);
    builder.add(checked);
  }
  refusals.check();
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
