import { type Hypothesis, readHypothesis } from "../design/what-if/hypothesis.js";

/** A mistake in how the command was called: the message says what is wrong and what to write. */
export class UsageError extends Error {}

export type Format = "text" | "json";

/** Options as the argument library hands them over. */
export interface Parsed {
  readonly [name: string]: unknown;
}

export function one(option: string, value: unknown): string {
  if (Array.isArray(value)) throw new UsageError(`${option} is written ${value.length} times. Write it once.`);
  return String(value);
}

export function formatOf({ format }: Parsed): Format {
  return oneOf("--format", format, ["text", "json"]);
}

/** What `--set` supposes; each time it is written it supposes one thing more. */
export function hypotheses({ set }: Parsed): Hypothesis[] {
  const read = each(set).map((text) => {
    const hypothesis = readHypothesis(text);
    if (typeof hypothesis === "string") throw new UsageError(`--set: ${hypothesis}`);
    return hypothesis;
  });
  const seen = new Set<string>();
  for (const { target, property } of read) {
    const key = [...target, property].join(".");
    if (seen.has(key)) throw new UsageError(`--set: ${key} is supposed twice. Suppose one value at a time.`);
    seen.add(key);
  }
  return read;
}

export function each(value: unknown): string[] {
  if (value === undefined) return [];
  return (Array.isArray(value) ? value : [value]).map(String);
}

/** What stands behind `--` is a path even where it begins with a dash. */
export function allPaths(command: string, paths: readonly string[], options: Parsed): string[] {
  const behind = Array.isArray(options["--"]) ? options["--"] : [];
  const all = [...paths, ...behind].map(String);
  if (all.length === 0) throw new UsageError(`${command} needs at least one file, folder or pattern.`);
  return all;
}

export function oneOf<Word extends string>(option: string, value: unknown, words: readonly Word[]): Word {
  const found = words.find((word) => word === value);
  if (found) return found;
  const given = Array.isArray(value) ? `is written ${value.length} times` : `cannot be ${String(value)}`;
  throw new UsageError(`${option} ${given}. It is one of ${words.join(", ")}.`);
}
