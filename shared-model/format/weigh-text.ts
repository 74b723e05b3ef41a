import { LIMITS } from "./limits.ts";

/** What finding single characters in a text says about it. Counts in texts count too, so more than a limit is a suspicion. */
export interface TextWeight {
  /** Worth a careful look before anything is built from it. */
  readonly suspicious: boolean;
  readonly colons: number;
}

/**
 * Looks for so many objects, lists and fields that they would fill the memory, and for half of a surrogate pair, written
 * or escaped. Depth needs no look here: the parser does not recurse, and no more levels can stand than there are openings.
 */
export function weighText(text: string): TextWeight {
  const colons = countUpTo(text, ":", LIMITS.values);
  const containers = countUpTo(text, "{", LIMITS.containers) + countUpTo(text, "[", LIMITS.containers);
  const suspicious =
    containers > LIMITS.containers ||
    colons > LIMITS.values ||
    SURROGATE_ESCAPE.test(text) ||
    LONE_SURROGATE.test(text);
  return { suspicious, colons };
}

const SURROGATE_ESCAPE = /\\u[dD][89a-fA-F]/;
const LONE_SURROGATE = /\p{Surrogate}/u;

/** Stops one past `most`. Finding the next one is native code, far quicker than a look at every character here. */
function countUpTo(text: string, char: string, most: number): number {
  let count = 0;
  for (let at = text.indexOf(char); at >= 0 && count <= most; at = text.indexOf(char, at + 1)) count++;
  return count;
}

const QUOTE = 34;
const COLON = 58;
const BACKSLASH = 92;

/** Fields of all objects of a JSON text, a key that stands twice in one object counted twice. */
export function countMembers(text: string): number {
  let members = 0;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === COLON) members++;
    if (code !== QUOTE) continue;
    for (at++; at < text.length; at++) {
      const inner = text.charCodeAt(at);
      if (inner === BACKSLASH) at++;
      else if (inner === QUOTE) break;
    }
  }
  return members;
}
