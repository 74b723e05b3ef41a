import { type AnyId, asId } from "../../shared-model/model/ids.ts";

const ALPHABET = "abcdefghijklmnopqrstuvwxyz0123456789";

/** 12 letters and digits, 62 bits: two windows that edit copies of one document will not mint the same id twice. */
const LENGTH = 12;

/** A fresh random id that begins with a letter telling its kind, for people who read files: "b", "c", "d", "s", "j" ... */
export function mintId<T extends AnyId>(prefix: string): T {
  const bytes = new Uint8Array(LENGTH * 2);
  let text = prefix;
  while (text.length < prefix.length + LENGTH) {
    crypto.getRandomValues(bytes);
    for (const byte of bytes) {
      // Bytes past the last whole multiple of 36 would favour the first letters.
      if (byte < 252 && text.length < prefix.length + LENGTH) text += ALPHABET[byte % ALPHABET.length];
    }
  }
  return asId<T>(text);
}
