/** What photos of a drawing may be at most. Chosen so that a drawing full of them still opens and saves at once. */
export const PHOTO_LIMITS = {
  /** Pixels of the longer side that a photo is brought down to. */
  side: 1600,
  /** Bytes that a photo is pressed into: enough to read a label on a box. */
  bytes: 300_000,
  /** Characters of base64 that a command takes for one; some photos cannot be pressed as far as they should be. */
  characters: 800_000,
  /** Of one box, and of a whole drawing. */
  ofBox: 12,
  ofDrawing: 60,
  /** Characters of base64 of all photos together: less than half of what a file may have. */
  allCharacters: 24_000_000,
  /** Millions of pixels that are unfolded to be shown; a file of other origin may hold more than ours. */
  shownMegapixels: 20,
} as const;
