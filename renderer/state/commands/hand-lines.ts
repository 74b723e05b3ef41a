import { findCableItem } from "../../../shared-model/catalog/cable-items.ts";
import { ANY_CABLE, askCableKind, cableKindStore, settledKind } from "../cable-kind.ts";
import { shownInstallation } from "../document-store.ts";
import { routeToOutside } from "../route-outside.ts";
import { notify, sessionStore, takeTool } from "../session-store.ts";
import type { CommandLine } from "./entry.ts";
import { laterWording } from "./later-words.ts";

/** How a cable that was begun ends by keys where no box is drawn. */
export function handLines(): readonly CommandLine[] {
  const { tool, routeFrom } = sessionStore.get();
  const box = routeFrom && shownInstallation().enclosures[routeFrom];
  if (tool?.kind !== "cable" || box === undefined) return [];
  const { id } = tool;
  const end = (kind: string): void => {
    const done = routeToOutside(kind, box.id);
    if (done.ok) takeTool(undefined);
    else notify("problem", laterWording.notDone, [done.refusal.message]);
  };
  const run = (): void => {
    const kind = id === ANY_CABLE ? settledKind(cableKindStore.get())?.id : id;
    if (kind === undefined) askCableKind(box.id, undefined, end);
    else end(kind);
  };
  return [
    {
      key: "hand leaves",
      title: laterWording.leavesThisDrawing(findCableItem(id)?.title ?? laterWording.theCable, box.name),
      note: laterWording.inTheHand,
      run,
    },
  ];
}
