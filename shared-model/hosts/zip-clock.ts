/** Signatures of a ZIP file (APPNOTE.TXT, 4.3.12 and 4.3.16), and where its headers keep time and date. */
const END = 0x06054b50;
const ENTRY = 0x02014b50;
const IN_ENTRY = { time: 12, nameLength: 28, extraLength: 30, noteLength: 32, header: 42, length: 46 } as const;
const IN_HEADER = { time: 10 } as const;
/** 1 January 1980, the first day that a ZIP file knows, at midnight. */
const FIRST_MOMENT = 0x0021_0000;

/** Sets the moment of every file in a ZIP file to the same one, so that the same content makes the same bytes. In place. */
export function withoutClock<T extends Uint8Array>(zip: T): T {
  const view = new DataView(zip.buffer, zip.byteOffset, zip.byteLength);
  let end = zip.byteLength - 22;
  while (end >= 0 && view.getUint32(end, true) !== END) end -= 1;
  if (end < 0) throw new Error("Not a ZIP file.");
  let at = view.getUint32(end + 16, true);
  for (let left = view.getUint16(end + 10, true); left > 0 && view.getUint32(at, true) === ENTRY; left -= 1) {
    view.setUint32(at + IN_ENTRY.time, FIRST_MOMENT, true);
    view.setUint32(view.getUint32(at + IN_ENTRY.header, true) + IN_HEADER.time, FIRST_MOMENT, true);
    const lengths = [IN_ENTRY.nameLength, IN_ENTRY.extraLength, IN_ENTRY.noteLength];
    at += lengths.reduce<number>((sum, offset) => sum + view.getUint16(at + offset, true), IN_ENTRY.length);
  }
  return zip;
}
