import type { DrawingPicture } from "../../state/drawing-picture.ts";
import glyphs from "../../ui/glyphs.svg";
import { wording } from "./words.ts";

/** Of the field that the picture is drawn in: room around it, and the size of what is the same in all pictures. */
const AROUND = 30;
const LETTERS = 30;
const LEAST_GLYPH = 24;
/** Names of more boxes lie on one another. */
const MOST_NAMES = 24;

/** How much is in a drawing and which account of it was seen last; nothing where that is not known. */
export function sizeWords(picture: DrawingPicture | undefined): readonly string[] {
  if (picture === undefined) return [];
  const { count, state } = picture;
  return [count === 1 ? wording.n1Box : wording.boxes(count), ...(state === "proposed" ? ["proposed"] : [])];
}

interface Props {
  readonly picture: DrawingPicture;
  readonly small?: boolean;
}

/** A drawing in small, to know it again by. One as small as a line of text has no names and no signs. */
export function DrawingPictureOf({ picture, small = false }: Props) {
  const { width, height, boxes, roads } = picture;
  const named = !small && boxes.length <= MOST_NAMES;
  const over = named ? LETTERS : 0;
  // Two boxes may stand on one another.
  const keys = new Map(boxes.map(({ at }, index) => [at, index]));
  return (
    <svg
      className={small ? "drawing-picture small" : "drawing-picture"}
      viewBox={`${-AROUND} ${-AROUND - over} ${width + 2 * AROUND} ${height + 2 * AROUND + over}`}
      aria-hidden="true"
    >
      <path className="drawing-roads" d={roads.map(pathOf).join("")} />
      {boxes.map(({ at, name, glyph }) => {
        const [x, y, wide, high] = at;
        const size = Math.min(wide, high, 130) * 0.62;
        return (
          <g key={keys.get(at)}>
            <rect className="drawing-box" x={x} y={y} width={wide} height={high} />
            {!small && glyph !== undefined && size >= LEAST_GLYPH && (
              <svg
                aria-hidden="true"
                className="drawing-glyph"
                x={x + (wide - size) / 2}
                y={y + (high - size) / 2}
                width={size}
                height={size}
                viewBox="0 0 24 24"
              >
                <use href={`${glyphs}#${glyph}`} />
              </svg>
            )}
            {named && name !== undefined && (
              <text className="drawing-name" x={x} y={y - 8} fontSize={LETTERS}>
                {name}
              </text>
            )}
          </g>
        );
      })}
    </svg>
  );
}

function pathOf(points: readonly number[]): string {
  let path = "";
  for (let i = 0; i + 1 < points.length; i += 2) path += `${i === 0 ? "M" : "L"}${points[i]} ${points[i + 1]}`;
  return path;
}
