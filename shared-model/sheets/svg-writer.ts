import type { GroupMark, Mark, Page, PathMark, RectMark, Stroke, TextMark } from "./display-list.ts";
import { hatchStrokes } from "./hatch-lines.ts";
import { tidy } from "./marks.ts";
import { measure } from "./page/measure.ts";
import { pathBounds, readPath } from "./path-data.ts";

/** Named first, so that the file looks as measured where the face is at hand; the widths are set in any case. */
const FAMILY = "Atkinson Hyperlegible Next, Atkinson Hyperlegible, sans-serif";

/**
 * One page as an SVG file in millimetres. It holds svg, title, g, path, rect, text, clipPath and nothing else: no
 * scripts, styles, links or pictures, and no address but the name space. Every text is set to the width that was measured, so that
 * the layout holds without the face. The same page gives the same text.
 */
export function svgOf(page: Page): string {
  const { width, height, title, marks } = page;
  const clips: string[] = [];
  const body = marks.map((mark) => markText(mark, clips)).join("");
  const defs = clips.length === 0 ? "" : `<defs>${clips.join("")}</defs>`;
  const size = `width="${tidy(width)}mm" height="${tidy(height)}mm" viewBox="0 0 ${tidy(width)} ${tidy(height)}"`;
  return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" ${size} font-family="${FAMILY}" fill="none">
<title>${escaped(title)}</title>
${defs}<rect width="${tidy(width)}" height="${tidy(height)}" fill="#ffffff"/>
${body}
</svg>
`;
}

/** Text for the content of an element or a value: marked, and free of what XML 1.0 does not allow. */
export const escaped = (text: string): string =>
  text
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, "")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");

function markText(mark: Mark, clips: string[]): string {
  switch (mark.kind) {
    case "path":
      return `${shapeText(mark)}${hatchText(mark, clips)}\n`;
    case "rect":
      return `${shapeText(mark)}${hatchText(mark, clips)}\n`;
    case "text":
      return textText(mark);
    case "group":
      return groupText(mark, clips);
  }
}

/** Only "#rrggbb" comes into the file, whatever a caller passed for a colour. */
function ink(colour: string): string {
  if (!/^#[0-9a-f]{6}$/i.test(colour)) throw new Error(`Not a colour: ${colour}`);
  return colour;
}

function outline(mark: PathMark | RectMark): string {
  if (mark.kind === "rect") {
    const { x, y, width, height, radius } = mark;
    const round = radius === undefined ? "" : ` rx="${tidy(radius)}"`;
    return `<rect x="${tidy(x)}" y="${tidy(y)}" width="${tidy(width)}" height="${tidy(height)}"${round}`;
  }
  readPath(mark.d);
  return `<path d="${escaped(mark.d)}"${mark.evenOdd ? ' fill-rule="evenodd" clip-rule="evenodd"' : ""}`;
}

const shapeText = (mark: PathMark | RectMark): string =>
  mark.fill === undefined && mark.stroke === undefined
    ? ""
    : `${outline(mark)}${mark.fill === undefined ? "" : ` fill="${ink(mark.fill)}"`}${strokeText(mark.stroke)}/>`;

function strokeText(stroke: Stroke | undefined): string {
  if (stroke === undefined) return "";
  const { width, dash, cap = "butt", join = "miter" } = stroke;
  const dashed = dash === undefined ? "" : ` stroke-dasharray="${dash.map(tidy).join(" ")}"`;
  const capped = cap === "butt" ? "" : ` stroke-linecap="${cap}"`;
  const joined = join === "miter" ? "" : ` stroke-linejoin="${join}"`;
  return ` stroke="${ink(stroke.ink)}" stroke-width="${tidy(width)}"${dashed}${capped}${joined}`;
}

function hatchText(mark: PathMark | RectMark, clips: string[]): string {
  const { hatch } = mark;
  if (hatch === undefined) return "";
  const bounds = mark.kind === "rect" ? mark : pathBounds(mark.d);
  const id = clipped(`${outline(mark)}/>`, clips);
  const { d, stroke } = hatchStrokes(bounds, hatch);
  return `<g clip-path="url(#${id})"><path d="${d}"${strokeText(stroke)}/></g>`;
}

function clipped(shape: string, clips: string[]): string {
  const id = `c${clips.length + 1}`;
  clips.push(`<clipPath id="${id}">${shape}</clipPath>`);
  return id;
}

function groupText({ marks, shift, scale, clip }: GroupMark, clips: string[]): string {
  const inside = marks.map((mark) => markText(mark, clips)).join("");
  if (inside === "") return "";
  const moves = [
    ...(shift === undefined ? [] : [`translate(${tidy(shift.x)} ${tidy(shift.y)})`]),
    ...(scale === undefined ? [] : [`scale(${scale})`]),
  ];
  const moved = moves.length === 0 ? "" : ` transform="${moves.join(" ")}"`;
  if (clip === undefined) return `<g${moved}>\n${inside}</g>\n`;
  const { x, y, width, height } = clip;
  const id = clipped(`<rect x="${tidy(x)}" y="${tidy(y)}" width="${tidy(width)}" height="${tidy(height)}"/>`, clips);
  return `<g${moved}><g clip-path="url(#${id})">\n${inside}</g></g>\n`;
}

function textText(mark: TextMark): string {
  const { text, x, y, size, weight, turn, box } = mark;
  if (text.trim() === "") return "";
  const long = turn === undefined ? box.width : box.height;
  const start = mark.anchor === "start" ? x : mark.anchor === "middle" ? x - long / 2 : x - long;
  const bold = weight === 400 ? "" : ` font-weight="${weight}"`;
  const turned = turn === undefined ? "" : ` transform="rotate(${turn} ${tidy(x)} ${tidy(y)})"`;
  const at = mark.tabular
    ? `x="${figuresAt(mark, start).map(tidy).join(" ")}"`
    : `x="${tidy(start)}" textLength="${tidy(long)}" lengthAdjust="spacingAndGlyphs"`;
  return `<text ${at} y="${tidy(y)}" font-size="${tidy(size)}"${bold} fill="${ink(mark.ink)}"${turned} xml:space="preserve">${escaped(text)}</text>\n`;
}

/** Where each letter begins; a figure narrower than its room stands in the middle of it. */
function figuresAt({ text, size, weight, track = 0 }: TextMark, start: number): readonly number[] {
  let x = start;
  return [...text].map((character) => {
    const room = measure(character, size, weight, 0, true);
    const at = x + (room - measure(character, size, weight)) / 2;
    x += room + track;
    return at;
  });
}
