/** Finds a Chromium for the tests, or gets one. */
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { findBrowser } from "../electron/find-browser.mjs";

/**
 * What a test has no use for. The two lists of suggestions under the address bar are pages of their own that a full browser
 * builds with every window, out of sight: they take as much of the processor as the window that is tested. The others are
 * those that the test runner switches off itself; of two such switches the browser minds the last.
 */
const UNUSED_FEATURES = [
  "WebUIOmniboxAimPopup",
  "WebUIOmniboxPopup",
  "AimEnabled",
  "AvoidCorsURLLoaderRestartOnRedirect",
  "AvoidUnnecessaryBeforeUnloadCheckSync",
  "DestroyProfileOnBrowserClose",
  "HttpsFirstBalancedModeAutoEnable",
  "HttpsUpgrades",
  "LensOverlay",
  "MediaRouter",
  "NetworkTimeServiceQuerying",
  "OptimizationHints",
  "PaintHolding",
  "PreconnectToSearch",
  "TcpPortRandomizationWin",
  "ThirdPartyStoragePartitioning",
];

/** Start-up arguments that let Chromium run as root in a container, and keep it off the network. */
export const CHROMIUM_ARGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  `--disable-features=${UNUSED_FEATURES.join(",")}`,
];

/** What to do where `getChromium` finds none. */
export const NO_CHROMIUM =
  "No Chromium was found, and none could be installed. Install Chromium or Chrome, or name one in LOADSIDE_CHROMIUM.";

/** @returns {Promise<string | undefined>} The program's path: the test runner's own if it is there, else an installed one. */
export async function findChromium() {
  const { chromium } = await import("@playwright/test");
  const own = chromium.executablePath();
  if (process.env.LOADSIDE_CHROMIUM === undefined && existsSync(own)) return own;
  const installed = findBrowser();
  return installed !== undefined && starts(installed) ? installed : undefined;
}

/** @returns {Promise<string | undefined>} As `findChromium`, after installing one where that is possible. */
export async function getChromium() {
  return (await findChromium()) ?? (installFromDebian() ? await findChromium() : undefined) ?? (await ownDownloaded());
}

/** Some distributions install a script of that name that only says where to get the browser. @param {string} browser */
function starts(browser) {
  if (process.platform !== "linux") return true;
  return spawnSync(browser, ["--version"], { timeout: 20_000, stdio: "ignore" }).status === 0;
}

const APT_GET = "/usr/bin/apt-get";

const isRoot = () => process.getuid?.() === 0;

/** With a font besides: an empty container has none, and a page would then show no letter that our own font lacks. */
function installFromDebian() {
  if (process.platform !== "linux" || !isRoot() || !existsSync(APT_GET)) return false;
  console.log("Installing chromium with apt-get ...");
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  const aptGet = (/** @type {string[]} */ ...args) =>
    spawnSync(APT_GET, ["-q", ...args], { env, stdio: ["ignore", "ignore", "inherit"] }).status === 0;
  // One source that does not answer fails the update, while the others may have all that is needed.
  aptGet("update");
  return aptGet("install", "-y", "--no-install-recommends", "chromium", "fonts-dejavu-core");
}

async function ownDownloaded() {
  console.log("Downloading the test runner's own Chromium ...");
  const args = ["node_modules/@playwright/test/cli.js", "install", ...(isRoot() ? ["--with-deps"] : []), "chromium"];
  const { status } = spawnSync(process.execPath, args, { stdio: ["ignore", "ignore", "inherit"] });
  return status === 0 ? findChromium() : undefined;
}
