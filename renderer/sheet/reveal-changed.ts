import type { Patch } from "immer";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { documentStore, followDocument } from "../state/document-store.ts";
import { NEAR_FROM } from "./detail.ts";
import { isOpen, openStore } from "./open-boxes.ts";
import { isWhollySeen, reveal, SETTLED_MS, showWholeAgain, zoomNow } from "./sheet-view.ts";

/** Ends that one gesture moves; where more change, the change is of a box or a drawing, and no spot of it is meant. */
const FEW = 4;
/** Pixels around an end: its place, its code. */
const AROUND = 14;

/** Boxes that one gesture lets grow; where more do, the drawing was laid out anew. */
const FEW_BOXES = 4;

/** Boxes that a running glide is about to show whole. */
let gliding: { readonly boxes: readonly string[]; readonly until: number } = { boxes: [], until: 0 };

/**
 * After an edit a box is drawn anew and may have grown past the view, until the returned function is called. One that was
 * in view whole is shown whole again, by the smallest pan or the least zooming out; else an end that was landed is brought
 * back with the smallest pan. A box that was not in view before is not fetched.
 */
export function revealChanged(): () => void {
  return followDocument(({ patches }) => {
    if (patches === undefined) return;
    const ends = changedEnds(patches, documentStore.get().state === "proposed" ? "proposed" : "asFound");
    const seen = ends.length > FEW ? [] : ends.filter(({ box }) => isInView(box));
    const whole = wholeBoxes();
    if (seen.length === 0 && whole.size === 0) return;
    // What is drawn anew is in the page in the next frame, and measured in the one after.
    requestAnimationFrame(() => requestAnimationFrame(() => showBoxes(whole) || show(seen)));
  });
}

interface Sized {
  readonly width: number;
  readonly height: number;
  readonly zoom: number;
}

const isNear = (box: string): boolean => zoomNow() >= NEAR_FROM || isOpen(box as EnclosureId);

/** Size of the boxes that are drawn from near and in view as a whole, or will be in a moment. */
function wholeBoxes(): ReadonlyMap<string, Sized> {
  const boxes = new Map<string, Sized>();
  const coming = performance.now() < gliding.until ? gliding.boxes : [];
  if (zoomNow() < NEAR_FROM && openStore.get().ids.length === 0) return boxes;
  for (const node of document.querySelectorAll<HTMLElement>(".sheet-flow .react-flow__node")) {
    const box = node.dataset.id ?? "";
    const area = node.getBoundingClientRect();
    if (isNear(box) && (coming.includes(box) || isWhollySeen(area)))
      boxes.set(box, { width: area.width, height: area.height, zoom: zoomNow() });
  }
  return boxes;
}

/** @returns Whether boxes that have grown are in view whole now. */
function showBoxes(before: ReadonlyMap<string, Sized>): boolean {
  const grown = [...before].flatMap(([box, { width, height, zoom }]) => {
    const area = nodeOf(box as EnclosureId)?.getBoundingClientRect();
    const factor = isOpen(box as EnclosureId) ? 1 : zoomNow() / zoom;
    const more = area !== undefined && (area.width > width * factor + 1 || area.height > height * factor + 1);
    return more ? [{ box, area }] : [];
  });
  if (grown.length === 0 || grown.length > FEW_BOXES) return false;
  const areas = grown.map(({ area }) => area);
  if (areas.every(isWhollySeen)) return true;
  if (!showWholeAgain(around(areas), !grown.some(({ box }) => isOpen(box as EnclosureId)))) return false;
  gliding = { boxes: grown.map(({ box }) => box), until: performance.now() + SETTLED_MS };
  return true;
}

const around = (areas: readonly DOMRect[]) => ({
  left: Math.min(...areas.map(({ left }) => left)),
  top: Math.min(...areas.map(({ top }) => top)),
  right: Math.max(...areas.map(({ right }) => right)),
  bottom: Math.max(...areas.map(({ bottom }) => bottom)),
});

interface ChangedEnd {
  readonly box: EnclosureId;
  readonly end: string;
}

/** Ends of one account of the wiring whose places were set. */
export function changedEnds(patches: readonly Patch[], part: "asFound" | "proposed"): readonly ChangedEnd[] {
  const ends = new Map<string, ChangedEnd>();
  for (const { op, path } of patches) {
    const [of, table, box, field, end] = path;
    if (op === "remove" || of !== part || table !== "enclosures" || field !== "places" || end === undefined) continue;
    ends.set(`${box} ${end}`, { box: box as EnclosureId, end: String(end) });
  }
  return [...ends.values()];
}

const nodeOf = (box: EnclosureId): Element | null =>
  document.querySelector(`.react-flow__node[data-id="${CSS.escape(box)}"]`);

function isInView(box: EnclosureId): boolean {
  const area = nodeOf(box)?.getBoundingClientRect();
  const sheet = document.querySelector(".sheet-flow")?.getBoundingClientRect();
  return (
    area !== undefined &&
    sheet !== undefined &&
    area.right > sheet.left &&
    area.left < sheet.right &&
    area.bottom > sheet.top &&
    area.top < sheet.bottom
  );
}

function show(ends: readonly ChangedEnd[]): void {
  const areas = ends.flatMap(({ box, end }) => {
    const area = nodeOf(box)
      ?.querySelector(`[data-item="${CSS.escape(`end ${end}`)}"]`)
      ?.getBoundingClientRect();
    return area === undefined ? [] : [area];
  });
  if (areas.length === 0) return;
  const { left, top, right, bottom } = around(areas);
  reveal({ left: left - AROUND, top: top - AROUND, right: right + AROUND, bottom: bottom + AROUND });
}
