import type { StateName } from "../../shared-model/model/project.ts";

/**
 * A drawing as a list of drawings shows it: small, without a way back to the document. In whole units of a field that
 * is at most `FIELD` wide and high.
 */
export interface DrawingPicture {
  readonly state: StateName;
  /** How many boxes the drawing has, panels aside; the picture may show fewer. */
  readonly count: number;
  readonly width: number;
  readonly height: number;
  readonly boxes: readonly PictureBox[];
  /** Cables: x and y of each corner in turn. */
  readonly roads: readonly (readonly number[])[];
}

export interface PictureBox {
  /** Left, top, width, height. */
  readonly at: readonly [number, number, number, number];
  readonly name?: string;
  /** Sign of what is in it, of the glyph sheet. */
  readonly glyph?: string;
}

export const FIELD = 1000;
/** Characters of a name that are kept. */
export const NAME_LENGTH = 16;
/** UTF-8 bytes that one picture may take. */
const LARGEST = 8 * 1024;
/** As many boxes or roads as fit into that, and more. */
const MOST = 1000;

/** The picture as text, with less and less in it until it is small enough. */
export function writePicture(picture: DrawingPicture): string {
  const bare = picture.boxes.map(({ at }): PictureBox => ({ at }));
  const steps: readonly Partial<DrawingPicture>[] = [
    {},
    { boxes: picture.boxes.map(({ name: _gone, ...rest }) => rest) },
    { boxes: bare },
    { boxes: bare, roads: [] },
  ];
  for (const step of steps) {
    const text = JSON.stringify({ ...picture, ...step });
    if (isSmall(text)) return text;
  }
  for (let most = bare.length; ; most = Math.floor(most / 2)) {
    const text = JSON.stringify({ ...picture, boxes: bare.slice(0, most), roads: [] });
    if (isSmall(text)) return text;
  }
}

const isSmall = (text: string): boolean => text.length <= LARGEST && new TextEncoder().encode(text).length <= LARGEST;

/** The picture in a text that was kept; undefined when it is none. Whatever can write there is not trusted. */
export function readPicture(text: string): DrawingPicture | undefined {
  if (!isSmall(text)) return undefined;
  try {
    const { state, count, width, height, boxes, roads } = JSON.parse(text) as Record<string, unknown>;
    if (state !== "as-found" && state !== "proposed") return undefined;
    if (!isWhole(count, 1e6) || !isWhole(width) || !isWhole(height) || width < 1 || height < 1) return undefined;
    if (!isListOf(boxes, isBox) || !isListOf(roads, isRoad)) return undefined;
    return { state, count, width, height, boxes, roads };
  } catch {
    return undefined;
  }
}

const isWhole = (value: unknown, most = FIELD): value is number =>
  Number.isInteger(value) && Number(value) >= 0 && Number(value) <= most;

const isListOf = <T>(value: unknown, isOne: (one: unknown) => one is T): value is readonly T[] =>
  Array.isArray(value) && value.length <= MOST && value.every(isOne);

const isRoad = (value: unknown): value is readonly number[] =>
  Array.isArray(value) && value.length >= 4 && value.length % 2 === 0 && value.every((each) => isWhole(each));

function isBox(value: unknown): value is PictureBox {
  if (typeof value !== "object" || value === null) return false;
  const { at, name, glyph } = value as Record<string, unknown>;
  if (!Array.isArray(at) || at.length !== 4 || !at.every((each) => isWhole(each))) return false;
  if (name !== undefined && (typeof name !== "string" || name.length > NAME_LENGTH)) return false;
  return glyph === undefined || (typeof glyph === "string" && /^[a-z0-9-]{1,40}$/.test(glyph));
}
