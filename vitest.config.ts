import { defineConfig } from "vitest/config";

export default defineConfig({
  resolve: { conditions: ["source"] },
  ssr: { resolve: { conditions: ["source"] } },
  test: {
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/editor/**", "**/node_modules/**"],
    testTimeout: 60_000,
    reporters: process.env.CI ? ["verbose"] : ["default"],
  },
});
