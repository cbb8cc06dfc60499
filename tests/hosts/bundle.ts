import { readdirSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const source = join(dirname(fileURLToPath(import.meta.url)), "..", "editor");

/** What is opened: each has tests of its own. */
export const sessions = ["folder", "folders", "untrusted"] as const;
export type Session = (typeof sessions)[number];

/** Bundles the tests of one session into `index.js` of a folder; one bundle runs in every host. */
export async function bundleTests(session: Session, folder: string, only = ""): Promise<void> {
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
    sourcemap: "inline",
    logLevel: "warning",
  });
}
