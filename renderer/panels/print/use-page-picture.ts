import { useEffect, useState } from "react";
import { pagePicture } from "../../state/print/printing.ts";

/** So many pictures of pages are kept: those around the one that is seen. */
const KEPT = 8;

/** Addresses of pictures by layout and page, those used last at the end. */
const kept = new Map<string, Promise<string | undefined>>();

/** Address of the picture of a page; undefined where it could not be had. */
function pictureOf(layout: number, page: number): Promise<string | undefined> {
  const key = `${layout}/${page}`;
  const known = kept.get(key);
  const asked = known ?? fetchPicture(layout, page);
  kept.delete(key);
  kept.set(key, asked);
  for (const [old, address] of [...kept].slice(0, -KEPT)) {
    kept.delete(old);
    void address.then((gone) => gone !== undefined && URL.revokeObjectURL(gone));
  }
  return asked;
}

async function fetchPicture(layout: number, page: number): Promise<string | undefined> {
  const svg = await pagePicture(layout, page);
  if (svg !== undefined) return URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
  // Asked for again the next time.
  kept.delete(`${layout}/${page}`);
  return undefined;
}

/** Address of the picture of a page of a layout, once it has come; the pages beside it come after it. */
export function usePagePicture(layout: number | undefined, page: number, pages: number): string | undefined {
  const [shown, setShown] = useState<{ readonly key: string; readonly address: string }>();
  const key = `${layout}/${page}`;
  useEffect(() => {
    if (layout === undefined || page >= pages) return undefined;
    let isWanted = true;
    void pictureOf(layout, page).then((address) => {
      if (!isWanted || address === undefined) return;
      setShown({ key, address });
      for (const beside of [page + 1, page - 1]) if (beside >= 0 && beside < pages) void pictureOf(layout, beside);
    });
    return () => {
      isWanted = false;
    };
  }, [layout, page, pages, key]);
  return shown?.key === key ? shown.address : undefined;
}
