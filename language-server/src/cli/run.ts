import { main } from "./main.js";
import { type ExitCode, exitCodes } from "./surroundings.js";
import type { PageOptions } from "./text/page.js";

/** Colours are for a terminal that shows them; a wish in the environment comes first. */
function page(): PageOptions {
  const { isTTY, columns } = process.stdout;
  const { NO_COLOR, FORCE_COLOR, TERM } = process.env;
  const wished = !["", "0", undefined].includes(FORCE_COLOR);
  return {
    colors: !NO_COLOR && (wished || (isTTY === true && TERM !== "dumb")),
    width: isTTY === true && columns > 0 ? Math.max(columns, 40) : Number.POSITIVE_INFINITY,
  };
}

/** For faults of the program itself; whatever a user can do wrong has a message of its own. */
function fault(error: unknown): ExitCode {
  const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
  process.stderr.write(`There is a fault in sunwright itself, and no result:\n${text}\n`);
  return exitCodes.unusable;
}

// A reader that has seen enough, as head does, closes the pipe: nothing is wrong then.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
  process.exit();
});

process.exitCode = await main(process.argv.slice(2), {
  folder: process.cwd(),
  page: page(),
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
}).catch(fault);
