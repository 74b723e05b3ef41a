import type { EnclosureId, RoomId } from "../../shared-model/model/ids.ts";
import type { RoomKind } from "../../shared-model/model/room.ts";
import { type Dispatched, dispatch, documentStore } from "./document-store.ts";
import { laterWording } from "./later-words.ts";
import { mintId } from "./mint-id.ts";
import { freeRoomName } from "./naming.ts";
import { stepTitle } from "./step-title.ts";

/** Adds a room of a kind, called by it, and puts an enclosure in it: one step. */
export function putInNewRoom(enclosure: EnclosureId, kind: RoomKind, words: string): Dispatched {
  const { state, project } = documentStore.get();
  const id = mintId<RoomId>("r");
  const name = freeRoomName(project, words.charAt(0).toUpperCase() + words.slice(1));
  return dispatch({
    command: "run-together",
    args: {
      title: stepTitle(laterWording.putItInANewRoom(name)),
      calls: [
        { command: "add-room", args: { id, name, kinds: [kind] } },
        { command: "assign-room", args: { state, enclosures: [enclosure], room: id } },
      ],
    },
  });
}
