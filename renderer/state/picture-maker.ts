import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { ClipPicture } from "../platform/system-clipboard.ts";

/** Draws boxes of the document, light, as lines and as points. */
export interface PictureMaker {
  drawBoxes(ids: readonly EnclosureId[]): Promise<Pick<ClipPicture, "png" | "svg">>;
}

let fetchMaker: (() => Promise<PictureMaker>) | undefined;

/** The sheet draws, until the returned function is called. */
export function offerPictures(fetch: () => Promise<PictureMaker>): () => void {
  fetchMaker = fetch;
  return () => {
    if (fetchMaker === fetch) fetchMaker = undefined;
  };
}

/** Brings what draws; undefined where there is no sheet. */
export const fetchPictureMaker = (): Promise<PictureMaker> | undefined => fetchMaker?.();
