import { readdirSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { type Session, sorts } from "./sessions.js";

const source = join(dirname(fileURLToPath(import.meta.url)), "..", "editor");

/**
 * Bundles the tests of one session into `index.js` of a folder. They are told the address of a folder that they may use as
 * the host writes it, whether it is open in the window or not.
 */
export async function bundleTests(session: Session, folder: string, place: string, only = ""): Promise<void> {
  const files = readdirSync(join(source, session)).filter((name) =>
    only.split(",").some((wanted) => name.endsWith(`${wanted}.test.ts`)),
  );
  const imports = files.sort().map((name) => `() => require(${JSON.stringify(join(source, session, name))})`);
  const contents = `
    import { runAll } from ${JSON.stringify(join(source, "run-all.ts"))};
    export const run = () => runAll([${imports.join(", ")}]);`;
  await build({
    stdin: { contents, resolveDir: source, loader: "ts" },
    bundle: true,
    outfile: join(folder, "index.js"),
    format: "cjs",
    platform: "browser",
    target: "es2022",
    external: ["vscode"],
    define: { PLACE: JSON.stringify(place), OPENS: JSON.stringify(sorts[session].opens) },
    sourcemap: "inline",
    logLevel: "warning",
  });
}
