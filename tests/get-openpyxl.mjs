/** Finds a Python that has openpyxl, the reader of workbooks that ours are read back with, or gets it. */
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

/** What to say where there is none. */
export const NO_OPENPYXL =
  "No Python with openpyxl was found, and it could not be installed. Install it (Debian: apt-get install python3-openpyxl), or name a Python that has it in LOADSIDE_PYTHON.";

const APT_GET = "/usr/bin/apt-get";

/** @returns {string | undefined} The program, after installing openpyxl where that is possible: as root on Debian. */
export function getOpenpyxl() {
  return findOpenpyxl() ?? (installFromDebian() ? findOpenpyxl() : undefined);
}

/** That of Debian beside another Python that comes first on the path. */
function findOpenpyxl() {
  const programs = process.env.LOADSIDE_PYTHON ? [process.env.LOADSIDE_PYTHON] : ["python3", "/usr/bin/python3"];
  return programs.find(
    (program) => spawnSync(program, ["-c", "import openpyxl"], { timeout: 20_000, stdio: "ignore" }).status === 0,
  );
}

function installFromDebian() {
  if (process.platform !== "linux" || process.getuid?.() !== 0 || !existsSync(APT_GET)) return false;
  if (process.env.LOADSIDE_PYTHON) return false;
  console.log("Installing openpyxl with apt-get ...");
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  const aptGet = (/** @type {string[]} */ ...args) =>
    spawnSync(APT_GET, ["-q", ...args], { env, stdio: ["ignore", "ignore", "inherit"], timeout: 120_000 }).status === 0;
  // One source that does not answer fails the update, while the others may have what is needed.
  aptGet("update");
  return aptGet("install", "-y", "--no-install-recommends", "python3-openpyxl");
}
