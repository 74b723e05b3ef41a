/** Finds a Chromium for the tests, or gets one. */
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { findBrowser } from "../electron/find-browser.mjs";

/** Start-up arguments that let Chromium run as root in a container, and keep it off the network. */
export const CHROMIUM_ARGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** @returns {Promise<string | undefined>} The program's path: the test runner's own if it is there, else an installed one. */
export async function findChromium() {
  const { chromium } = await import("@playwright/test");
  const own = chromium.executablePath();
  if (process.env.LOADSIDE_CHROMIUM === undefined && existsSync(own)) return own;
  return findBrowser();
}

/** @returns {Promise<string | undefined>} As `findChromium`, after installing one where that is possible. */
export async function getChromium() {
  return (await findChromium()) ?? (installFromDebian() || downloadOwn() ? findChromium() : undefined);
}

function installFromDebian() {
  if (process.platform !== "linux" || process.getuid?.() !== 0 || !existsSync("/usr/bin/apt-get")) return false;
  console.log("Installing chromium with apt-get ...");
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  const run = (/** @type {string[]} */ ...args) =>
    spawnSync("apt-get", args, { env, stdio: ["ignore", "ignore", "inherit"] });
  return run("update").status === 0 && run("install", "-y", "chromium").status === 0;
}

function downloadOwn() {
  console.log("Downloading the test runner's own Chromium ...");
  const args = ["node_modules/@playwright/test/cli.js", "install", "chromium"];
  return spawnSync(process.execPath, args, { stdio: ["ignore", "ignore", "inherit"] }).status === 0;
}
