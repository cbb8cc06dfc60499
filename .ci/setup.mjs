// Installs the pinned packages when they are missing or the lock file has changed. Runs under any Node from 18 on,
// before anything else: the packages bring the Node that the rest runs under.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const stamp = join(root, "node_modules", ".installed-from");
const wanted = createHash("sha256")
  .update(readFileSync(join(root, "package-lock.json")))
  .digest("hex");

const isInstalled = existsSync(stamp) && readFileSync(stamp, "utf8") === wanted;
if (!isInstalled) {
  console.log("Installing the pinned packages (once) …");
  const npm = process.platform === "win32" ? "npm.cmd" : "npm";
  const { status } = spawnSync(npm, ["ci", "--no-audit", "--no-fund", "--loglevel=error"], {
    cwd: root,
    stdio: "inherit",
    shell: process.platform === "win32",
  });
  if (status !== 0) {
    console.error("The packages could not be installed. Is the network there, and is the folder writable?");
    process.exit(status ?? 1);
  }
  writeFileSync(stamp, wanted);
}
