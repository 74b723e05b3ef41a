import { bytesOfBase64, isBase64 } from "../lib/base64.ts";
import { readPictureHeader } from "../lib/picture-header.ts";
import { PHOTO_LIMITS } from "../model/photo-limits.ts";
import type { Check } from "./args-shape.ts";
import { argsWording, forms } from "./args-words.ts";

/** A JPEG in base64, no larger than `PHOTO_LIMITS` allow. */
export const base64Photo: Check = (value, at) => {
  if (typeof value !== "string" || value.length > PHOTO_LIMITS.characters || !isBase64(value))
    return argsWording.isNot(at, forms.photo(PHOTO_LIMITS.characters));
  const header = readPictureHeader(bytesOfBase64(value));
  if (header?.mediaType !== "image/jpeg") return argsWording.isNot(at, forms.jpeg);
  return Math.max(header.width, header.height) <= PHOTO_LIMITS.side
    ? undefined
    : argsWording.pixels(at, PHOTO_LIMITS.side);
};
