import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { onTestFinished } from "vitest";
import { main } from "../../language-server/src/cli/main.js";

/** The command line as it is built and run, in a process of its own. */

export const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const program = join(root, "language-server", "dist", "cli.mjs");

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

export interface Surroundings {
  readonly folder: string;
  readonly environment?: Readonly<Record<string, string>>;
  /** Number of the user to run as; the tests may be run by one who may read everything. */
  readonly user?: number;
}

export function sunwright(words: readonly string[], { folder, environment = {}, user }: Surroundings): Ran {
  if (!existsSync(program)) throw new Error("The command line is not built: npm run build -w language-server");
  const { status, stdout, stderr, error } = spawnSync(process.execPath, [program, ...words], {
    cwd: folder,
    encoding: "utf8",
    maxBuffer: 100e6,
    env: { PATH: process.env.PATH, ...environment },
    ...(user === undefined ? {} : { uid: user, gid: user }),
  });
  if (error) throw error;
  return { code: status, out: stdout, err: stderr };
}

/** The same in this process, for what does not hang on how the program is built: many times quicker. */
export async function sunwrightHere(
  words: readonly string[],
  folder: string,
  width = Number.POSITIVE_INFINITY,
): Promise<Ran> {
  const said = { out: "", err: "" };
  const code = await main(words, {
    folder,
    page: { colors: false, width },
    out: (text) => {
      said.out += text;
    },
    err: (text) => {
      said.err += text;
    },
  });
  return { code, ...said };
}

/** A folder with some files in it, gone when the test is over. Names may have folders in them. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = mkdtempSync(join(tmpdir(), "sunwright-cli-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [name, content] of Object.entries(files)) {
    const file = join(folder, name);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, content);
  }
  return folder;
}
