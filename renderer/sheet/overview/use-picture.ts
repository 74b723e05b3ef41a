import { type RefObject, useEffect, useMemo, useState } from "react";
import { hull } from "../../../shared-model/geometry/free-group-place.ts";
import type { CableId } from "../../../shared-model/model/ids.ts";
import { type FindingsState, findingsStore } from "../../state/findings-store.ts";
import { useStore } from "../../state/use-store.ts";
import { shownRoads } from "../bend/bend-store.ts";
import { shownDifference } from "../difference.ts";
import { type FarInk, readInk, watchInk } from "../far/far-ink.ts";
import type { RoadTraits } from "../far/far-paint-roads.ts";
import { farItems } from "../far/far-scene.ts";
import { Stamps } from "../far/far-stamps.ts";
import type { SheetDrawings } from "../sheet-drawings.ts";
import { wholeOf } from "../whole-of.ts";
import { type OverviewMap, overviewMap } from "./overview-map.ts";
import { paintOverview } from "./overview-paint.ts";

/** What the picture may be at most, in pixels. */
export interface Most {
  readonly width: number;
  readonly height: number;
}

/**
 * Paints the picture of the overview when the drawing, its findings or its colours are others, while the window has
 * nothing else to do; never because of the view.
 * @returns How the drawing stands in it; undefined while nothing is drawn.
 */
export function usePicture(
  host: RefObject<HTMLCanvasElement | null>,
  shown: SheetDrawings,
  { width, height }: Most,
): OverviewMap | undefined {
  const found = useStore(findingsStore, itself, sameAnswers);
  const anyRoads = useStore(shownRoads, ({ map }) => map !== undefined && map.roads.length > 0);
  const [ink, setInk] = useState<FarInk>();
  const stamps = useMemo(() => ink && new Stamps(ink, devicePixelRatio), [ink]);
  const [map, setMap] = useState<OverviewMap>();
  useEffect(() => {
    const read = (): void => {
      if (host.current !== null) setInk(readInk(host.current));
    };
    read();
    return watchInk(read);
  }, [host]);
  useEffect(() => {
    // Boxes that still wait to be drawn have no size yet.
    if (ink === undefined || stamps === undefined || shown.missing > 0) return undefined;
    return whenIdle(() => {
      const next = mapOf(shown, { width, height });
      setMap((before) => (next !== undefined && before !== undefined && sameMap(before, next) ? before : next));
      const canvas = host.current;
      const context = canvas?.getContext("2d");
      if (canvas == null || context == null || next === undefined) return;
      const dots = devicePixelRatio;
      canvas.width = Math.round(next.width * dots);
      canvas.height = Math.round(next.height * dots);
      const roads = anyRoads ? (shownRoads.get().map?.roads ?? []) : [];
      paintOverview({ ...next, context, dots, ink, stamps }, farItems(shown, found), roads, traitsOf(shown));
      // For tests: how often it was painted.
      canvas.dataset.painted = `${1 + Number(canvas.dataset.painted ?? 0)}`;
    });
  }, [host, width, height, ink, stamps, shown, found, anyRoads]);
  return map;
}

const sameMap = (a: OverviewMap, b: OverviewMap): boolean =>
  a.x === b.x && a.y === b.y && a.zoom === b.zoom && a.width === b.width && a.height === b.height;

function mapOf(shown: SheetDrawings, most: Most): OverviewMap | undefined {
  const whole = wholeOf(shown.document)?.area;
  if (whole === undefined) return undefined;
  const points = shownRoads.get().map?.roads.flatMap((road) => road.points) ?? [];
  return overviewMap(hull([whole, ...points.map(({ x, y }) => ({ x, y, width: 0, height: 0 }))]), most);
}

/** Thin lines, of which only those that are new are told apart. */
function traitsOf({ document }: SheetDrawings): RoadTraits {
  const fresh = shownDifference(document)?.cables;
  const isNew = ({ cable }: { readonly cable: CableId }): boolean => fresh?.get(cable) === "new";
  return { isNew, isChosen: () => false, isGuarded: () => false };
}

/** While the window waits for the next hand, or after a second of work. @returns Takes it back. */
function whenIdle(call: () => void): () => void {
  if (typeof requestIdleCallback === "undefined") {
    const timer = setTimeout(call, 100);
    return () => clearTimeout(timer);
  }
  const asked = requestIdleCallback(call, { timeout: 1000 });
  return () => cancelIdleCallback(asked);
}

const itself = (found: FindingsState): FindingsState => found;
const sameAnswers = (a: FindingsState, b: FindingsState): boolean =>
  a.findings === b.findings && a.couldNotTell === b.couldNotTell && a.ledgers === b.ledgers;
