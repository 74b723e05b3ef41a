import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import { LIMITS } from "../../format/limits.ts";
import { failed, ok, problem, type Result } from "../../lib/result.ts";

/** How a file is called in messages; "-" is standard input. */
export const inputName = (file: string): string => (file === "-" ? "standard input" : file);

/** A character takes at least one byte, so a file that passes here may still have too many characters, never too few. */
const MOST_BYTES = LIMITS.characters;

/**
 * The text of a file, or of standard input for "-", a byte order mark kept. Never reads more than the limit, so an
 * endless input ends. Refuses what is missing, not a file, not readable, too large or not UTF-8.
 */
export async function readInput(file: string): Promise<Result<string>> {
  try {
    if (file !== "-" && (await stat(file)).isDirectory())
      return failed(problem("is-a-folder", "", "This is a folder. Name a file in it."));
    return decode(await readBytes(file));
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === undefined) throw error;
    return failed(problem("not-readable", "", REASONS[code] ?? `It cannot be read (${code}). Choose another file.`));
  }
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "There is no such file. Check its name and folder.",
  ENOTDIR: "A part of its path is not a folder. Check its name and folder.",
  EISDIR: "This is a folder. Name a file in it.",
  EACCES: "Reading it is not allowed. Change its permissions.",
  EPERM: "Reading it is not allowed. Change its permissions.",
  ENAMETOOLONG: "Its name is too long for a file. Check it.",
  ELOOP: "Its links lead round in a circle. Name the file itself.",
  ERR_INVALID_ARG_VALUE: "That cannot be the name of a file. Check it.",
};

/** @returns Undefined when there is more than the limit. */
async function readBytes(file: string): Promise<Buffer | undefined> {
  const chunks: Buffer[] = [];
  let length = 0;
  const stream = file === "-" ? process.stdin : createReadStream(file);
  for await (const chunk of stream) {
    const bytes = typeof chunk === "string" ? Buffer.from(chunk) : (chunk as Buffer);
    length += bytes.length;
    if (length > MOST_BYTES) return undefined;
    chunks.push(bytes);
  }
  return Buffer.concat(chunks, length);
}

function decode(bytes: Buffer | undefined): Result<string> {
  if (bytes === undefined) {
    const message = `It has more than the ${MOST_BYTES / 1024 / 1024} MiB allowed. Split it.`;
    return failed(problem("too-large", "", message));
  }
  const text = decodeUtf8(bytes);
  // A text in UTF-16 passes for UTF-8 when it has no mark and only plain letters, each with a zero beside it.
  if (text !== undefined && !text.includes("\0")) return ok(text);
  return failed(problem("not-utf-8", "", "It is not a text in UTF-8. Save it as UTF-8, or open a copy of it."));
}

function decodeUtf8(bytes: Buffer): string | undefined {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
}
