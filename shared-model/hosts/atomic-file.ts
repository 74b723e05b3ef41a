/**
 * Replaces a file so that at every moment the folder holds either the whole old file or the whole new one:
 * under the name itself never a part, whatever fails, and never in place.
 *
 * The bytes go to a temporary file in the same folder (a rename across disks is a copy), are written until all are
 * down, flushed, read back and compared, and only then renamed over the old file. A process killed on the way leaves a
 * temporary file, which a later save sweeps.
 */
import { createHash, randomBytes } from "node:crypto";
import * as nodeDisk from "node:fs/promises";
import { basename, dirname, extname, join, resolve } from "node:path";
import { catalogue, type Part } from "../lib/catalogue.ts";
import { saveFailure } from "./save-failure.ts";

const wording = catalogue({
  notSavedName: (name: Part, mark: Part, ending: Part) => `${name} (not saved, ${mark})${ending}`,
  unflushed: (shownAs: Part) =>
    `${shownAs} is saved, but the disk did not confirm that a power cut would not undo it: save once more, or keep a copy elsewhere.`,
  keptCopy: (copy: Part) => ` What was to be saved is in the same folder as "${copy}".`,
  notSaved: (file: Part, cause: Part, remedy: Part, copy: Part) => `${file} was not saved: ${cause}. ${remedy}.${copy}`,
});

/** The part of `node:fs/promises` that saving needs; a test puts a failing one in its place. */
export type Disk = Pick<
  typeof nodeDisk,
  "access" | "link" | "lstat" | "open" | "readdir" | "readlink" | "realpath" | "rename" | "stat" | "unlink"
>;

export interface ReplaceOptions {
  /** How sentences name the file; the path as given if absent. */
  readonly shownAs?: string;
  /** How long a refused rename is tried again, in milliseconds; another program may hold the file for a moment. */
  readonly retryForMs?: number;
  /** Writes only where nothing has that name, a link included; else it fails with the code EEXIST. */
  readonly onlyNew?: boolean;
  readonly disk?: Disk;
  readonly wait?: (ms: number) => Promise<void>;
}

/**
 * `saved: true` only if the disk holds exactly the bytes under that name; `note` then says what stayed unconfirmed.
 * Otherwise the old file is as it was; `message` is one sentence or two for a person, naming file, cause and remedy,
 * and `recoveryCopy` the name, in the same folder, of a file with the new bytes where one could be kept.
 */
export type ReplaceResult =
  | { readonly saved: true; readonly note?: string }
  | { readonly saved: false; readonly code: string; readonly message: string; readonly recoveryCopy?: string };

type Handle = Awaited<ReturnType<Disk["open"]>>;

const RETRIED = new Set(["EPERM", "EACCES", "EBUSY"]);
/** How disks refuse that have no second names for a file. */
const WITHOUT_LINKS = new Set(["EPERM", "ENOTSUP", "EOPNOTSUPP", "ENOSYS", "EMLINK"]);
const LEFT_OVER = /^[.].+[.][0-9a-f]{16}[.]saving$/;
const HOUR_MS = 3_600_000;

/** A failure that the operating system did not report but that we found. */
class Fault extends Error {
  constructor(readonly code: string) {
    super(code);
  }
}

/** @param path Absolute, or relative to the working directory; a link is followed to the file it stands for. */
export async function replaceFile(
  path: string,
  bytes: Uint8Array,
  options: ReplaceOptions = {},
): Promise<ReplaceResult> {
  const disk = options.disk ?? nodeDisk;
  const shownAs = options.shownAs ?? path;
  let temporary: string | undefined;
  try {
    const target = options.onlyNew ? await freeTarget(disk, resolve(path)) : await realTarget(disk, resolve(path));
    await sweepLeftOvers(disk, dirname(target));
    const mode = await modeOf(disk, target);
    temporary = join(dirname(target), `.${shortened(target)}.${randomBytes(8).toString("hex")}.saving`);
    await writeTemporary(disk, temporary, bytes, mode);
    if (options.onlyNew && (await linkedAnew(disk, temporary, target)))
      return (await folderIsFlushed(disk, dirname(target)))
        ? { saved: true }
        : { saved: true, note: unflushed(shownAs) };
    const refusal = await renamePatiently(disk, temporary, target, options);
    if (refusal !== undefined) {
      const kept = await keepCopy(disk, temporary, target);
      temporary = undefined;
      return { ...failure(shownAs, refusal, kept), recoveryCopy: kept };
    }
    temporary = undefined;
    return (await folderIsFlushed(disk, dirname(target))) ? { saved: true } : { saved: true, note: unflushed(shownAs) };
  } catch (error) {
    return failure(shownAs, codeOf(error));
  } finally {
    // A second failure here would hide the first, and a file that cannot be deleted now is swept later.
    if (temporary !== undefined) await disk.unlink(temporary).catch(() => undefined);
  }
}

/** The file behind a link, even one that does not exist yet; renaming over a link would replace the link. */
async function realTarget(disk: Disk, path: string, hops = 0): Promise<string> {
  try {
    return await disk.realpath(path);
  } catch (error) {
    if (codeOf(error) !== "ENOENT") throw error;
  }
  const link = await disk.readlink(path).catch(() => undefined);
  if (link === undefined) return join(await disk.realpath(dirname(path)), basename(path));
  if (hops > 40) throw new Fault("ELOOP");
  return realTarget(disk, resolve(dirname(path), link), hops + 1);
}

async function freeTarget(disk: Disk, path: string): Promise<string> {
  const isThere = await disk.lstat(path).then(
    () => true,
    (error: unknown) => {
      if (codeOf(error) !== "ENOENT") throw error;
      return false;
    },
  );
  if (isThere) throw new Fault("EEXIST");
  return path;
}

