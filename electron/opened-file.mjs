/** A document on the disk that a person named: reading it, and saving it back over itself. */
import { createHash, randomBytes } from "node:crypto";
import { readFile, stat } from "node:fs/promises";
import { basename, extname } from "node:path";

/** As large as a document may be, in bytes. */
export const DOCUMENT_LIMIT = 64 * 1024 * 1024;

/**
 * @typedef {{ ok: true, text: string } | { ok: false, message: string }} ReadOutcome
 * @typedef {{ ok: true, note?: string } | { ok: false, status: number, message: string }} SaveOutcome
 *
 * @typedef {object} OpenedFile
 * @property {string} name Without its folder: the window never learns the path.
 * @property {string} token Unguessable; who cannot name it gets nothing.
 * @property {number} limit In bytes.
 * @property {() => Promise<ReadOutcome>} read
 * @property {(bytes: Uint8Array, overwrite: boolean) => Promise<SaveOutcome>} save Refuses with 409 if another
 *   program has changed the file since it was last read or saved here, unless told to overwrite.
 */

/** @typedef {typeof import("../shared-model/hosts/atomic-file.ts").replaceFile} ReplaceFile */

/**
 * @param {string} path
 * @param {ReplaceFile} replaceFile
 * @param {number} [limit] In bytes.
 * @returns {Promise<{ ok: true, file: OpenedFile, text: string } | { ok: false, message: string }>} The message is one line.
 */
export async function openFile(path, replaceFile, limit = DOCUMENT_LIMIT) {
  const file = fileAt(path, replaceFile, limit);
  const first = await file.read();
  return first.ok ? { ok: true, file, text: first.text } : first;
}

/**
 * The same without a look at the disk: there may be no such file yet.
 * @param {string} path
 * @param {ReplaceFile} replaceFile
 * @param {number} [limit] In bytes.
 * @returns {OpenedFile}
 */
export function fileAt(path, replaceFile, limit = DOCUMENT_LIMIT) {
  const name = basename(path);
  /** @type {string | undefined} */
  let known;
  const read = async () => {
    const outcome = await readDocument(path, name, limit);
    if (outcome.ok) known = digest(outcome.bytes);
    return outcome;
  };
  /** @type {OpenedFile["save"]} */
  const save = async (bytes, overwrite) => {
    const now = overwrite ? undefined : await digestOnDisk(path, limit);
    if (now !== undefined && now !== known && now !== digest(bytes)) {
      return { ok: false, status: 409, message: `${name} was changed by another program since it was opened here.` };
    }
    const result = await replaceFile(path, bytes, { shownAs: name });
    if (!result.saved) return { ok: false, status: 500, message: result.message };
    known = digest(bytes);
    return result.note === undefined ? { ok: true } : { ok: true, note: result.note };
  };
  return { name, token: randomBytes(24).toString("base64url"), limit, read, save: inTurn(save) };
}

/**
 * What the disk holds now; undefined when there is nothing, and a name of its own for what cannot be ours.
 * @param {string} path
 * @param {number} limit In bytes.
 */
async function digestOnDisk(path, limit) {
  try {
    const at = await stat(path);
    if (!at.isFile()) return "not a file";
    return at.size > limit ? "too large" : digest(await readFile(path));
  } catch (error) {
    const { code } = /** @type {NodeJS.ErrnoException} */ (error);
    return code === "ENOENT" ? undefined : "unreadable";
  }
}

/**
 * Two saves at once would end in either order.
 * @template {unknown[]} A
 * @template T
 * @param {(...args: A) => Promise<T>} action
 * @returns {(...args: A) => Promise<T>}
 */
function inTurn(action) {
  /** @type {Promise<unknown>} */
  let last = Promise.resolve();
  return (...args) => {
    const next = last.then(() => action(...args));
    last = next.catch(() => undefined);
    return next;
  };
}

/**
 * @param {string} path
 * @param {string} name
 * @param {number} limit
 * @returns {Promise<{ ok: true, text: string, bytes: Uint8Array } | { ok: false, message: string }>}
 */
async function readDocument(path, name, limit) {
  const refused = (/** @type {string} */ why) => /** @type {const} */ ({ ok: false, message: `${name}: ${why}` });
  if (extname(name) !== ".loadside") return refused("documents have the ending .loadside.");
  try {
    const at = await stat(path);
    if (!at.isFile()) return refused("this is not a file.");
    if (at.size > limit) return refused(`the file is too large: ${at.size} bytes, at most ${limit} are read.`);
    const bytes = await readFile(path);
    // The byte order mark stays: a document saved without an edit keeps its bytes.
    return { ok: true, bytes, text: new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch (error) {
    return refused(whyUnreadable(error));
  }
}

/** @param {unknown} error */
function whyUnreadable(error) {
  const { code } = /** @type {NodeJS.ErrnoException} */ (error);
  if (code === "ENOENT" || code === "ENOTDIR") return "there is no such file.";
  if (code === "EACCES" || code === "EPERM") return "reading it is not allowed.";
  if (code === "ERR_ENCODING_INVALID_ENCODED_DATA") return "the file is not UTF-8 text.";
  return `it cannot be read (${code ?? "unknown cause"}).`;
}

/** @param {Uint8Array} bytes */
const digest = (bytes) => createHash("sha256").update(bytes).digest("hex");
