/** Installs the pinned packages when there are none, or when the pins have changed since. */
import { spawnSync } from "node:child_process";
import { statSync } from "node:fs";
import { join } from "node:path";

/**
 * @param {string} root The project's folder.
 * @returns {boolean} Whether the packages are there now. npm has then printed what was wrong.
 */
export function installWhenNeeded(root) {
  const pinned = changedMs(join(root, "package-lock.json"));
  const installed = changedMs(join(root, "node_modules", ".package-lock.json"));
  if (installed !== undefined && pinned !== undefined && installed >= pinned) return true;
  console.log("Installing the packages of package-lock.json ...");
  // Building needs the development packages, whatever NODE_ENV says; none of them needs its install script.
  const args = ["ci", "--include=dev", "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"];
  return npm(args, root).status === 0;
}

/** @param {string[]} args @param {string} cwd */
function npm(args, cwd) {
  // Under npm, the npm that runs us is a script for Node; found by name otherwise, which on Windows takes a shell.
  const own = process.env.npm_execpath;
  if (own?.endsWith(".js")) return spawnSync(process.execPath, [own, ...args], { cwd, stdio: "inherit" });
  return spawnSync("npm", args, { cwd, stdio: "inherit", shell: process.platform === "win32" });
}

/** @param {string} path */
function changedMs(path) {
  return statSync(path, { throwIfNoEntry: false })?.mtimeMs;
}
