import type { MouseEvent } from "react";
import type { EnclosureId, RoomId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { isTextField } from "../platform/text-field.ts";
import { dialogStore } from "../state/dialog-store.ts";
import { energiseStore } from "../state/energise/energise-store.ts";
import { renameInPlace } from "../state/rename.ts";
import type { Selected } from "../state/selection.ts";
import { startStore } from "../state/start.ts";
import { gestureStore } from "./gesture-store.ts";
import { toSheet } from "./sheet-view.ts";

/** Where a mouse was last, in pixels of the window. */
let pointerAt: Parameters<typeof toSheet>[0] | undefined;

export function followMouse({ pointerType, clientX, clientY }: PointerEvent): void {
  pointerAt = pointerType === "mouse" ? { clientX, clientY } : undefined;
}

/** Where on the sheet the pointer is, with nothing of the window over it. */
export function pointerOnSheet(): Point | undefined {
  const { menu } = gestureStore.get();
  const at = menu === undefined ? pointerAt : { clientX: menu.x, clientY: menu.y };
  if (at === undefined) return undefined;
  const under = document.elementFromPoint(at.clientX, at.clientY);
  const isOver = menu !== undefined || under?.closest(".sheet-flow") != null;
  return isOver ? toSheet(at) : undefined;
}

/** The room whose area lies under a point of the window. */
export function roomUnder({ clientX, clientY }: MouseEvent | globalThis.MouseEvent): RoomId | undefined {
  for (const area of document.querySelectorAll<SVGElement>("[data-room]")) {
    const { left, top, right, bottom } = area.getBoundingClientRect();
    if (clientX >= left && clientX <= right && clientY >= top && clientY <= bottom)
      return area.dataset.room as RoomId | undefined;
  }
  return undefined;
}

/** A press twice on the name of a box, or on a device, splice or cable in it, changes its name where it stands. */
export function renameUnder(on: EventTarget, enclosure: EnclosureId): boolean {
  if (!(on instanceof Element) || energiseStore.get().on) return false;
  if (on.closest(".sheet-box-name,.sheet-middle-name,.sheet-far-name") !== null)
    return renameInPlace({ kind: "enclosure", id: enclosure });
  const [kind = "", id] = on.closest<SVGElement>("[data-item]")?.dataset.item?.split(" ") ?? [];
  return RENAMED.has(kind) && id !== undefined && renameInPlace({ kind, id } as Selected);
}

/** An end is taken in the hand by a press. */
const RENAMED: ReadonlySet<string> = new Set(["device", "splice", "cable"]);

/** The key of every platform for it, while the focus is on the sheet or nowhere. */
export function isSelectAll({ key, target, ctrlKey, metaKey, defaultPrevented }: KeyboardEvent): boolean {
  if (key !== "a" || !(ctrlKey || metaKey) || defaultPrevented || !(target instanceof Element)) return false;
  return (
    dialogStore.get().kind === "none" &&
    !startStore.get().open &&
    (target === document.body || (target.closest(".sheet") !== null && !isTextField(target)))
  );
}
