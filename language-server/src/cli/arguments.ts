import cac from "cac";
import type { Mode } from "../circuit/modes.js";
import type { Severity } from "../design/model.js";
import type { Hypothesis } from "../design/what-if/hypothesis.js";
import { type DrawArguments, drawArguments } from "./draw-arguments.js";
import { allPaths, each, type Format, formatOf, hypotheses, oneOf, type Parsed, UsageError } from "./option-values.js";

export { UsageError } from "./option-values.js";

export interface CheckArguments {
  readonly command: "check";
  readonly paths: readonly string[];
  readonly format: Format;
  readonly showWorking: boolean;
  readonly assumptions: boolean;
  readonly failOn: Severity;
  readonly quiet: boolean;
  /** What is supposed otherwise than the text has it. */
  readonly suppose: readonly Hypothesis[];
}
export interface LiveArguments extends Partial<Mode> {
  readonly command: "live";
  readonly path: string;
  /** Names of the devices that are open. */
  readonly open: readonly string[];
  readonly format: Format;
  readonly suppose: readonly Hypothesis[];
}
export interface IsolateArguments {
  readonly command: "isolate";
  readonly path: string;
  readonly thing: string;
  readonly format: Format;
  readonly suppose: readonly Hypothesis[];
}
export interface DrillArguments {
  readonly command: "drill";
  readonly paths: readonly string[];
}
export interface FormatArguments {
  readonly command: "format";
  readonly paths: readonly string[];
  /** Say what is not formatted, and write nothing. */
  readonly isCheck: boolean;
}
export interface RulesArguments {
  readonly command: "rules";
  readonly id?: string;
}
/** `done`: help or version was asked for, and is printed. */
export type Arguments =
  | CheckArguments
  | DrillArguments
  | FormatArguments
  | LiveArguments
  | IsolateArguments
  | DrawArguments
  | RulesArguments
  | { readonly command: "done" };

const formatOption = ["--format <format>", "text for people, json for programs", { default: "text" }] as const;
const setOption = [
  "--set <what-if>",
  "Suppose something that the text does not say, and write nothing: --set S1.count=12 --set site.lowest-temperature='-15 degC'",
] as const;

const exits: Readonly<Record<string, string>> = {
  draw: "Exit code: 0 drawn, 2 wrong usage or input that cannot be read.",
  live: "Exit code: 0 answered, 1 answered from a text with errors, 2 wrong usage or input that cannot be read.",
  isolate:
    "Exit code: 0 where devices make all of it dead, 1 where some of it stays live or the text has errors, 2 wrong usage or input that cannot be read.",
};
const checkExits =
  "Exit code: 0 nothing found at or above --fail-on, 1 something found, 2 wrong usage or input that cannot be read.";

/**
 * The library takes a path behind `--show-working` for its value, because it knows a switch of two words only by its
 * joined name.
 */
function asSwitch(word: string): string {
  return word === "--show-working" ? "--showWorking" : word;
}

