import { useEffect, useState } from "react";
import { bytesOfBase64, isBase64 } from "../../../shared-model/lib/base64.ts";
import { readPictureHeader } from "../../../shared-model/lib/picture-header.ts";
import { PHOTO_LIMITS } from "../../../shared-model/model/photo-limits.ts";
import type { Attachment } from "../../../shared-model/model/project.ts";
import { PHOTO_WORDS } from "../../state/photos/photo-words.ts";

interface Props {
  readonly photo: Attachment;
  /** What a screen reader says in the place of the picture. */
  readonly words: string;
}

/** A photo of the document. A file may come from anywhere: what would unfold to fill the memory is not drawn. */
export function PhotoPicture({ photo: { base64 }, words }: Props) {
  const [picture, setPicture] = useState<Picture>();
  useEffect(() => {
    const made = pictureOf(base64);
    setPicture(made);
    return () => {
      if (made.url !== undefined) URL.revokeObjectURL(made.url);
    };
  }, [base64]);
  if (picture === undefined) return <span className="photo-waits" />;
  if (picture.url === undefined) return <span className="photo-not">{PHOTO_WORDS.notShown}</span>;
  return <img src={picture.url} width={picture.width} height={picture.height} alt={words} decoding="async" />;
}

interface Picture {
  readonly url?: string;
  readonly width?: number;
  readonly height?: number;
}

function pictureOf(base64: string): Picture {
  const bytes = isBase64(base64) ? bytesOfBase64(base64) : undefined;
  const header = bytes && readPictureHeader(bytes);
  if (bytes === undefined || header === undefined) return {};
  const { width, height, mediaType } = header;
  if (width * height > PHOTO_LIMITS.shownMegapixels * 1_000_000) return {};
  return { url: URL.createObjectURL(new Blob([bytes], { type: mediaType })), width, height };
}
