/** What the beginning of a picture says of itself. Sizes in pixels. */
export interface PictureHeader {
  readonly mediaType: "image/jpeg" | "image/png";
  readonly width: number;
  readonly height: number;
}

/**
 * Reads type and size of a JPEG (ITU-T T.81, annex B) or PNG (W3C, 11.2.1) without decoding it, so that one that would
 * unfold to fill the memory is known beforehand. Undefined for anything else, and for what is cut off before its size.
 */
export function readPictureHeader(bytes: Uint8Array): PictureHeader | undefined {
  if (beginsWith(bytes, PNG)) return pngHeader(bytes);
  return beginsWith(bytes, JPEG) ? jpegHeader(bytes) : undefined;
}

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52];
const JPEG = [0xff, 0xd8, 0xff];

const beginsWith = (bytes: Uint8Array, wanted: readonly number[]): boolean =>
  wanted.every((byte, index) => bytes[index] === byte);

function pngHeader(bytes: Uint8Array): PictureHeader | undefined {
  if (bytes.length < 24) return undefined;
  const view = viewOf(bytes);
  return sized("image/png", view.getUint32(16), view.getUint32(20));
}

const viewOf = ({ buffer, byteOffset, byteLength }: Uint8Array): DataView =>
  new DataView(buffer, byteOffset, byteLength);

const sized = (mediaType: PictureHeader["mediaType"], width: number, height: number): PictureHeader | undefined =>
  width > 0 && height > 0 ? { mediaType, width, height } : undefined;

/** Markers that stand alone, without a length after them: TEM and the restarts. */
const isAlone = (marker: number): boolean => marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7);
/** Start of a frame; the three that are left out hold tables. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

function jpegHeader(bytes: Uint8Array): PictureHeader | undefined {
  const view = viewOf(bytes);
  let at = 2;
  while (at + 9 <= bytes.length) {
    if (bytes[at] !== 0xff) return undefined;
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) at++;
    else if (isAlone(marker)) at += 2;
    else if (isFrame(marker)) return sized("image/jpeg", view.getUint16(at + 7), view.getUint16(at + 5));
    // The picture itself, or its end: no frame was told of.
    else if (marker === 0xda || marker === 0xd9) return undefined;
    else at += 2 + Math.max(2, view.getUint16(at + 2));
  }
  return undefined;
}
