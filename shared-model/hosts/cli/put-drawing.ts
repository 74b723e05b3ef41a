import { realpath } from "node:fs/promises";
import { replaceFile } from "../atomic-file.ts";
import { complain } from "./console.ts";
import { makeFile } from "./make-file.ts";

/**
 * Writes what was made of a drawing, whole or not at all: the drawing itself may be named, any other file that is there
 * stays.
 * @returns What went wrong, as one line; undefined when the file is there.
 */
export const putDrawing = async (file: string, out: string, text: string): Promise<string | undefined> =>
  (await isSameFile(file, out)) ? replaceIt(out, text) : makeFile(out, text);

/** Whether both names lead to one file. What is not there is none. */
export async function isSameFile(file: string, out: string): Promise<boolean> {
  if (file === "-") return false;
  const [one, other] = await Promise.all([file, out].map((name) => realpath(name).catch(() => undefined)));
  return one !== undefined && one === other;
}

async function replaceIt(out: string, text: string): Promise<string | undefined> {
  const result = await replaceFile(out, new TextEncoder().encode(text));
  if (!result.saved) return result.message;
  if (result.note !== undefined) complain(result.note);
  return undefined;
}
