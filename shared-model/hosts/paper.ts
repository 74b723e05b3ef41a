/// <reference path="./pdfkit.d.ts" />

import PDFDocument from "pdfkit";
import { languageTag } from "../lib/language.ts";
import type { GroupMark, Mark, Page, PathMark, RectMark, Stroke, TextMark, Weight } from "../sheets/display-list.ts";
import { hatchStrokes } from "../sheets/hatch-lines.ts";
import { partsByFile } from "../sheets/page/measure.ts";
import { pathBounds } from "../sheets/path-data.ts";

/** Files of the face by cut: "latin-400", "extended-700". WOFF or plain; the file extended only where its letters come up. */
export type FaceFiles = Readonly<Record<`${"latin" | "extended"}-${Weight}`, Uint8Array>>;

export interface PaperOptions {
  readonly title: string;
  /** Day that the file bears as its date, "2026-05-04": the same pages and day give the same bytes. */
  readonly date: string;
  readonly face: FaceFiles;
  /** Told after each page. */
  readonly onPage?: (done: number, of: number) => void;
  /** Asked between pages; the writing is given up when it is aborted. */
  readonly signal?: AbortSignal;
  /** Lets others have their turn between pages, as a worker must to hear that it is stopped. */
  readonly pause?: () => Promise<void>;
}

/** Thrown when the writing was given up. */
export class PaperStopped extends Error {}

/** Millimetres to points. */
const POINTS = 72 / 25.4;

/**
 * Writes pages as a PDF: lines stay lines and text stays text that can be selected, its face embedded. Runs in Node and
 * in a worker of the window alike, since the files of the face come in as bytes.
 */
export async function pdfOf(pages: readonly Page[], options: PaperOptions): Promise<Uint8Array> {
  const { title, date, face, onPage, signal, pause } = options;
  const doc = new PDFDocument({
    // Without this the library asks for a face of its own.
    font: null,
    autoFirstPage: false,
    compress: true,
    pdfVersion: "1.7",
    lang: languageTag(),
    displayTitle: true,
    info: { Title: title, Creator: "Loadside", Producer: "Loadside", CreationDate: dayOf(date) },
  });
  const chunks: Uint8Array[] = [];
  const ended = new Promise<void>((done, fail) => {
    doc.on("data", (bytes) => chunks.push(bytes));
    doc.on("end", done);
    doc.on("error", fail);
  });
  for (const [name, bytes] of Object.entries(face)) doc.registerFont(name, bytes);
  let chapter: string | undefined;
  for (const [i, page] of pages.entries()) {
    if (signal?.aborted) throw new PaperStopped();
    doc.addPage({ size: [page.width * POINTS, page.height * POINTS], margin: 0 });
    if (page.title !== chapter) doc.outline.addItem(page.title);
    chapter = page.title;
    doc.save().scale(POINTS);
    for (const mark of page.marks) draw(doc, mark);
    doc.restore();
    onPage?.(i + 1, pages.length);
    await pause?.();
  }
  doc.end();
  await ended;
  return joined(chunks);
}

const dayOf = (date: string): Date => {
  const day = new Date(`${date.slice(0, 10)}T12:00:00Z`);
  return Number.isNaN(day.getTime()) ? new Date(0) : day;
};

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const chunk of chunks) {
    all.set(chunk, at);
    at += chunk.length;
  }
  return all;
}

type Doc = InstanceType<typeof PDFDocument>;

function draw(doc: Doc, mark: Mark): void {
  switch (mark.kind) {
    case "path":
    case "rect":
      drawShape(doc, mark);
      return;
    case "text":
      drawText(doc, mark);
      return;
    case "group":
      drawGroup(doc, mark);
  }
}

function drawGroup(doc: Doc, { marks, shift, scale, clip }: GroupMark): void {
  doc.save();
  if (shift !== undefined) doc.translate(shift.x, shift.y);
  if (scale !== undefined) doc.scale(scale);
  if (clip !== undefined) doc.rect(clip.x, clip.y, clip.width, clip.height).clip();
  for (const mark of marks) draw(doc, mark);
  doc.restore();
}

function outline(doc: Doc, mark: PathMark | RectMark): void {
  if (mark.kind === "path") doc.path(mark.d);
  else if (mark.radius === undefined) doc.rect(mark.x, mark.y, mark.width, mark.height);
  else doc.roundedRect(mark.x, mark.y, mark.width, mark.height, Math.min(mark.radius, mark.width / 2, mark.height / 2));
}

function drawShape(doc: Doc, mark: PathMark | RectMark): void {
  const { fill, stroke, hatch } = mark;
  const rule = mark.kind === "path" && mark.evenOdd ? "even-odd" : undefined;
  if (fill !== undefined) {
    outline(doc, mark);
    doc.fillColor(fill).fill(rule);
  }
  if (hatch !== undefined) {
    doc.save();
    outline(doc, mark);
    doc.clip(rule);
    const bounds = mark.kind === "rect" ? mark : pathBounds(mark.d);
    const { d, stroke: lines } = hatchStrokes(bounds, hatch);
    doc.path(d);
    setStroke(doc, lines);
    doc.stroke().restore();
  }
  if (stroke === undefined) return;
  outline(doc, mark);
  setStroke(doc, stroke);
  doc.stroke();
}

function setStroke(doc: Doc, { ink, width, dash, cap = "butt", join = "miter" }: Stroke): void {
  doc.strokeColor(ink).lineWidth(width).lineCap(cap).lineJoin(join);
  if (dash === undefined) doc.undash();
  else doc.dash(dash, { phase: 0 });
}

function drawText(doc: Doc, mark: TextMark): void {
  const { x, y, text, anchor, size, weight, ink, track = 0, tabular = false, turn } = mark;
  if (text.trim() === "") return;
  const options = {
    lineBreak: false,
    baseline: "alphabetic",
    features: tabular ? ["tnum"] : [],
    characterSpacing: track,
  } as const;
  doc.fontSize(size).fillColor(ink);
  const parts = partsByFile(text).map(({ file, text: words }) => {
    const font = `${file}-${weight}`;
    return { font, words, width: doc.font(font).widthOfString(words, options) + track };
  });
  const width = parts.reduce((sum, part) => sum + part.width, 0);
  let at = anchor === "start" ? x : anchor === "middle" ? x - width / 2 : x - width;
  if (turn !== undefined) doc.save().rotate(turn, { origin: [x, y] });
  for (const part of parts) {
    doc.font(part.font).text(part.words, at, y, options);
    at += part.width;
  }
  if (turn !== undefined) doc.restore();
}
