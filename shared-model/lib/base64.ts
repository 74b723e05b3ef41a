const ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
const VALUES = new Uint8Array(128);
for (let value = 0; value < ALPHABET.length; value++) VALUES[ALPHABET.charCodeAt(value)] = value;

/** Whether a text is base64 (RFC 4648, section 4), padded, on one line. */
export const isBase64 = (text: string): boolean => text.length % 4 === 0 && /^[A-Za-z0-9+/]*={0,2}$/.test(text);

/** The bytes of a text for which `isBase64` holds. */
export function bytesOfBase64(text: string): Uint8Array<ArrayBuffer> {
  const padding = text.endsWith("==") ? 2 : text.endsWith("=") ? 1 : 0;
  const bytes = new Uint8Array((text.length / 4) * 3 - padding);
  const value = (at: number): number => VALUES[text.charCodeAt(at) & 127] ?? 0;
  for (let at = 0, to = 0; at < text.length; at += 4, to += 3) {
    const bits = (value(at) << 18) | (value(at + 1) << 12) | (value(at + 2) << 6) | value(at + 3);
    // What lies past the end of the bytes is padding, and is let go.
    bytes[to] = bits >> 16;
    bytes[to + 1] = bits >> 8;
    bytes[to + 2] = bits;
  }
  return bytes;
}

/** Bytes as padded base64 on one line. */
export function base64Of(bytes: Uint8Array): string {
  let text = "";
  for (let at = 0; at < bytes.length; at += 3) {
    const bits = ((bytes[at] ?? 0) << 16) | ((bytes[at + 1] ?? 0) << 8) | (bytes[at + 2] ?? 0);
    text += `${ALPHABET[bits >> 18]}${ALPHABET[(bits >> 12) & 63]}${ALPHABET[(bits >> 6) & 63]}${ALPHABET[bits & 63]}`;
  }
  const padding = (3 - (bytes.length % 3)) % 3;
  return padding === 0 ? text : text.slice(0, -padding) + "=".repeat(padding);
}
