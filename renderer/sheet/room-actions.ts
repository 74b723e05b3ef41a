import type { EnclosureId, RoomId } from "../../shared-model/model/ids.ts";
import { selectedBoxes } from "../state/arranging.ts";
import { documentStore, shownInstallation } from "../state/document-store.ts";
import type { Selected } from "../state/selection.ts";
import { select, showPane } from "../state/session-store.ts";
import { type Action, act, command, LINE, list } from "./action.ts";
import { laterWording } from "./later-words.ts";
import { fitBoxes } from "./sheet-view.ts";

/** What can be done with the room that a press on the empty sheet is in. */
export function roomActions(id: RoomId): readonly Action[] {
  const { project, state, readOnly } = documentStore.get();
  const room = project.rooms[id];
  if (room === undefined) return [];
  const { enclosures } = shownInstallation();
  const within = (Object.keys(enclosures) as EnclosureId[]).filter((box) => enclosures[box]?.roomId === id);
  const chosen = selectedBoxes();
  const others = chosen.filter((box) => enclosures[box]?.roomId !== id);
  const assign = (boxes: readonly EnclosureId[], to: RoomId | null) => (): void =>
    command({ command: "assign-room", args: { state, enclosures: boxes, room: to } });
  return [
    act(laterWording.selectTheBoxesIn(room.name), () =>
      select(...within.map((box): Selected => ({ kind: "enclosure", id: box }))),
    ),
    act(laterWording.showWhole2(room.name), () => fitBoxes(within)),
    ...(others.length === 0 || readOnly
      ? []
      : [act(laterWording.putIn(wordsOf(others.length), room.name), assign(others, id))]),
    ...(readOnly
      ? []
      : list(
          laterWording.takeOutOf(room.name),
          within.map((box) => act(enclosures[box]?.name ?? "", assign([box], null))),
        )),
    act(laterWording.nameAndFactsOf(room.name), () => showPane("rooms")),
    LINE,
  ];
}

const wordsOf = (count: number): string =>
  count === 1 ? laterWording.theSelectedBox : laterWording.selectedBoxes(count);
