import packageInfo from "../../package.json" with { type: "json" };
import type { Assessment } from "../assessment/assessment.js";
import { findTarget } from "../design/find-thing.js";
import type { Item, Run } from "../design/things.js";
import type { Hypothesis } from "../design/what-if/hypothesis.js";
import { isolationReport } from "../isolation/isolation-report.js";
import { liveReport } from "../isolation/live-report.js";
import { type IsolateArguments, type LiveArguments, UsageError } from "./arguments.js";
import { begin } from "./begin.js";
import { Refusals } from "./refusals.js";
import type { Checked } from "./report/build.js";
import { isolateAnswer, liveAnswer } from "./report/switching.js";
import { type ExitCode, exitCodes, type Surroundings } from "./surroundings.js";
import { isolateText, liveText } from "./text/switching-text.js";

/** `sunwright live`: 0 answered, 1 answered from a text with errors, 2 not answered. */
export async function runLive(wanted: LiveArguments, around: Surroundings): Promise<ExitCode> {
  const design = await oneDesign(wanted, around);
  if (!design) return exitCodes.unusable;
  const open = wanted.open.map((name) => itemOf(design, name));
  const report = liveReport(design.assessment, { open, supply: wanted.supply, light: wanted.light });
  const answer = liveAnswer(design, packageInfo.version, report);
  if (wanted.format === "json") around.out(`${JSON.stringify(answer, undefined, 2)}\n`);
  else around.out(liveText(answer, around.page));
  return report.incomplete ? exitCodes.found : exitCodes.clean;
}

/** `sunwright isolate`: 0 where a set makes all of it dead, 1 where some of it stays live or the text has errors. */
export async function runIsolate(wanted: IsolateArguments, around: Surroundings): Promise<ExitCode> {
  const design = await oneDesign(wanted, around);
  if (!design) return exitCodes.unusable;
  const report = isolationReport(design.assessment, thingOf(design, wanted.thing));
  const answer = isolateAnswer(design, packageInfo.version, report);
  if (wanted.format === "json") around.out(`${JSON.stringify(answer, undefined, 2)}\n`);
  else around.out(isolateText(answer, around.page));
  const canBeDead = report.sets.length > 0 && report.staysLive.length === 0;
  return canBeDead && !report.incomplete ? exitCodes.clean : exitCodes.found;
}

/** A design with the name that its file is known by. */
export interface NamedDesign {
  readonly file: string;
  readonly assessment: Assessment;
}

/** The one design that a path means; undefined where something could not be read, which is then told. */
export async function oneDesign(
  { path, suppose, command }: { path: string; suppose: readonly Hypothesis[]; command: string },
  around: Surroundings,
): Promise<NamedDesign | undefined> {
  const { designs, unreadable, locator } = await begin([path], around, suppose);
  const found: Checked[] = [];
  const refusals = new Refusals();
  for (const checked of designs) {
    if (!checked.isDesign) continue;
    refusals.add(checked.assessment);
    found.push(checked);
  }
  if (unreadable.length > 0) return undefined;
  const named = found.map(({ assessment }) => ({ file: locator.name(assessment.design.entry), assessment }));
  const [only, ...others] = named;
  if (!only) throw new UsageError(`There is no design in ${path}, only parts.`);
  if (others.length > 0)
    throw new UsageError(`${command} looks at one design. There are ${named.map(({ file }) => file).join(", ")}.`);
  refusals.check();
  return only;
}

function thingOf({ file, assessment }: NamedDesign, name: string): Item | Run {
  const target = findTarget(assessment.design, name.split("."));
  if (typeof target === "string") throw new UsageError(`${file}: ${target}`);
  const { thing } = target;
  if (thing?.is !== "item" && thing?.is !== "run")
    throw new UsageError(`${file}: ${name} is on a part's sheet. Name an item or a run.`);
  return thing;
}

function itemOf(design: NamedDesign, name: string): Item {
  const thing = thingOf(design, name);
  if (thing.is === "run") throw new UsageError(`${design.file}: ${name} is a run and cannot be opened. Name a device.`);
  return thing;
}
