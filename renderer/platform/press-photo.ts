import { PHOTO_LIMITS } from "../../shared-model/model/photo-limits.ts";

/** Each as large as it is allowed, and with less of its fineness than the one before. */
const TRIES = [
  { side: PHOTO_LIMITS.side, quality: 0.82 },
  { side: PHOTO_LIMITS.side, quality: 0.68 },
  { side: PHOTO_LIMITS.side, quality: 0.5 },
  { side: 1280, quality: 0.5 },
  { side: 960, quality: 0.45 },
] as const;

/**
 * Draws a picture anew as a JPEG within `PHOTO_LIMITS`, upright as its camera meant it, on white where it is see-through.
 * What a file tells beside its picture (where and by which camera it was taken) is not drawn, and so is gone.
 * Throws where the picture is damaged.
 */
export async function pressPhoto(picture: Blob): Promise<Uint8Array> {
  const bitmap = await createImageBitmap(picture, { imageOrientation: "from-image" });
  try {
    let pressed = await pressTo(bitmap, TRIES[0]);
    for (const one of TRIES.slice(1)) if (pressed.size > PHOTO_LIMITS.bytes) pressed = await pressTo(bitmap, one);
    return new Uint8Array(await pressed.arrayBuffer());
  } finally {
    bitmap.close();
  }
}

async function pressTo(bitmap: ImageBitmap, { side, quality }: (typeof TRIES)[number]): Promise<Blob> {
  const scale = Math.min(1, side / Math.max(bitmap.width, bitmap.height));
  const width = Math.max(1, Math.round(bitmap.width * scale));
  const height = Math.max(1, Math.round(bitmap.height * scale));
  const canvas = new OffscreenCanvas(width, height);
  const pen = canvas.getContext("2d");
  if (pen === null) throw new Error("No canvas.");
  pen.fillStyle = "#fff";
  pen.fillRect(0, 0, width, height);
  pen.imageSmoothingQuality = "high";
  pen.drawImage(bitmap, 0, 0, width, height);
  return canvas.convertToBlob({ type: "image/jpeg", quality });
}
