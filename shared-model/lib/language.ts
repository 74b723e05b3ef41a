const KEY = "loadside.language";
const PSEUDO = "pseudo";

export type Language = "en" | "pseudo";

/** Stands in the name of a worker that speaks the language for tests. */
const PSEUDO_WORKER = / pseudo$/;

/**
 * The language of this window, worker or command, chosen before it starts: words may be kept as constants. A window
 * keeps it in its storage, a worker is told by its name, a command speaks English.
 *
 * "pseudo" shows what is in no catalogue, and what is cut off where words are longer; it is for those who test.
 */
export function language(): Language {
  const scope = globalThis as {
    readonly document?: unknown;
    readonly localStorage?: { getItem(key: string): string | null };
    readonly name?: unknown;
  };
  if (scope.document === undefined) return PSEUDO_WORKER.test(String(scope.name)) ? "pseudo" : "en";
  try {
    return scope.localStorage?.getItem(KEY) === "pseudo" ? "pseudo" : "en";
  } catch {
    return "en";
  }
}

/** By RFC 5646, for whoever reads a document aloud. The accents of "pseudo" are the private region XA of English, as CLDR has it. */
export const languageTag = (): string => (language() === "pseudo" ? "en-XA" : "en");

/** The name of a worker that is to speak as this window does. */
export const workerName = (name: string): string => (language() === "pseudo" ? `${name} ${PSEUDO}` : name);
