/** The list of files opened or saved lately: a small file in the person's own folder, and nothing that must not be lost. */
import { createHash } from "node:crypto";
import { readFile, stat } from "node:fs/promises";
import { basename, dirname, isAbsolute } from "node:path";
import type { ReplyOf } from "../ipc/contract.ts";
import type { ReplaceFile } from "../opened-file.mjs";
import { isDocumentPath } from "./policies/command-line.ts";

/** One line of the list. `usedAt` is ISO 8601. */
export interface RecentEntry {
  readonly path: string;
  readonly usedAt: string;
}

const LENGTH = 20;
const LARGEST = 1 << 20;
/** A disk that is away may not answer at all. */
const PATIENCE_MS = 500;

/** Stands for a path in the window, which learns no paths. */
export const recentId = (path: string): string => createHash("sha256").update(path).digest("hex").slice(0, 32);

/** The list with a file at its head, each file once. */
export const withRecent = (entries: readonly RecentEntry[], path: string, usedAt: string): readonly RecentEntry[] => [
  { path, usedAt },
  ...entries.filter((entry) => entry.path !== path).slice(0, LENGTH - 1),
];

/** The lines of the kept list that make sense; anybody can have written into it. */
export function parseRecent(text: string): readonly RecentEntry[] {
  try {
    const kept: unknown = JSON.parse(text);
    return Array.isArray(kept) ? kept.filter(isEntry).slice(0, LENGTH) : [];
  } catch {
    return [];
  }
}

function isEntry(value: unknown): value is RecentEntry {
  if (typeof value !== "object" || value === null) return false;
  const path: unknown = Reflect.get(value, "path");
  const usedAt: unknown = Reflect.get(value, "usedAt");
  if (typeof path !== "string" || !isAbsolute(path) || !isDocumentPath(path)) return false;
  return typeof usedAt === "string" && /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/.test(usedAt);
}

export interface RecentList {
  entries(): readonly RecentEntry[];
  pathOf(id: string): string | undefined;
  add(path: string): void;
  forget(id: string): void;
  clear(): void;
  /** For the window, with whether each file is there now. */
  shown(): Promise<ReplyOf<"recentFiles">>;
}

export interface RecentOptions {
  /** Where the list is kept. */
  readonly file: string;
  /** Shown as "~". */
  readonly home: string;
  readonly replaceFile: ReplaceFile;
  readonly onChange: () => void;
}

/** Reads the kept list. One that cannot be read or written is an empty one, and no reason to stop. */
export async function openRecentList({ file, home, replaceFile, onChange }: RecentOptions): Promise<RecentList> {
  let entries = parseRecent(await readSmall(file));
  // Two writes at once would end in either order.
  let writing: Promise<unknown> = Promise.resolve();
  const change = (next: readonly RecentEntry[]): void => {
    entries = next;
    onChange();
    writing = writing.then(() => replaceFile(file, Buffer.from(JSON.stringify(entries)))).catch(() => undefined);
  };
  return {
    entries: () => entries,
    pathOf: (id) => entries.find(({ path }) => recentId(path) === id)?.path,
    add: (path) => change(withRecent(entries, path, new Date().toISOString())),
    forget: (id) => change(entries.filter(({ path }) => recentId(path) !== id)),
    clear: () => change([]),
    shown: () =>
      Promise.all(
        entries.map(async ({ path, usedAt }) => ({
          id: recentId(path),
          name: basename(path),
          folder: shortened(dirname(path), home),
          usedAt,
          isThere: await isThere(path),
        })),
      ),
  };
}

async function readSmall(file: string): Promise<string> {
  try {
    return (await stat(file)).size > LARGEST ? "" : await readFile(file, "utf8");
  } catch {
    return "";
  }
}

async function isThere(path: string): Promise<boolean> {
  const patience = new Promise<false>((resolve) => setTimeout(() => resolve(false), PATIENCE_MS).unref());
  const look = stat(path).then(
    (at) => at.isFile(),
    () => false,
  );
  return Promise.race([look, patience]);
}

const shortened = (folder: string, home: string): string =>
  folder === home || folder.startsWith(`${home}/`) || folder.startsWith(`${home}\\`)
    ? `~${folder.slice(home.length)}`
    : folder;
