/** Points of a screen in a millimetre at 1x: 96 to the inch, as CSS has them. */
const POINTS_PER_MM = 96 / 25.4;
/** What a canvas of a browser holds at most on a side, and what a person can still use. */
const MOST_SIDE = 16_384;
const MOST_POINTS = 120_000_000;
/** Points that are drawn before others have their turn: a part of a blink. */
const POINTS_AT_ONCE = 4_000_000;

/** Size of a page as a picture, in points. */
export const pictureSize = (width: number, height: number, scale: number) => ({
  width: Math.round(width * POINTS_PER_MM * scale),
  height: Math.round(height * POINTS_PER_MM * scale),
});

/**
 * A page as a PNG: drawn in bands, so that the window stays in use meanwhile.
 * @param svg It needs nothing from elsewhere.
 * @param page In millimetres.
 * @param scale 1 to 4.
 * @throws {Error} The browser cannot draw it.
 */
export async function pngOfPage(
  svg: string,
  page: { readonly width: number; readonly height: number },
  scale: number,
  isWanted: () => boolean,
): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const { width, height } = pictureSize(page.width, page.height, scale);
  if (Math.max(width, height) > MOST_SIDE || width * height > MOST_POINTS) throw new Error("it would be too large");
  const address = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
  try {
    const image = new Image(width, height);
    image.src = address;
    await image.decode();
    const canvas = document.createElement("canvas");
    canvas.width = width;
    canvas.height = height;
    const paper = canvas.getContext("2d", { alpha: false });
    if (paper === null) throw new Error("the browser gives no place to draw on");
    paper.fillStyle = "#fff";
    paper.fillRect(0, 0, width, height);
    const band = Math.max(1, Math.floor(POINTS_AT_ONCE / width));
    for (let y = 0; y < height; y += band) {
      paper.save();
      paper.beginPath();
      paper.rect(0, y, width, Math.min(band, height - y));
      paper.clip();
      paper.drawImage(image, 0, 0, width, height);
      paper.restore();
      await new Promise((done) => setTimeout(done));
      if (!isWanted()) return undefined;
    }
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/png"));
    if (blob === null) throw new Error("it would be too large");
    return new Uint8Array(await blob.arrayBuffer());
  } finally {
    URL.revokeObjectURL(address);
  }
}
