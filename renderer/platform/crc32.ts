/** CRC-32 of IEEE 802.3, its polynomial bit-reversed. */
const POLYNOMIAL = 0xedb88320;

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? (value >>> 1) ^ POLYNOMIAL : value >>> 1;
  return value;
});

/** Finds torn and rotten data; it does not guard against forgery. */
export function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) sum = (sum >>> 8) ^ (TABLE[(sum ^ byte) & 0xff] ?? 0);
  return (sum ^ 0xffffffff) >>> 0;
}
