import cac from "cac";
import type { Severity } from "../design/model.js";

/** A mistake in how the command was called: the message says what is wrong and what to write. */
export class UsageError extends Error {}

export interface CheckArguments {
  readonly command: "check";
  readonly paths: readonly string[];
  readonly format: "text" | "json";
  readonly showWorking: boolean;
  readonly assumptions: boolean;
  readonly failOn: Severity;
  readonly quiet: boolean;
}
export interface DrillArguments {
  readonly command: "drill";
  readonly paths: readonly string[];
}
export interface RulesArguments {
  readonly command: "rules";
  readonly id?: string;
}
/** `done`: help or version was asked for, and is printed. */
export type Arguments = CheckArguments | DrillArguments | RulesArguments | { readonly command: "done" };

const exits = `Exit code: 0 nothing found at or above --fail-on, 1 something found, 2 wrong usage or input that cannot be read.`;

/** Reads the words behind the program's name. Throws `UsageError`. */
export function readArguments(words: readonly string[], version: string): Arguments {
  const cli = cac("sunwright");
  cli.version(version);
  cli.help((sections) => {
    // What the library prints after the commands is how to ask for more help on each: one line is enough.
    const kept = sections.filter(({ title }) => !title?.startsWith("For more info"));
    return [...kept, { body: exits }];
  });
  cli
    .command("check [...paths]", "Check designs: files, folders or patterns")
    .usage("check FILE|FOLDER|PATTERN … [options]")
    .option("--format <format>", "text for people, json for programs", { default: "text" })
    .option("--show-working", "Show the sums, and every check that passed")
    .option("--assumptions", "List what was assumed, and why")
    .option("--fail-on <severity>", "Least severity that fails: error, warning or note", { default: "error" })
    .option("--quiet", "Print only what fails")
    .action((paths: string[], options) => checkArguments(paths, options));
  cli
    .command("drill [...paths]", "Hold training designs against their expect lines")
    .usage("drill FILE|FOLDER|PATTERN … [options]")
    .action(
      (paths: string[], options): DrillArguments => ({ command: "drill", paths: allPaths("drill", paths, options) }),
    );
  cli
    .command("rules [id]", "List the rules, or explain one")
    .action((id?: string): RulesArguments => ({ command: "rules", id }));

  const { options } = cli.parse(["", "", ...words], { run: false });
  if (options.help || options.version) return { command: "done" };
  if (!cli.matchedCommand) {
    const [first] = words;
    throw new UsageError(
      first === undefined || first.startsWith("-")
        ? "Say what to do: check, drill or rules."
        : `There is no command ${first}. There are check, drill and rules.`,
    );
  }
  try {
    return cli.runMatchedCommand() as Arguments;
  } catch (error) {
    if (error instanceof UsageError || !(error instanceof Error)) throw error;
    throw new UsageError(inPlainWords(error.message, cli.matchedCommand.name));
  }
}

interface Parsed {
  readonly [name: string]: unknown;
}

function checkArguments(paths: readonly string[], options: Parsed): CheckArguments {
  return {
    command: "check",
    paths: allPaths("check", paths, options),
    format: oneOf("--format", options.format, ["text", "json"]),
    showWorking: options.showWorking === true,
    assumptions: options.assumptions === true,
    failOn: oneOf("--fail-on", options.failOn, ["error", "warning", "note"]),
    quiet: options.quiet === true,
  };
}

/** What stands behind `--` is a path even where it begins with a dash. */
function allPaths(command: string, paths: readonly string[], options: Parsed): string[] {
  const behind = Array.isArray(options["--"]) ? options["--"] : [];
  const all = [...paths, ...behind].map(String);
  if (all.length === 0) throw new UsageError(`${command} needs at least one file, folder or pattern.`);
  return all;
}

function oneOf<Word extends string>(option: string, value: unknown, words: readonly Word[]): Word {
  const found = words.find((word) => word === value);
  if (found) return found;
  const given = Array.isArray(value) ? `is written ${value.length} times` : `cannot be ${String(value)}`;
  throw new UsageError(`${option} ${given}. It is one of ${words.join(", ")}.`);
}

/** The argument library's own messages name options as its code does, and do not say what to do. */
function inPlainWords(message: string, command: string): string {
  const written = message.replace(/[A-Z]/g, (letter, at: number) => (at === 0 ? letter : `-${letter.toLowerCase()}`));
  return `${written}. See sunwright ${command} --help.`;
}
