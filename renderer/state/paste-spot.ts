import type { Point } from "../../shared-model/model/project.ts";

let spot: (() => Point | undefined) | undefined;

/** The sheet says where on it the pointer is, so that what is pasted lands there; until the returned function is called. */
export function offerPasteSpot(asked: () => Point | undefined): () => void {
  spot = asked;
  return () => {
    if (spot === asked) spot = undefined;
  };
}

/** Where on the sheet the pointer is; undefined where it is elsewhere, or there is none. */
export const pasteSpot = (): Point | undefined => spot?.();
