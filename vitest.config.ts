import { globSync, readFileSync } from "node:fs";
import { defineConfig } from "vitest/config";

/** As the build does: a face is its bytes. */
const faces = {
  name: "faces",
  enforce: "pre",
  load: (id: string) =>
    id.endsWith(".woff")
      ? `export default Uint8Array.from(atob("${readFileSync(id).toString("base64")}"), (letter) => letter.charCodeAt(0));`
      : undefined,
} as const;

const include = ["tests/**/*.test.ts"];
const exclude = ["tests/editor/**", "**/node_modules/**"];

/** Whoever puts something in the place of what others import has a process to itself. */
const apart = globSync(include, { exclude })
  .filter((file) => /\bvi\.(mock|spyOn|stubGlobal)\(/.test(readFileSync(file, "utf8")))
  .map((file) => file.replaceAll("\\", "/"));

export default defineConfig({
  plugins: [faces],
  resolve: { conditions: ["source"] },
  ssr: { resolve: { conditions: ["source"] } },
  test: {
    projects: [
      // To import the language anew for each file would take longer than most of the tests.
      { extends: true, test: { name: "together", isolate: false, include, exclude: [...exclude, ...apart] } },
      { extends: true, test: { name: "apart", include: apart } },
    ],
    testTimeout: 60_000,
    reporters: process.env.CI ? ["verbose"] : ["default"],
  },
});
