/** Finds the poppler tools, with which PDF files are read back in tests, or gets them. */
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

/** What to say where there are none. */
export const NO_POPPLER =
  "poppler (pdftotext, pdftoppm, pdffonts, pdfinfo) was not found, and could not be installed. Install it (Debian: apt-get install poppler-utils).";

const APT_GET = "/usr/bin/apt-get";
const TOOLS = ["pdftotext", "pdftoppm", "pdffonts", "pdfinfo"];

/** @returns {boolean} Whether they are there, after installing them where that is possible: as root on Debian. */
export function getPoppler() {
  // Looked for already by whoever runs this, in vain.
  if (process.env.LOADSIDE_POPPLER === "") return false;
  return areThere() || (installFromDebian() && areThere());
}

const areThere = () =>
  TOOLS.every((tool) => spawnSync(tool, ["-v"], { timeout: 20_000, stdio: "ignore" }).error === undefined);

function installFromDebian() {
  if (process.platform !== "linux" || process.getuid?.() !== 0 || !existsSync(APT_GET)) return false;
  console.log("Installing poppler-utils with apt-get ...");
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  const aptGet = (/** @type {string[]} */ ...args) =>
    spawnSync(APT_GET, ["-q", ...args], { env, stdio: ["ignore", "ignore", "inherit"], timeout: 120_000 }).status === 0;
  // One source that does not answer fails the update, while the others may have what is needed.
  aptGet("update");
  return aptGet("install", "-y", "--no-install-recommends", "poppler-utils");
}
