import glyphs from "../../ui/glyphs.svg";

/** A sign of the glyph sheet as part of a drawing, centred at a point. */
export function GlyphShape({
  id,
  x,
  y,
  size,
}: {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
}) {
  return (
    <svg
      aria-hidden="true"
      className="sheet-glyph"
      x={x - size / 2}
      y={y - size / 2}
      width={size}
      height={size}
      viewBox="0 0 24 24"
    >
      <use href={`${glyphs}#${id}`} />
    </svg>
  );
}
