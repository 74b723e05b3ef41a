import type { MouseEvent, PointerEvent } from "react";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import type { DeviceId, EnclosureId } from "../../shared-model/model/ids.ts";
import type { At } from "../../shared-model/model/place.ts";
import { documentStore, shownInstallation } from "../state/document-store.ts";
import { sessionStore } from "../state/session-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { intoBox } from "./box-frame.ts";
import { terminalAt } from "./box-items.ts";
import { gestureStore } from "./gesture-store.ts";
import { heldThing } from "./hand.ts";
import { type LineHit, lineAt, lineKey } from "./line-at.ts";
import type { Subject } from "./sheet-subject.ts";
import { toSheet } from "./sheet-view.ts";

interface DrawnBox {
  readonly id: EnclosureId;
  readonly drawing: BoxDrawing | undefined;
  readonly scale: number;
}

/** The conductor that a press or the pointer is on, where nothing that lies over the conductors is. */
export function lineUnder({ id, drawing, scale }: DrawnBox, event: MouseEvent): LineHit | undefined {
  if (heldThing() !== undefined || !(event.target instanceof Element) || event.target.closest("[data-lines]") === null)
    return undefined;
  const origin = placesOf(documentStore.get())[id];
  return drawing && origin && lineAt(drawing, intoBox(toSheet(event), origin, drawing, scale));
}

/** The terminal of a device that a press is on. */
export function terminalUnder({ id, drawing, scale }: DrawnBox, device: DeviceId, event: MouseEvent): At | undefined {
  const drawn = drawing?.devices.find((each) => each.device === device);
  const origin = placesOf(documentStore.get())[id];
  return drawing && drawn && origin && terminalAt(drawn, intoBox(toSheet(event), origin, drawing, scale));
}

/** Whether the pointer is on a terminal of any device of a box. */
export function anyTerminalUnder({ id, drawing, scale }: DrawnBox, event: Parameters<typeof toSheet>[0]): boolean {
  const origin = placesOf(documentStore.get())[id];
  if (drawing === undefined || origin === undefined) return false;
  const at = intoBox(toSheet(event), origin, drawing, scale);
  return drawing.devices.some((device) => terminalAt(device, at) !== undefined);
}

/** What a menu on a conductor is about: its end here, for a jumper the nearer one; a cable that only runs through. */
export function subjectOfLine(box: EnclosureId, { conductor, end }: LineHit): Subject | undefined {
  if (end !== undefined) return { kind: "end", enclosure: box, id: end };
  const { passThrough } = conductor;
  const cable = passThrough && shownInstallation().enclosures[box]?.passThroughs[passThrough]?.cable;
  return cable && { kind: "cable", enclosure: box, id: cable };
}

/** What a menu on a conductor is about: a jumper as a whole where it is hit between its ends. */
export function menuOfLine(box: EnclosureId, line: LineHit): Subject | undefined {
  const { jumper } = line.conductor;
  return jumper === undefined ? subjectOfLine(box, line) : { kind: "jumper", enclosure: box, id: jumper };
}

/** Marks the conductor under the mouse, or under a pen that hovers. */
export function glow(box: DrawnBox, event: PointerEvent): void {
  if (event.pointerType === "touch" || event.buttons !== 0) return;
  const line = sessionStore.get().tool === undefined ? lineUnder(box, event) : undefined;
  const before = gestureStore.get().line;
  if (line === undefined) noGlow();
  else if (before?.enclosure !== box.id || before.key !== lineKey(line.conductor))
    gestureStore.merge({ line: { enclosure: box.id, key: lineKey(line.conductor) } });
}

export function noGlow(): void {
  if (gestureStore.get().line !== undefined) gestureStore.merge({ line: undefined });
}
