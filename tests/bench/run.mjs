/**
 * `npm run bench`: gets what measuring needs, builds what is measured, then measures. Plain Node, because it installs the
 * packages itself.
 *
 *   node tests/bench/run.mjs [--long]
 */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { installWhenNeeded } from "../../electron/install-when-needed.mjs";
import { nodeIsTooOld } from "../../electron/node-version.mjs";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** @returns {Promise<string | undefined>} Why nothing can be measured. */
async function prepare() {
  const tooOld = nodeIsTooOld();
  if (tooOld !== undefined) return tooOld;
  if (!installWhenNeeded(ROOT)) return "The packages could not be installed.";
  const { getChromium, NO_CHROMIUM } = await import("../get-chromium.mjs");
  if ((await getChromium()) === undefined) return NO_CHROMIUM;
  const build = spawnSync(process.execPath, ["shared-model/hosts/build.mjs"], { cwd: ROOT, stdio: "inherit" });
  return build.status === 0 ? undefined : "What is to be measured could not be built.";
}

const refusal = await prepare();
if (refusal === undefined) await import("./measure.mjs");
else {
  console.error(refusal);
  process.exitCode = 2;
}
