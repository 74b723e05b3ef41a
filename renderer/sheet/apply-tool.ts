import { findDeviceType } from "../../shared-model/catalog/device-types.ts";
import type { DeviceId, EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { ANY_CABLE, askCableKind, cableKindStore, settledKind } from "../state/cable-kind.ts";
import { type Dispatched, documentStore, shownInstallation } from "../state/document-store.ts";
import { outletFor, placeDevice, placeEnclosure, placeLoad, routeCable } from "../state/placing.ts";
import { routeToOutside } from "../state/route-outside.ts";
import { notify, sessionStore, takeTool } from "../state/session-store.ts";
import { say } from "./gesture-store.ts";
import { spotOf } from "./placing/spot.ts";
import { watchPlacing } from "./show-placed.ts";
import { wording } from "./words.ts";

/** Where on the sheet something from the stock is put down. */
export interface PutDownAt {
  readonly at: Point;
  readonly enclosure: EnclosureId | undefined;
  readonly device: DeviceId | undefined;
}

/**
 * Uses what was taken from the stock at a place of the sheet.
 * @returns False when nothing is in the hand, so that the press means something else.
 */
export function applyTool({ at, enclosure, device }: PutDownAt): boolean {
  const { tool, routeFrom } = sessionStore.get();
  if (tool === undefined) return false;
  switch (tool.kind) {
    case "enclosure":
      putBox(tool.id, at);
      break;
    case "device":
      if (enclosure === undefined) explain(wording.aDeviceGoesIntoABox, hintFor(tool.id));
      else answer(placeDevice(tool.id, enclosure), wording.placed);
      break;
    case "load":
      plugIn(tool.id, enclosure, device);
      break;
    case "cable":
      if (routeFrom === undefined) startCable(enclosure);
      else endCable(tool.id, routeFrom, enclosure);
      break;
  }
  return true;
}

/** Puts a box down in line with its neighbours and clear of them, and in sight. */
function putBox(item: string, at: Point): void {
  const show = watchPlacing();
  answer(placeEnclosure(item, spotOf(documentStore.get(), item, at).at), wording.placed);
  const [placed] = sessionStore.get().selection;
  if (placed?.kind === "enclosure") show(placed.id);
}

const hintFor = (type: string): string =>
  findDeviceType(type)?.where === "panel" ? wording.pressThePanelItBelongsTo : wording.pressTheBoxItBelongsTo;

function startCable(enclosure: EnclosureId | undefined): void {
  if (enclosure === undefined) {
    explain(wording.aCableStartsAtABox, wording.pressTheBoxWhereItStarts);
    return;
  }
  sessionStore.merge({ routeFrom: enclosure });
  const name = shownInstallation().enclosures[enclosure]?.name ?? "";
  say(wording.cableFromPressTheBoxWhere(name));
}

/** Routes to a box, or out of the drawing; where no kind was said while it was drawn, it is asked for now. */
function endCable(item: string, from: EnclosureId, to: EnclosureId | undefined): void {
  const draw = (kind: string): void => {
    if (to === undefined) answer(routeToOutside(kind, from), wording.routedItsFarEndIsNot);
    else answer(routeCable(kind, from, to), wording.routed);
  };
  if (item !== ANY_CABLE) {
    draw(item);
    return;
  }
  const kind = settledKind(cableKindStore.get());
  if (kind !== undefined) draw(kind.id);
  else if (to === from) explain(wording.aCableRunsBetweenTwoBoxes, wording.pressAnotherBoxOrTheBare);
  else askCableKind(from, to, draw);
}

function plugIn(item: string, enclosure: EnclosureId | undefined, device: DeviceId | undefined): void {
  const outlet = outletFor(shownInstallation(), enclosure, device);
  if (outlet === undefined) explain(wording.aLoadIsPluggedIntoA, wording.pressTheReceptacleItIsPlugged);
  else answer(placeLoad(item, outlet.key), wording.pluggedIn);
}

function explain(title: string, line: string): void {
  say(`${title}. ${line}`);
  notify("note", title, [line]);
}

function answer(done: Dispatched, word: string): void {
  if (done.ok) {
    takeTool(undefined);
    say(`${word}.`);
    return;
  }
  say(done.refusal.message);
  notify("problem", wording.notPossibleHere, [done.refusal.message]);
}
