import type { DeviceId, EnclosureId } from "../../../shared-model/model/ids.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import type { Tool } from "../../state/selection.ts";
import { sessionStore } from "../../state/session-store.ts";
import { createStore, type Store } from "../../state/store.ts";

/** Where what was taken from the stock would be put down now. */
export interface Aim {
  readonly tool: Tool;
  /** In drawing units of the sheet. */
  readonly at: Point;
  readonly enclosure: EnclosureId | undefined;
  readonly device: DeviceId | undefined;
  /** Of a cable whose other end is placed: the box it begins at. */
  readonly from?: EnclosureId;
  readonly by: "pointer" | "keys";
}

export const aimStore: Store<{ readonly aim?: Aim }> = createStore<{ readonly aim?: Aim }>({});

/** The aim of what is in the hand now; one of another hand is over. */
export function aimNow(): Aim | undefined {
  const { aim } = aimStore.get();
  return aim?.tool === sessionStore.get().tool ? aim : undefined;
}

/** Aims at a place with what is in the hand; with nothing in it, at nothing. */
export function aimAt(place: Omit<Aim, "tool">): void {
  const { tool } = sessionStore.get();
  if (tool === undefined) return;
  const before = aimNow();
  const isSame =
    before !== undefined &&
    before.at.x === place.at.x &&
    before.at.y === place.at.y &&
    before.enclosure === place.enclosure &&
    before.device === place.device &&
    before.by === place.by;
  if (!isSame) aimStore.set({ aim: { tool, ...place } });
}

export function dropAim(): void {
  if (aimStore.get().aim !== undefined) aimStore.set({});
}
