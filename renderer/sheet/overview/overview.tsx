import "./overview.css";
import { useStore as useFlowStore, useStoreApi } from "@xyflow/react";
import { type KeyboardEvent, type PointerEvent, useEffect, useLayoutEffect, useRef } from "react";
import type { Point } from "../../../shared-model/model/project.ts";
import { isTextField } from "../../platform/text-field.ts";
import { preferencesStore } from "../../state/preferences-store.ts";
import { useStore } from "../../state/use-store.ts";
import type { SheetDrawings } from "../sheet-drawings.ts";
import { currentView, setView, sheetArea } from "../sheet-view.ts";
import type { Viewport } from "../view-fit.ts";
import { tellViewRests } from "../view-rest.ts";
import { frameIn, type OverviewMap, viewAround, viewDragged } from "./overview-map.ts";
import { type Most, usePicture } from "./use-picture.ts";
import { wording } from "./words.ts";

/** In a sheet that is less wide or high than this the smaller one. */
const ROOMY = { width: 620, height: 520 };
const LARGE: Most = { width: 210, height: 140 };
const SMALL: Most = { width: 150, height: 96 };

const hasRoom = ({ width, height }: Most): boolean => width >= ROOMY.width && height >= ROOMY.height;

interface Props {
  readonly shown: SheetDrawings;
  /** Whether it was asked for just now, so that the keys go on in it. */
  readonly isAsked: boolean;
}

/** The whole drawing in a corner of the sheet, and a frame around what is in view, by which the view is moved. */
export default function Overview({ shown, isAsked }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const pad = useRef<HTMLButtonElement>(null);
  const isRoomy = useFlowStore(hasRoom);
  const map = usePicture(canvas, shown, isRoomy ? LARGE : SMALL);
  const frame = useFrame(map);
  const drag = useDrag(map);
  // The legend keeps the corner that it was put into.
  const aside = useStore(preferencesStore, ({ legend, legendCorner }) => legend && legendCorner === "bottom-left");
  // What else stands on the sheet goes out of its way.
  useLayoutEffect(() => {
    tellViewRests();
    return tellViewRests;
  }, []);
  useEffect(() => {
    if (isAsked && !isTextField(document.activeElement)) pad.current?.focus({ preventScroll: true });
    return () => {
      if (document.activeElement === document.body || document.activeElement === pad.current) toSheetStop();
    };
  }, [isAsked]);
  return (
    <section
      className="sheet-overview"
      aria-label={wording.region}
      data-corner={aside ? "bottom-right" : "bottom-left"}
    >
      <div className="sheet-overview-head">
        <span>{wording.overview}</span>
        <button type="button" onClick={close}>
          {wording.close}
        </button>
      </div>
      {/* The arrow keys go to it, not to who reads the page aloud. */}
      <div role="application" aria-label={wording.region}>
        <button
          ref={pad}
          type="button"
          className="sheet-overview-map"
          aria-label={wording.view}
          aria-description={wording.keys}
          title={wording.keys}
          onKeyDown={onKey}
          {...drag}
          {...(map && { style: { width: map.width, height: map.height } })}
        >
          <canvas ref={canvas} />
          {map === undefined ? wording.nothing : <span ref={frame} className="sheet-overview-frame" />}
        </button>
      </div>
    </section>
  );
}

const close = (): void => preferencesStore.merge({ overview: false });

const toSheetStop = (): void =>
  document.querySelector<HTMLElement>("[data-sheet-stop]")?.focus({ preventScroll: true });

const ARROWS: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: 1, y: 0 },
  ArrowRight: { x: -1, y: 0 },
  ArrowUp: { x: 0, y: 1 },
  ArrowDown: { x: 0, y: -1 },
};
/** Of what is in view. */
const STRIDE = 0.25;
const STEP = 0.05;

function onKey(event: KeyboardEvent): void {
  const way = ARROWS[event.key];
  const [view, host] = [currentView(), sheetArea()];
  if (way !== undefined && view !== undefined && host !== undefined) {
    const part = event.shiftKey ? STEP : STRIDE;
    setView({ ...view, x: view.x + way.x * host.width * part, y: view.y + way.y * host.height * part });
    tellViewRests();
  } else if (event.key === "Enter" || event.key === "Escape" || event.key === " ") toSheetStop();
  else return;
  event.preventDefault();
}

/** Moves the frame with the view: nothing else of the overview changes then. */
function useFrame(map: OverviewMap | undefined) {
  const frame = useRef<HTMLSpanElement>(null);
  const store = useStoreApi();
  useLayoutEffect(() => {
    if (map === undefined) return undefined;
    let size = "";
    const follow = (): void => {
      const { transform, width, height } = store.getState();
      if (frame.current === null || width === 0) return;
      const [x, y, zoom] = transform;
      const place = frameIn(map, { x, y, zoom }, { width, height });
      const { style } = frame.current;
      style.transform = `translate(${place.x}px, ${place.y}px)`;
      const next = `${place.width} ${place.height}`;
      if (next === size) return;
      size = next;
      style.width = `${place.width}px`;
      style.height = `${place.height}px`;
    };
    follow();
    return store.subscribe(follow);
  }, [map, store]);
  return frame;
}

/** A press beside the frame brings that place into the middle of the view; dragged, the view follows. */
function useDrag(map: OverviewMap | undefined) {
  const from = useRef<{ readonly at: Point; readonly view: Viewport }>(undefined);
  const end = (): void => {
    if (from.current !== undefined) tellViewRests();
    from.current = undefined;
  };
  return {
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      const [now, host] = [currentView(), sheetArea()];
      if (event.button !== 0 || map === undefined || now === undefined || host === undefined) return;
      const { left, top } = event.currentTarget.getBoundingClientRect();
      const at = { x: event.clientX - left, y: event.clientY - top };
      const frame = frameIn(map, now, host);
      const isInside =
        at.x >= frame.x && at.y >= frame.y && at.x <= frame.x + frame.width && at.y <= frame.y + frame.height;
      const view = isInside ? now : viewAround(map, at, now.zoom, host);
      if (!isInside) setView(view);
      from.current = { at: { x: event.clientX, y: event.clientY }, view };
      event.currentTarget.setPointerCapture(event.pointerId);
    },
    onPointerMove: ({ clientX, clientY }: PointerEvent) => {
      if (from.current === undefined || map === undefined) return;
      const { at, view } = from.current;
      setView(viewDragged(map, view, { x: clientX - at.x, y: clientY - at.y }));
    },
    onPointerUp: end,
    onPointerCancel: end,
  };
}
