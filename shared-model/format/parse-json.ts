import { catalogue, type Part } from "../lib/catalogue.ts";
import { failed, ok, problem, type Result } from "../lib/result.ts";
import { LIMITS } from "./limits.ts";
import { readCarefully } from "./read-carefully.ts";

const wording = catalogue({
  empty: "The file is empty. Open another, or a copy of it.",
  tooLarge: (characters: Part, most: Part) =>
    `The file has ${characters} characters, more than the ${most} allowed. Split it.`,
});

/** The text of a file without its byte order mark; refuses one that is too large or has nothing in it. */
export function bodyOf(textOfFile: string): Result<string> {
  if (textOfFile.length > LIMITS.characters) {
    const message = wording.tooLarge(textOfFile.length, LIMITS.characters);
    return failed(problem("too-large", "", message));
  }
  const text = withoutMark(textOfFile);
  if (/^[ \t\n\r]*$/.test(text)) return failed(problem("empty", "", wording.empty));
  return ok(text);
}

/** The text of a file without the byte order mark that may stand before it. */
export const withoutMark = (textOfFile: string): string =>
  textOfFile.startsWith("\ufeff") ? textOfFile.slice(1) : textOfFile;

/**
 * Any JSON text within the limits of a file, with no key twice in one object, no reserved key, no number that is not
 * finite and no half of a surrogate pair. For input that is small; a document is read by `parseProject`.
 */
export function parseJson(textOfFile: string): Result<unknown> {
  const body = bodyOf(textOfFile);
  if (!body.ok) return body;
  const found = readCarefully(body.value);
  return found === undefined ? ok(JSON.parse(body.value)) : failed(found);
}
