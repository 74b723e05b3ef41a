import { inflateSync } from "node:zlib";

const HEADER = 44;
const ENTRY = 20;

/**
 * A font file as it was before it was packed as WOFF 1.0 (W3C Recommendation of 13 December 2012, sections 3 to 5): the
 * renderer of pictures reads no packed ones. Throws on anything else.
 */
export function sfntOfWoff(woff: Uint8Array): Uint8Array {
  const from = new DataView(woff.buffer, woff.byteOffset, woff.byteLength);
  if (woff.byteLength < HEADER || from.getUint32(0) !== 0x774f4646) throw new Error("Not a WOFF file.");
  const count = from.getUint16(12);
  const tables = Array.from({ length: count }, (_, i) => {
    const at = HEADER + i * ENTRY;
    const [offset, packed, length] = [from.getUint32(at + 4), from.getUint32(at + 8), from.getUint32(at + 12)];
    const bytes = woff.subarray(offset, offset + packed);
    return {
      tag: from.getUint32(at),
      checksum: from.getUint32(at + 16),
      bytes: packed < length ? new Uint8Array(inflateSync(bytes)) : bytes,
    };
  });
  const padded = (length: number): number => (length + 3) & ~3;
  const directory = 12 + count * 16;
  const sfnt = new Uint8Array(directory + tables.reduce((sum, { bytes }) => sum + padded(bytes.length), 0));
  const to = new DataView(sfnt.buffer);
  const power = Math.floor(Math.log2(count));
  to.setUint32(0, from.getUint32(4));
  to.setUint16(4, count);
  to.setUint16(6, 2 ** power * 16);
  to.setUint16(8, power);
  to.setUint16(10, count * 16 - 2 ** power * 16);
  let offset = directory;
  for (const [i, { tag, checksum, bytes }] of tables.entries()) {
    const at = 12 + i * 16;
    to.setUint32(at, tag);
    to.setUint32(at + 4, checksum);
    to.setUint32(at + 8, offset);
    to.setUint32(at + 12, bytes.length);
    sfnt.set(bytes, offset);
    offset += padded(bytes.length);
  }
  return sfnt;
}
