import { readFileSync } from "node:fs";
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

export default defineConfig({
  plugins: [faces],
  resolve: { conditions: ["source"] },
  ssr: { resolve: { conditions: ["source"] } },
  test: {
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/editor/**", "**/node_modules/**"],
    testTimeout: 60_000,
    reporters: process.env.CI ? ["verbose"] : ["default"],
  },
});
