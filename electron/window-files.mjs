/**
 * The files of the built window. All of them are read into memory once, so no request can name another file,
 * however it is spelled.
 */
import { lstat, readdir, readFile } from "node:fs/promises";
import { extname, join } from "node:path";

const TYPES = new Map([
  [".html", "text/html; charset=utf-8"],
  [".js", "text/javascript; charset=utf-8"],
  [".css", "text/css; charset=utf-8"],
  [".json", "application/json; charset=utf-8"],
  [".svg", "image/svg+xml"],
  [".png", "image/png"],
  [".jpg", "image/jpeg"],
  [".ico", "image/x-icon"],
  [".woff", "font/woff"],
  [".woff2", "font/woff2"],
  [".txt", "text/plain; charset=utf-8"],
]);

/** @typedef {{ readonly type: string, readonly bytes: Buffer }} WindowFile */

/**
 * @param {string} folder The built window; inside an archive of the packager as well.
 * @returns {Promise<ReadonlyMap<string, WindowFile>>} Address path, as "/index.html", to contents; "/" is the page.
 */
export async function readWindowFiles(folder) {
  /** @type {Map<string, WindowFile>} */
  const files = new Map();
  await readFolder(folder, "", files);
  const start = files.get("/index.html");
  if (start === undefined) throw new Error(`${folder} holds no built window.`);
  return files.set("/", start);
}

/** @param {string} folder @param {string} address @param {Map<string, WindowFile>} files */
async function readFolder(folder, address, files) {
  for (const name of await readdir(folder)) {
    const path = join(folder, name);
    // A link could lead out of the folder, and a type that is not listed has no business in a window.
    const at = await lstat(path);
    const type = TYPES.get(extname(name));
    if (at.isDirectory()) await readFolder(path, `${address}/${name}`, files);
    else if (at.isFile() && type !== undefined) files.set(`${address}/${name}`, { type, bytes: await readFile(path) });
  }
}