/**
 * A second name for the temporary file, which the system gives only where nothing has it: what another program made in
 * between is not written over. @returns False where the disk knows no second names; what is there by now still counts.
 */
async function linkedAnew(disk: Disk, temporary: string, target: string): Promise<boolean> {
  try {
    await disk.link(temporary, target);
    return true;
  } catch (error) {
    if (!WITHOUT_LINKS.has(codeOf(error))) throw error;
    await freeTarget(disk, target);
    return false;
  }
}

/** Comes first, because on a full disk it makes room; a left-over that cannot be deleted does not fail the save. */
async function sweepLeftOvers(disk: Disk, folder: string): Promise<void> {
  const names = await disk.readdir(folder).catch(() => []);
  for (const name of names.filter((each) => LEFT_OVER.test(each))) {
    try {
      const { mtimeMs } = await disk.lstat(join(folder, name));
      if (Date.now() - mtimeMs > HOUR_MS) await disk.unlink(join(folder, name));
    } catch {}
  }
}

/** The permission bits to keep; undefined for a file that does not exist. Refuses what must not be written over. */
async function modeOf(disk: Disk, target: string): Promise<number | undefined> {
  let found: Awaited<ReturnType<Disk["stat"]>>;
  try {
    found = await disk.stat(target);
  } catch (error) {
    if (codeOf(error) === "ENOENT") return undefined;
    throw error;
  }
  if (!found.isFile()) throw new Fault("not-a-file");
  // A rename needs no permission on the file itself, so a write-protected one would be replaced all the same.
  await disk.access(target, nodeDisk.constants.W_OK);
  return Number(found.mode) & 0o777;
}

/** File systems limit a name to 255 bytes, and the temporary name is longer than the file's own. */
const shortened = (target: string): string => [...basename(target)].slice(0, 50).join("");

async function writeTemporary(disk: Disk, path: string, bytes: Uint8Array, mode: number | undefined): Promise<void> {
  const handle = await disk.open(path, "wx+", mode === undefined ? 0o666 : 0o600);
  let closed = false;
  try {
    await writeAll(handle, bytes);
    if (mode !== undefined && (Number((await handle.stat()).mode) & 0o777) !== mode) await handle.chmod(mode);
    await handle.sync();
    await verify(handle, bytes);
    closed = true;
    await handle.close();
  } finally {
    if (!closed) await handle.close().catch(() => undefined);
  }
}

/** A full disk can take a part of the bytes and report success for that part. */
async function writeAll(handle: Handle, bytes: Uint8Array): Promise<void> {
  let done = 0;
  while (done < bytes.length) {
    const { bytesWritten } = await handle.write(bytes, done, bytes.length - done, done);
    if (bytesWritten === 0) throw new Fault("short-write");
    done += bytesWritten;
  }
}

async function verify(handle: Handle, bytes: Uint8Array): Promise<void> {
  const hash = createHash("sha256");
  const chunk = Buffer.alloc(Math.min(bytes.length, 1 << 20) + 1);
  let length = 0;
  for (;;) {
    const { bytesRead } = await handle.read(chunk, 0, chunk.length, length);
    if (bytesRead === 0) break;
    hash.update(chunk.subarray(0, bytesRead));
    length += bytesRead;
  }
  const expected = createHash("sha256").update(bytes).digest("hex");
  if (length !== bytes.length || hash.digest("hex") !== expected) throw new Fault("read-back-differs");
}

/** @returns Undefined once renamed; the code of the last refusal when another program kept the file for too long. */
async function renamePatiently(
  disk: Disk,
  from: string,
  to: string,
  options: ReplaceOptions,
): Promise<string | undefined> {
  const { retryForMs = 10_000, wait = sleep } = options;
  let waitedMs = 0;
  for (let pauseMs = 10; ; pauseMs = Math.min(pauseMs * 2, 500)) {
    try {
      await disk.rename(from, to);
      return undefined;
    } catch (error) {
      const code = codeOf(error);
      if (!RETRIED.has(code)) throw error;
      if (waitedMs + pauseMs > retryForMs) return code;
    }
    await wait(pauseMs);
    waitedMs += pauseMs;
  }
}

const sleep = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

/** Gives the new bytes a name that can be found and opened. @returns The name, in the folder of `target`. */
async function keepCopy(disk: Disk, temporary: string, target: string): Promise<string> {
  const ending = extname(target);
  const mark = randomBytes(4).toString("hex");
  const name = wording.notSavedName([...basename(target, ending)].slice(0, 50).join(""), mark, ending);
  try {
    await disk.rename(temporary, join(dirname(target), name));
    return name;
  } catch {
    return basename(temporary);
  }
}

/** A rename is on disk only once its folder is. Windows flushes it by itself and cannot open a folder. */
async function folderIsFlushed(disk: Disk, folder: string): Promise<boolean> {
  if (process.platform === "win32") return true;
  let handle: Handle | undefined;
  try {
    handle = await disk.open(folder, "r");
    await handle.sync();
    return true;
  } catch (error) {
    // Some network file systems have no such call: nothing failed there.
    return codeOf(error) === "EINVAL" || codeOf(error) === "ENOTSUP";
  } finally {
    await handle?.close().catch(() => undefined);
  }
}

const unflushed = (shownAs: string): string => wording.unflushed(shownAs);

function failure(shownAs: string, code: string, kept?: string) {
  const { cause, remedy } = saveFailure(code);
  const copy = kept === undefined ? "" : wording.keptCopy(kept);
  return { saved: false, code, message: wording.notSaved(shownAs, cause, remedy, copy) } as const;
}

/** Errors without a code are bugs and go on. */
function codeOf(error: unknown): string {
  const code = (error as { code?: unknown } | undefined)?.code;
  if (typeof code !== "string") throw error;
  return code;
}
