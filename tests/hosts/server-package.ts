import { chmodSync, copyFileSync, existsSync, mkdirSync, renameSync, rmSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { cache } from "./cache.js";
import { run } from "./processes.js";

/** Packages of a VS Code server with the Node it is made for and the search program it calls, by what was tried. */
const server = "code-server@4.100.3";
const node = `node-${process.platform}-${process.arch}@20.19.5`;
const search = `@vscode/ripgrep-${process.platform}-${process.arch}@1.18.0`;

export interface ServerPackage {
  /** The Node that runs it. */
  readonly node: string;
  /** Its main module. */
  readonly main: string;
}

const home = join(cache, "server-4.100.3-node-20.19.5");

/** Whether this machine can run the server at all: its packages exist for Linux. */
export const isServerPossible = process.platform === "linux" && ["x64", "arm64"].includes(process.arch);

/** The server in the cache; undefined where it has not been installed. */
export function installedServer(): ServerPackage | undefined {
  const found = paths(home);
  return existsSync(found.main) ? found : undefined;
}

/**
 * Installs the server into the cache. Nothing is compiled: the server's own native modules are for terminals, crash logs
 * and sign-in, none of which a test of an editor needs; it says so in its log and goes on.
 */
export function installServer(): ServerPackage {
  const building = `${home}.${process.pid}`;
  rmSync(building, { recursive: true, force: true });
  mkdirSync(building, { recursive: true });
  for (const [name, folder] of [
    [server, "server"],
    [node, "node"],
    [search, "search"],
  ] as const)
    unpack(name, join(building, folder), building);

  const inner = join(building, "server", "lib", "vscode");
  const env = { ...process.env, PATH: `${join(building, "node", "bin")}:${process.env.PATH}` };
  // Its own shrinkwrap file holds the versions.
  run("npm", ["install", "--omit=dev", "--ignore-scripts", "--no-audit", "--no-fund"], { cwd: inner, env });
  symlinkSync("node_modules", join(inner, "node_modules.asar"));
  const bin = join(inner, "node_modules", "@vscode", "ripgrep", "bin");
  mkdirSync(bin, { recursive: true });
  copyFileSync(join(building, "search", "bin", "rg"), join(bin, "rg"));
  chmodSync(join(bin, "rg"), 0o755);

  rmSync(home, { recursive: true, force: true });
  renameSync(building, home);
  return paths(home);
}

function unpack(name: string, folder: string, place: string): void {
  const [{ filename }] = JSON.parse(run("npm", ["pack", name, "--json", "--ignore-scripts"], { cwd: place }));
  mkdirSync(folder);
  run("tar", ["xzf", filename, "-C", folder, "--strip-components=1"], { cwd: place });
  rmSync(join(place, filename));
}

function paths(folder: string): ServerPackage {
  return {
    node: join(folder, "node", "bin", "node"),
    main: join(folder, "server", "lib", "vscode", "out", "server-main.js"),
  };
}
