import { bytesOfBase64, isBase64 } from "../lib/base64.ts";
import { readPictureHeader } from "../lib/picture-header.ts";
import { PHOTO_LIMITS } from "../model/photo-limits.ts";
import type { Check } from "./args-shape.ts";

/** A JPEG in base64, no larger than `PHOTO_LIMITS` allow. */
export const base64Photo: Check = (value, at) => {
  if (typeof value !== "string" || value.length > PHOTO_LIMITS.characters || !isBase64(value))
    return `${at} is not a picture in base64 of at most ${PHOTO_LIMITS.characters} characters`;
  const header = readPictureHeader(bytesOfBase64(value));
  if (header?.mediaType !== "image/jpeg") return `${at} is not a JPEG`;
  return Math.max(header.width, header.height) <= PHOTO_LIMITS.side
    ? undefined
    : `${at} is a picture of more than ${PHOTO_LIMITS.side} pixels a side`;
};
