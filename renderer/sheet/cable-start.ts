import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { ANY_CABLE, cableKindStore } from "../state/cable-kind.ts";
import { documentStore, shownInstallation } from "../state/document-store.ts";
import { refuseWhileScoped } from "../state/looking.ts";
import { sessionStore, takeTool } from "../state/session-store.ts";
import { say } from "./gesture-store.ts";
import { wording } from "./words.ts";

/** Takes a cable in the hand that begins at a box; without a kind, that is said while or after it is drawn. */
export function startRoute(from: EnclosureId, item: string = ANY_CABLE): void {
  if (documentStore.get().readOnly || refuseWhileScoped()) return;
  cableKindStore.merge({ typed: "" });
  takeTool({ kind: "cable", id: item });
  sessionStore.merge({ routeFrom: from });
  const name = shownInstallation().enclosures[from]?.name ?? "";
  const kind = item === ANY_CABLE ? wording.typeItsSizeAtAnyTime : "";
  say(wording.cableFromPressTheBoxWhere2(name, kind));
}

/** Whether a cable is in the hand whose kind is still to be said. */
export const isKindOpen = (): boolean => {
  const { tool } = sessionStore.get();
  return tool?.kind === "cable" && tool.id === ANY_CABLE;
};

/**
 * What is typed on the sheet while a cable of no kind yet is in the hand is its kind.
 * @returns Whether the key was taken.
 */
export function typeKind(key: string): boolean {
  if (!isKindOpen()) return false;
  const { typed } = cableKindStore.get();
  if (key === "Backspace") {
    cableKindStore.merge({ typed: typed.slice(0, -1) });
    return typed !== "";
  }
  // A first letter would be a key of the sheet; every kind begins with its size.
  if (!(typed === "" ? /^\d$/ : /^[\d/a-z -]$/i).test(key)) return false;
  cableKindStore.merge({ typed: typed + key });
  return true;
}
