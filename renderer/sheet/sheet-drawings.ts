import { useEffect, useMemo, useState } from "react";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import type { CableId, EnclosureId } from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { cablesInto } from "../../shared-model/queries/cables-into.ts";
import { afterPaint } from "../platform/after-paint.ts";
import { type DocumentState, documentStore, installationOf } from "../state/document-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { useStore } from "../state/use-store.ts";
import { drawingOf, knownDrawingOf } from "./drawings.ts";

export interface SheetDrawings {
  readonly document: DocumentState;
  /** The same map while no drawing changed. */
  readonly drawings: ReadonlyMap<EnclosureId, BoxDrawing>;
  /** Boxes that wait to be drawn. */
  readonly missing: number;
}

/**
 * How long drawing may hold the window up: at once for a house, in slices between two frames for a large building, which is
 * seen from afar first, before any of its boxes is drawn.
 */
const HOUSE_MS = 60;
const NOT_YET = -1;
const SLICE_MS = 12;
/** The sheet as a whole costs more than a slice: it is shown with what was drawn since not after each. */
const SHOWN_EACH_MS = 150;
/** Boxes that one edit may touch and that are drawn in its own turn. */
const AT_ONCE = 60;

const itself = (document: DocumentState): DocumentState => document;
const sameWiring = (a: DocumentState, b: DocumentState): boolean =>
  a.project.layout === b.project.layout && installationOf(a) === installationOf(b);

/** The drawings of all boxes. Boxes of a large building appear as they are drawn, so that the window answers meanwhile. */
export function useSheetDrawings(): SheetDrawings {
  const document = useStore(documentStore, itself, sameWiring);
  const [keep] = useState(createKeeper);
  const [slice, nextSlice] = useState(0);
  const shown = useMemo(
    () => keep(document, slice > 0 ? SLICE_MS : isHouse(document) ? HOUSE_MS : NOT_YET),
    [keep, document, slice],
  );
  useEffect(() => {
    if (shown.missing === 0) return undefined;
    const showAt = performance.now() + SHOWN_EACH_MS;
    const drawOn = (): void => {
      const isDone = keep.drawAhead(shown.document, SLICE_MS);
      if (isDone || slice === 0 || performance.now() > showAt) nextSlice(slice + 1);
      else timer = setTimeout(drawOn);
    };
    let timer: ReturnType<typeof setTimeout> | undefined;
    let isOver = false;
    const begin = (): void => {
      if (!isOver) timer = setTimeout(drawOn);
    };
    // What is seen from afar is seen first.
    if (shown.drawings.size === 0) afterPaint(() => afterPaint(begin));
    else begin();
    return () => {
      isOver = true;
      clearTimeout(timer);
    };
  }, [keep, shown, slice]);
  return shown;
}

const isHouse = (document: DocumentState): boolean =>
  Object.keys(installationOf(document).enclosures).length <= AT_ONCE;

export interface Keeper {
  /** @param budget How long it may draw, in milliseconds. */
  (document: DocumentState, budget: number): SheetDrawings;
  /** Draws what waits, to be shown with the next call. @returns Whether nothing is left to be drawn. */
  drawAhead(document: DocumentState, budget: number): boolean;
}

