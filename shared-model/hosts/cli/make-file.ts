import { replaceFile } from "../atomic-file.ts";
import { complain } from "./console.ts";
import { isFolder } from "./is-folder.ts";

/**
 * Makes a file that is not there yet, whole or not at all.
 * @param option The option that names it.
 * @returns What went wrong, as one line; undefined when the file is there.
 */
export async function makeFile(out: string, text: string, option = "--out"): Promise<string | undefined> {
  if (out.trim() === "" || out === "-") return `loadside: ${option} needs the name of a file. Give one.`;
  const result = await replaceFile(out, new TextEncoder().encode(text), { onlyNew: true });
  if (result.saved) {
    if (result.note !== undefined) complain(result.note);
    return undefined;
  }
  if (result.code !== "EEXIST") return result.message;
  return (await isFolder(out))
    ? `${out}: This is a folder. Name a file in it.`
    : `${out}: It is there already and stays as it is. Choose another name.`;
}
