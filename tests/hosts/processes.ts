import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";

/** Runs a program to its end and gives what it printed; throws an Error with its output where it fails. */
export function run(
  program: string,
  words: readonly string[],
  where: { cwd: string; env?: NodeJS.ProcessEnv },
): string {
  const { status, stdout, stderr, error } = spawnSync(program, [...words], { ...where, encoding: "utf8" });
  if (status !== 0) throw new Error(`${program} ${words.join(" ")} failed:\n${error?.message ?? ""}${stdout}${stderr}`);
  return stdout;
}

/** Starts a program and waits until it has printed something. */
export async function startUntil(
  program: string,
  words: readonly string[],
  { ready, ...options }: { ready: RegExp; env: NodeJS.ProcessEnv; cwd: string },
): Promise<ChildProcess> {
  const child = spawn(program, words, { ...options, stdio: ["ignore", "pipe", "pipe"], detached: true });
  let printed = "";
  await new Promise<void>((resolve, reject) => {
    const look = (data: Buffer) => {
      printed += data.toString();
      if (ready.test(printed)) resolve();
    };
    child.stdout!.on("data", look);
    child.stderr!.on("data", look);
    child.on("error", reject);
    child.on("exit", (code) => reject(new Error(`${program} ended with ${code}:\n${printed}`)));
  });
  return child;
}

/** Ends a program started above, and all that it started. */
export function end(child: ChildProcess): void {
  if (child.pid === undefined || child.exitCode !== null) return;
  try {
    process.kill(-child.pid, "SIGKILL");
  } catch {
    // It has ended by itself meanwhile.
  }
}

/** The processes below one, with the words they were called with; on Linux. */
export function descendants(parent: number): { readonly pid: number; readonly words: readonly string[] }[] {
  const children = new Map<number, number[]>();
  for (const name of readdirSync("/proc")) {
    if (!/^\d+$/.test(name)) continue;
    const status = read(`/proc/${name}/stat`);
    const above = Number(status.slice(status.lastIndexOf(")") + 2).split(" ")[1]);
    children.set(above, [...(children.get(above) ?? []), Number(name)]);
  }
  const below = (pid: number): number[] => (children.get(pid) ?? []).flatMap((child) => [child, ...below(child)]);
  return below(parent).map((pid) => ({ pid, words: read(`/proc/${pid}/cmdline`).split("\0").filter(Boolean) }));
}

function read(file: string): string {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return "";
  }
}
