/** What we were started with comes from anybody: only paths of documents are taken from it. */
import { extname, resolve } from "node:path";

const ENDING = ".loadside";
const MOST_FILES = 20;

/** Switches that open a program that was handed to people to whoever started it, or weaken its walls. */
const REFUSED: readonly RegExp[] = [
  /^--inspect/,
  /^--remote-debugging/,
  /^--remote-allow-origins/,
  /^--js-flags/,
  /^--no-sandbox$/,
  /^--disable-web-security$/,
  /^--disable-site-isolation/,
  /^--disable-features/,
  /^--enable-features/,
  /^--enable-blink-features/,
  /^--load-extension/,
  /^--user-data-dir/,
  /^--proxy-/,
  /^--host-rules/,
  /^--ignore-certificate-errors/,
];

/** The first argument with which the packaged program does not start; developers need some of them. */
export const refusedSwitch = (args: readonly string[], isPackaged: boolean): string | undefined =>
  isPackaged ? args.find((arg) => REFUSED.some((pattern) => pattern.test(arg.toLowerCase()))) : undefined;

/**
 * Absolute paths of the documents among the arguments.
 * @param args Without the program itself and, where it is not packaged, without its script.
 * @param folder The folder that the person stood in.
 */
export const filesAmong = (args: readonly string[], folder: string): readonly string[] =>
  args
    .filter((arg) => !arg.startsWith("-") && isDocumentPath(arg))
    .slice(0, MOST_FILES)
    .map((arg) => resolve(folder, arg));

/** The same for what a second start hands over: its data can be anything. */
export function filesHandedOver(data: unknown): readonly string[] {
  if (typeof data !== "object" || data === null) return [];
  const files: unknown = Reflect.get(data, "files");
  if (!Array.isArray(files)) return [];
  return files
    .filter((file): file is string => typeof file === "string" && isDocumentPath(file) && resolve(file) === file)
    .slice(0, MOST_FILES);
}

/** Whether a path has the ending of a document, and nothing that no path holds. An address such as app://x is none. */
export const isDocumentPath = (path: string): boolean =>
  path.length <= 32_767 && extname(path) === ENDING && !path.includes("\0") && !/^[a-z][a-z0-9+.-]+:/i.test(path);
