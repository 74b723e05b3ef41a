/** Installs the pinned packages when there are none, or when the pins have changed since. */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";

/**
 * @param {string} root The project's folder.
 * @returns {boolean} Whether the packages are there now. npm has then printed what was wrong.
 */
export function installWhenNeeded(root) {
  if (packagesMatchPins(root)) return true;
  console.log("Installing the packages of package-lock.json ...");
  // Building needs the development packages, whatever NODE_ENV says; none of them needs its install script.
  const args = ["ci", "--include=dev", "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"];
  return npm(args, root).status === 0;
}

/**
 * Compares what npm noted at the end of its last install with the pins: times say nothing after a checkout or a copy.
 * @param {string} root
 */
export function packagesMatchPins(root) {
  const pinned = packagesOf(join(root, "package-lock.json"));
  const installed = packagesOf(join(root, "node_modules", ".package-lock.json"));
  if (pinned === undefined || installed === undefined) return false;
  const wanted = Object.entries(pinned).filter(([path]) => path !== "");
  return wanted.every(([path, { version, integrity, optional }]) => {
    const found = installed[path];
    // An optional package may be for another kind of machine, and is then left out.
    if (found === undefined) return optional === true;
    return found.version === version && found.integrity === integrity;
  });
}

/** @typedef {{ version?: string, integrity?: string, optional?: boolean }} Pin */

/** @param {string} lockFile @returns {Record<string, Pin> | undefined} By folder; the project itself is "". */
function packagesOf(lockFile) {
  try {
    return JSON.parse(readFileSync(lockFile, "utf8")).packages;
  } catch {
    return undefined;
  }
}

/** @param {string[]} args @param {string} cwd */
function npm(args, cwd) {
  // Under npm, the npm that runs us is a script for Node; found by name otherwise, which on Windows takes a shell.
  const own = process.env.npm_execpath;
  if (own?.endsWith(".js")) return spawnSync(process.execPath, [own, ...args], { cwd, stdio: "inherit" });
  return spawnSync("npm", args, { cwd, stdio: "inherit", shell: process.platform === "win32" });
}
