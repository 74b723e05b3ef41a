import { useEffect, useLayoutEffect, useState } from "react";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { parseOutlet } from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { findDevice, findJumper, findSplice } from "../../shared-model/queries/find-item.ts";
import { documentStore, followDocument, installationOf, shownInstallation } from "../state/document-store.ts";
import type { Selected } from "../state/selection.ts";
import { type GoTo, sessionStore } from "../state/session-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { useStore } from "../state/use-store.ts";
import { drawingOf } from "./drawings.ts";
import { say } from "./gesture-store.ts";
import type { SheetDrawings } from "./sheet-drawings.ts";
import { currentView, fitBoxes, fitFirst, reveal, SETTLED_MS, showArea } from "./sheet-view.ts";
import type { Viewport } from "./view-fit.ts";
import { wording } from "./words.ts";
import { zoneAt } from "./zones.ts";

/**
 * Brings into view what another part of the window asks for, and the whole of a document that was just opened.
 * @param shown Until all boxes of it are drawn there is no whole to show.
 * @param first The view that the sheet began with.
 */
export function useGoTo(shown: SheetDrawings, first: Viewport | undefined): void {
  const request = useStore(sessionStore, requestOf);
  const [fitted, setFitted] = useState(false);
  const [begun, setBegun] = useState<Viewport>();
  useEffect(() => {
    if (request !== undefined) show(request);
  }, [request]);
  // A change without patches is another document.
  useEffect(
    () =>
      followDocument(({ patches }) => {
        if (patches !== undefined) return;
        setFitted(false);
        setBegun(currentView());
      }),
    [],
  );
  // Before the browser paints. Setting state here makes React run what waits, the flow's own effects included.
  useLayoutEffect(() => {
    if (fitted || shown.missing > 0 || !isOfToday(shown)) return;
    setFitted(true);
    // Of a large building the boxes come one after another; who has gone somewhere meanwhile stays there.
    if (shown.drawings.size > 0 && isSame(currentView(), begun ?? first)) fitFirst();
  }, [fitted, shown, first, begun]);
}

/** The news of another document comes before its drawings do. */
const isOfToday = ({ document }: SheetDrawings): boolean =>
  installationOf(document) === installationOf(documentStore.get());

/** Views that are not known are no reason to leave a drawing out of sight. */
const isSame = (a: Viewport | undefined, b: Viewport | undefined): boolean =>
  a === undefined || b === undefined || (a.x === b.x && a.y === b.y && a.zoom === b.zoom);

const requestOf = ({ goTo }: ReturnType<typeof sessionStore.get>) => goTo;

function show({ target, fill }: GoTo): void {
  const now = documentStore.get();
  const boxes = boxesOf(installationOf(now), target);
  const [first] = boxes;
  if (boxes.length > 1) {
    fitBoxes(boxes);
    return;
  }
  if (first !== undefined) tellZone(first);
  const drawing = first && drawingOf(now, first);
  const origin = first && placesOf(now)[first];
  if (drawing === undefined || origin === undefined) return;
  const { x, y, width, height } = drawing.bounds;
  const area = { x: origin.x + x, y: origin.y + y, width, height };
  if (!showArea(area, fill)) setTimeout(() => showItem(target), SETTLED_MS);
}

/** Of a box too large for the view, the thing that is meant. */
function showItem(target: Selected): void {
  if (target.kind === "enclosure") return;
  const wanted = CSS.escape(`${target.kind} ${target.id}`);
  const item = document.querySelector(`[data-item="${wanted}"],[data-item^="${wanted} "]`);
  if (item !== null) reveal(item.getBoundingClientRect());
}

/** Says where on the sheet the box has come to lie, as the frame names its zones. */
function tellZone(id: EnclosureId): void {
  setTimeout(() => {
    const sheet = document.querySelector(".sheet-flow")?.getBoundingClientRect();
    const wall = document
      .querySelector(`.react-flow__node[data-id="${CSS.escape(id)}"] .sheet-wall-outer`)
      ?.getBoundingClientRect();
    const zone = sheet && wall && zoneAt({ x: wall.x + wall.width / 2, y: wall.y + wall.height / 2 }, sheet);
    const name = shownInstallation().enclosures[id]?.name;
    if (zone !== undefined && name !== undefined) say(wording.zone(name, zone));
  }, SETTLED_MS);
}

/** The boxes that a thing is in: two for a cable, none for a room. */
export function boxesOf(installation: Installation, item: Selected): readonly EnclosureId[] {
  switch (item.kind) {
    case "enclosure":
      return [item.id];
    case "end":
    case "entry":
      return [item.enclosure];
    case "device":
      return idOf(findDevice(installation, item.id));
    case "splice":
      return idOf(findSplice(installation, item.id));
    case "jumper":
      return idOf(findJumper(installation, item.id));
    case "cable": {
      const sides = installation.cables[item.id]?.sides;
      return sides === undefined
        ? []
        : [sides.a, sides.b].flatMap((side) => ("enclosure" in side ? [side.enclosure] : []));
    }
    case "load": {
      const plug = installation.loads[item.id]?.plug;
      return plug === undefined ? [] : idOf(findDevice(installation, parseOutlet(plug).device));
    }
    default:
      return [];
  }
}

const idOf = (found: { readonly enclosure: { readonly id: EnclosureId } } | undefined): readonly EnclosureId[] =>
  found === undefined ? [] : [found.enclosure.id];
