/** Finds ngspice, the circuit simulator that the solver is compared with, or gets it. */
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

/** What to say where there is none. */
export const NO_NGSPICE =
  "ngspice was not found, and could not be installed. Install it (Debian: apt-get install ngspice), or name it in LOADSIDE_NGSPICE.";

const APT_GET = "/usr/bin/apt-get";

/** @returns {string | undefined} The program, after installing it where that is possible: as root on Debian. */
export function getNgspice() {
  // Looked for already by whoever runs this, in vain.
  if (process.env.LOADSIDE_NGSPICE === "") return undefined;
  if (process.env.LOADSIDE_NGSPICE !== undefined) return findNgspice();
  return findNgspice() ?? (installFromDebian() ? findNgspice() : undefined);
}

function findNgspice() {
  const program = process.env.LOADSIDE_NGSPICE ?? "ngspice";
  return spawnSync(program, ["--version"], { timeout: 20_000, stdio: "ignore" }).status === 0 ? program : undefined;
}

function installFromDebian() {
  if (process.platform !== "linux" || process.getuid?.() !== 0 || !existsSync(APT_GET)) return false;
  console.log("Installing ngspice with apt-get ...");
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  const aptGet = (/** @type {string[]} */ ...args) =>
    spawnSync(APT_GET, ["-q", ...args], { env, stdio: ["ignore", "ignore", "inherit"], timeout: 120_000 }).status === 0;
  // One source that does not answer fails the update, while the others may have what is needed.
  aptGet("update");
  return aptGet("install", "-y", "--no-install-recommends", "ngspice");
}
