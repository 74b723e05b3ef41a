import { defineConfig } from "@playwright/test";
import { CHROMIUM_ARGS, findChromium } from "./tests/get-chromium.mjs";

const chromium = await findChromium();

export default defineConfig({
  testDir: "tests/e2e",
  testMatch: "**/*.spec.ts",
  // Needs a desktop runtime: `npm test` asks for it where there is one, and says so where there is none.
  testIgnore: process.env.LOADSIDE_RUNTIME === undefined ? ["**/desktop-runtime.spec.ts"] : [],
  outputDir: "test-results",
  snapshotPathTemplate: "tests/e2e/looks/{arg}{ext}",
  // What is proved in another way too and takes long to drive: `npm run test:long`.
  ...(process.env.LOADSIDE_LONG === undefined && { grepInvert: /@long/ }),
  forbidOnly: true,
  retries: 0,
  workers: 2,
  fullyParallel: true,
  // Two cores that others use too: a slow answer is no wrong one. What takes longer than this is stuck.
  timeout: 120_000,
  expect: { timeout: 15_000 },
  reporter: "list",
  use: {
    headless: true,
    // A control that never comes is told with its name, not by the end of the test.
    actionTimeout: 30_000,
    viewport: { width: 1440, height: 900 },
    launchOptions: { args: CHROMIUM_ARGS, ...(chromium !== undefined && { executablePath: chromium }) },
    screenshot: "only-on-failure",
    trace: "off",
  },
});
