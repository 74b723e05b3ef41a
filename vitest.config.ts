import { defineConfig } from "vitest/config";

/** Tests of what keeps nothing from one call to the next: files share the modules that they load. A worker keeps much. */
const PURE =
  "tests/{analysis,commands,format,geometry,golden,planning,queries,rules,sheets,solver}/**/!(*worker*).test.ts";

export default defineConfig({
  test: {
    setupFiles: ["tests/same-seed.ts"],
    allowOnly: false,
    passWithNoTests: false,
    maxWorkers: 2,
    testTimeout: 30_000,
    projects: [
      { extends: true, test: { name: "pure", include: [PURE], isolate: false } },
      {
        extends: true,
        test: { name: "whole", include: ["tests/**/*.test.{ts,tsx}"], exclude: [PURE, "tests/e2e/**"] },
      },
    ],
  },
});
