import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.{ts,tsx}"],
    exclude: ["tests/e2e/**"],
    setupFiles: ["tests/same-seed.ts"],
    allowOnly: false,
    passWithNoTests: false,
    maxWorkers: 2,
    testTimeout: 30_000,
  },
});