/** Keeps drawings from one state of the document to the next, and draws again only what an edit may have changed. */
export function createKeeper(now: () => number = () => performance.now()): Keeper {
  let before: SheetDrawings | undefined;
  let pending = new Set<EnclosureId>();
  /** Drawn since the last call. */
  const ahead = new Set<EnclosureId>();
  const drawAhead = (document: DocumentState, budget: number): boolean => {
    const end = now() + budget;
    for (const id of pending) {
      if (ahead.has(id)) continue;
      if (now() > end) return false;
      drawingOf(document, id);
      ahead.add(id);
    }
    return true;
  };
  const keeper = (document: DocumentState, budget: number): SheetDrawings => {
    const { enclosures } = installationOf(document);
    let drawings = before?.drawings ?? new Map<EnclosureId, BoxDrawing>();
    const edit = (): Map<EnclosureId, BoxDrawing> => {
      const copy = drawings === before?.drawings ? new Map(drawings) : (drawings as Map<EnclosureId, BoxDrawing>);
      drawings = copy;
      return copy;
    };
    const draw = (id: EnclosureId): void => {
      pending.delete(id);
      keep(id, drawingOf(document, id));
    };
    const keep = (id: EnclosureId, drawing: BoxDrawing | undefined): void => {
      if (drawing === undefined) edit().delete(id);
      else if (drawing !== drawings.get(id)) edit().set(id, drawing);
    };
    /** Whether a box needs no drawing: it is gone, or it is the same in the other state. */
    const isSettled = (id: EnclosureId): boolean => {
      const drawing = knownDrawingOf(document, id);
      if (drawing === undefined && id in enclosures) return false;
      pending.delete(id);
      keep(id, drawing);
      return true;
    };
    const edited = before === undefined ? [] : [...affected(before.document, document)];
    // After a switch of the state nearly every box is another object, and few are another drawing.
    const open = edited.length <= AT_ONCE ? edited : edited.filter((id) => !isSettled(id));
    // What an edit changed shows at once, whatever else still waits; another document waits as a whole.
    const urgent = open.length <= AT_ONCE ? open : [];
    if (before === undefined) pending = new Set(firstSeenFirst(document));
    else if (urgent.length === 0) for (const id of open) pending.add(id);
    for (const id of urgent) draw(id);
    const end = now() + budget;
    for (const id of pending) {
      if (now() > end) break;
      draw(id);
    }
    ahead.clear();
    before = { document, drawings, missing: pending.size };
    return before;
  };
  return Object.assign(keeper, { drawAhead });
}

/**
 * The sheet opens at its upper left corner. A panel full of breakers takes as long to draw as a dozen boxes: the first view
 * does not wait for it.
 */
function firstSeenFirst(document: DocumentState): readonly EnclosureId[] {
  const places = placesOf(document);
  const away = (id: EnclosureId): number => Math.max(places[id]?.x ?? 0, places[id]?.y ?? 0);
  return Object.values(installationOf(document).enclosures)
    .sort((a, b) => Number(a.kind === "panel") - Number(b.kind === "panel") || away(a.id) - away(b.id))
    .map(({ id }) => id);
}

/** Boxes whose drawing an edit may have changed: those it touched, and those joined to them by a cable. */
function affected(a: DocumentState, b: DocumentState): ReadonlySet<EnclosureId> {
  const was = installationOf(a);
  const is = installationOf(b);
  const touched = new Set<EnclosureId>();
  differing(was.enclosures, is.enclosures, touched);
  differing(a.project.layout.enclosures, b.project.layout.enclosures, touched);
  differing(was.intent.boxes, is.intent.boxes, touched);
  const all = new Set(touched);
  for (const id of touched) for (const far of neighbours(is, id)) all.add(far);
  if (was.cables !== is.cables) {
    const cables = differing(was.cables, is.cables, new Set<CableId>());
    for (const cable of cables) for (const id of [...ends(was, cable), ...ends(is, cable)]) all.add(id);
  }
  if (a.project.layout.splices !== b.project.layout.splices) {
    const moved = differing(a.project.layout.splices, b.project.layout.splices, new Set());
    for (const { id, splices } of Object.values(is.enclosures))
      for (const splice of moved) if (splice in splices) all.add(id);
  }
  return all;
}

/** Keys whose values are not the same object in both tables. */
function differing<K extends string>(
  a: Readonly<Record<K, unknown>>,
  b: Readonly<Record<K, unknown>>,
  into: Set<K>,
): Set<K> {
  if (a === b) return into;
  for (const key in a) if (a[key] !== b[key]) into.add(key);
  for (const key in b) if (!(key in a)) into.add(key);
  return into;
}

const neighbours = (installation: Installation, id: EnclosureId): readonly EnclosureId[] =>
  cablesInto(installation.cables, id).flatMap(({ cable }) => ends(installation, cable.id));

const ends = (installation: Installation, id: CableId): readonly EnclosureId[] => {
  const sides = installation.cables[id]?.sides;
  return sides === undefined ? [] : [sides.a, sides.b].flatMap((side) => ("enclosure" in side ? [side.enclosure] : []));
};
