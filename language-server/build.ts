import { rmSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { type BuildOptions, build } from "esbuild";

const here = dirname(fileURLToPath(import.meta.url));
const dist = join(here, "dist");

const common: BuildOptions = {
  bundle: true,
  minify: true,
  sourcemap: true,
  logLevel: "warning",
  conditions: ["source"],
};

/** Everything that is run as one file: what goes in, what comes out, and where it runs. */
const bundles: readonly (BuildOptions & { entry: string; file: string })[] = [
  { entry: "cli/bin.ts", file: "cli.mjs", platform: "node", format: "esm", target: "node20" },
];

rmSync(dist, { recursive: true, force: true });
for (const { entry, file, ...options } of bundles) {
  const outfile = join(dist, file);
  await build({ ...common, ...options, entryPoints: [join(here, "src", entry)], outfile });
  console.log(`language-server/dist/${file}  ${Math.round(statSync(outfile).size / 1024)} kB`);
}
