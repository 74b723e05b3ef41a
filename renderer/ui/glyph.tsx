import glyphs from "./glyphs.svg";

/** A sign of the glyph sheet, 24 × 24 unless told otherwise. Decorative: words beside it say what it means. */
export function Glyph({ id, size = 24 }: { readonly id: string; readonly size?: number }) {
  return (
    <svg className="glyph" width={size} height={size} viewBox="0 0 24 24" aria-hidden="true">
      <use href={`${glyphs}#${id}`} />
    </svg>
  );
}
