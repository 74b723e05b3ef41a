import { defineConfig } from "vitest/config";

/** Tests of what keeps nothing from one call to the next: files share the modules that they load. A worker keeps much. */
const PURE =
  "tests/{analysis,commands,format,geometry,golden,planning,queries,rules,sheets,solver}/**/!(*worker*).test.ts";

/** Long runs repeat a test many times over: a limit that they meet says nothing of the test. */
const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";

export default defineConfig({
  test: {
    setupFiles: ["tests/same-seed.ts"],
    allowOnly: false,
    passWithNoTests: false,
    maxWorkers: 2,
    testTimeout: LONG ? 600_000 : 30_000,
    hookTimeout: LONG ? 120_000 : 10_000,
    projects: [
      { extends: true, test: { name: "pure", include: [PURE], isolate: false } },
      {
        extends: true,
        test: { name: "whole", include: ["tests/**/*.test.{ts,tsx}"], exclude: [PURE, "tests/e2e/**"] },
      },
    ],
  },
});
