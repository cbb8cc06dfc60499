import { existsSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { type BuildOptions, build } from "esbuild";

const here = dirname(fileURLToPath(import.meta.url));
const source = join(here, "src");
const dist = join(here, "dist");
/** What hosts of Node 20 lack. */
const polyfill = join(source, "server", "polyfill.ts");

const common = {
  bundle: true,
  minify: true,
  sourcemap: true,
  metafile: true,
  logLevel: "warning",
  conditions: ["source"],
  // The faces of PDFs are part of the program.
  loader: { ".woff": "binary" },
  alias: { "brotli/decompress.js": join(source, "drawing", "pdf", "no-woff2.ts") },
} as const satisfies BuildOptions;

/** What is built to be run by itself, each with where it runs. */
const programs: readonly BuildOptions[] = [
  // A small file that starts, and the program that it loads.
  {
    entryPoints: { server: join(source, "server", "bin.ts"), "server-program": join(source, "server", "node.ts") },
    outdir: dist,
    outExtension: { ".js": ".cjs" },
    external: ["./server-program.cjs"],
    inject: [polyfill],
    platform: "node",
    format: "cjs",
    target: "node20",
  },
  {
    entryPoints: { "browser-server": join(source, "server", "browser.ts") },
    outdir: dist,
    inject: [polyfill],
    platform: "browser",
    format: "iife",
    target: "es2022",
  },
  // One program for threads of Node and web workers: the layout library is larger than all the rest.
  {
    entryPoints: { "drawing-worker": join(source, "drawing-worker", "main.ts") },
    outdir: dist,
    inject: [polyfill],
    platform: "browser",
    external: ["node:worker_threads"],
    // The library for PDFs asks where it is itself for a colour profile that nothing here uses.
    define: { "import.meta.url": '"file:///"' },
    format: "iife",
    target: "es2022",
  },
  // A small file that starts, the program that it loads, and what only some of its commands load.
  {
    entryPoints: { cli: join(source, "cli", "bin.ts") },
    outdir: dist,
    outExtension: { ".js": ".mjs" },
    chunkNames: "cli-[name]-[hash]",
    splitting: true,
    inject: [polyfill],
    platform: "node",
    format: "esm",
    target: "node20",
  },
];

// Their names tell what is in them: those of another build are not overwritten.
for (const file of existsSync(dist) ? readdirSync(dist) : []) if (file.startsWith("cli-")) rmSync(join(dist, file));

const inputs: Record<string, string[]> = {};
for (const program of programs) {
  const { metafile } = await build({ ...common, ...program });
  for (const name of Object.keys(program.entryPoints ?? {}))
    inputs[name] = Object.keys(metafile.inputs).map((file) => resolve(file));
  for (const [file, { bytes }] of Object.entries(metafile.outputs))
    if (!file.endsWith(".map")) console.log(`${relative(join(here, ".."), file)}  ${Math.round(bytes / 1024)} kB`);
}
// Whose licences must go along with the bundles.
writeFileSync(join(dist, "bundled.json"), JSON.stringify(inputs));
