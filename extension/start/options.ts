import { parseArgs } from "node:util";

export interface StartOptions {
  readonly mode: "browser" | "desktop" | "check" | "help";
  /** The user's own folder; a copy of the examples where none is given. */
  readonly folder?: string;
  readonly port?: number;
  /** Whether the address is opened where there is a display. */
  readonly opens: boolean;
}

export const help = `npm start [-- OPTIONS] [FOLDER]

Builds Sunwright, checks the example house, explains one finding, and opens VS Code in the browser with the
extension: on FOLDER, whose files it then edits, or on a copy of the examples.

  --check      only build and check, print and exit
  --desktop    open the VS Code that is installed here ("code" on the path) instead of the one in the browser
  --port N     serve on this port of 127.0.0.1 instead of a free one
  --no-open    print the address without opening it
  --help       this text`;

/** Reads the words after `npm start --`; throws an Error that says what is wrong with them. */
export function readOptions(words: readonly string[]): StartOptions {
  const { values, positionals } = parseArgs({
    args: [...words],
    allowPositionals: true,
    options: {
      check: { type: "boolean" },
      desktop: { type: "boolean" },
      help: { type: "boolean", short: "h" },
      "no-open": { type: "boolean" },
      port: { type: "string" },
    },
  });
  if (positionals.length > 1) throw new Error("One folder at most can be opened.");
  const port = values.port === undefined ? undefined : Number(values.port);
  if (port !== undefined && !(Number.isInteger(port) && port > 0 && port < 65_536))
    throw new Error(`"${values.port}" is no port: write a number from 1 to 65535.`);
  const mode = values.help ? "help" : values.check ? "check" : values.desktop ? "desktop" : "browser";
  return {
    mode,
    opens: !values["no-open"],
    ...(positionals[0] === undefined ? {} : { folder: positionals[0] }),
    ...(port === undefined ? {} : { port }),
  };
}