/** Reads the words behind the program's name. Throws `UsageError`. */
export function readArguments(words: readonly string[], version: string): Arguments {
  const cli = cac("sunwright");
  cli.version(version);
  cli.help((sections) => {
    // What the library prints after the commands is how to ask for more help on each: one line is enough.
    const kept = sections.filter(({ title }) => !title?.startsWith("For more info"));
    return [...kept, { body: exits[cli.matchedCommandName ?? ""] ?? checkExits }];
  });
  cli
    .command("check [...paths]", "Check designs: files, folders or patterns")
    .usage("check FILE|FOLDER|PATTERN … [options]")
    .option(...formatOption)
    .option("--show-working", "Show the sums, and every check that passed")
    .option("--assumptions", "List what was assumed, and why")
    .option("--fail-on <severity>", "Least severity that fails: error, warning or note", { default: "error" })
    .option("--quiet", "Print only what fails")
    .option(...setOption)
    .action((paths: string[], options) => checkArguments(paths, options));
  cli
    .command("drill [...paths]", "Hold training designs against their expect lines")
    .usage("drill FILE|FOLDER|PATTERN … [options]")
    .action(
      (paths: string[], options): DrillArguments => ({ command: "drill", paths: allPaths("drill", paths, options) }),
    );
  cli
    .command("format [...paths]", "Give files the one look of the language")
    .usage("format FILE|FOLDER|PATTERN … [--check]")
    .option("--check", "Write nothing; fail where something is not formatted")
    .action(
      (paths: string[], options): FormatArguments => ({
        command: "format",
        paths: allPaths("format", paths, options),
        isCheck: options.check === true,
      }),
    );
  cli
    .command("live [file]", "Say what is live with some devices open, in every mode")
    .usage("live FILE [--open Q1,Q3] [--mode grid|island] [--light day|night] [options]")
    .option("--open <devices>", "Names of the devices that are open, with commas between")
    .option("--mode <mode>", "Only with the grid, or only in an island: grid or island")
    .option("--light <light>", "Only by day or only by night: day or night")
    .option(...formatOption)
    .option(...setOption)
    .action((path: string | undefined, options) => liveArguments(path, options));
  cli
    .command("isolate [file] [item]", "Say which devices make an item or a run dead, and what stays live")
    .usage("isolate FILE ITEM [options]")
    .option(...formatOption)
    .option(...setOption)
    .action((path: string | undefined, thing: string | undefined, options) => isolateArguments(path, thing, options));
  cli
    .command("draw [file]", "Draw the single-line diagram of a design, or a chart")
    .usage("draw FILE [--as svg|pdf] [--chart NAME | --sheet N] [--out FILE] [options]")
    .option("--as <format>", "svg or pdf", { default: "svg" })
    .option("--chart <name>", "In place of the diagram: voltage:STRING, curve:TRACKER (curve:INV.pv1), margins or drop")
    .option("--irradiance <value>", 'For curve: --irradiance "800 W/m2"; standard test conditions without it')
    .option(
      "--cell-temperature <value>",
      'For curve: --cell-temperature="50 degC"; standard test conditions without it',
    )
    .option("--sheet <number>", "One of the A3 sheets that a large diagram takes; a PDF holds them all")
    .option("--theme <theme>", "light, dark or high-contrast", { default: "light" })
    .option("--out <file>", "The file to write; an SVG goes to the output without it")
    .option(...setOption)
    .action((path: string | undefined, options) => drawArguments(path, options));
  cli
    .command("rules [id]", "List the rules, or explain one")
    .action((id?: string): RulesArguments => ({ command: "rules", id }));

  const { options } = cli.parse(["", "", ...words.map(asSwitch)], { run: false });
  if (options.help || options.version) return { command: "done" };
  if (!cli.matchedCommand) {
    const [first] = words;
    throw new UsageError(
      first === undefined || first.startsWith("-")
        ? "Say what to do: check, drill, format, live, isolate, draw or rules."
        : `There is no command ${first}. There are check, drill, format, live, isolate, draw and rules.`,
    );
  }
  try {
    return cli.runMatchedCommand() as Arguments;
  } catch (error) {
    if (error instanceof UsageError || !(error instanceof Error)) throw error;
    throw new UsageError(inPlainWords(error.message, cli.matchedCommand.name));
  }
}

function checkArguments(paths: readonly string[], options: Parsed): CheckArguments {
  return {
    command: "check",
    paths: allPaths("check", paths, options),
    format: formatOf(options),
    showWorking: options.showWorking === true,
    assumptions: options.assumptions === true,
    failOn: oneOf("--fail-on", options.failOn, ["error", "warning", "note"]),
    quiet: options.quiet === true,
    suppose: hypotheses(options),
  };
}

function liveArguments(path: string | undefined, options: Parsed): LiveArguments {
  if (path === undefined) throw new UsageError("live needs a file: live FILE --open Q1,Q3.");
  const { open, mode, light } = options;
  return {
    command: "live",
    path,
    open: each(open).flatMap((names) =>
      names
        .split(",")
        .map((name) => name.trim())
        .filter(Boolean),
    ),
    ...(mode !== undefined && { supply: oneOf("--mode", mode, ["grid", "island"] as const) }),
    ...(light !== undefined && { light: oneOf("--light", light, ["day", "night"] as const) }),
    format: formatOf(options),
    suppose: hypotheses(options),
  };
}

function isolateArguments(path: string | undefined, thing: string | undefined, options: Parsed): IsolateArguments {
  if (path === undefined || thing === undefined)
    throw new UsageError("isolate needs a file and an item or run in it: isolate FILE INV.");
  return { command: "isolate", path, thing, format: formatOf(options), suppose: hypotheses(options) };
}

/** The argument library's own messages name options as its code does, and do not say what to do. */
function inPlainWords(message: string, command: string): string {
  const written = message.replace(/[A-Z]/g, (letter, at: number) => (at === 0 ? letter : `-${letter.toLowerCase()}`));
  return `${written}. See sunwright ${command} --help.`;
}
