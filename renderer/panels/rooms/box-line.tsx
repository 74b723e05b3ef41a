import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { RoomId } from "../../../shared-model/model/ids.ts";
import type { Room } from "../../../shared-model/model/room.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { dispatch, documentStore } from "../../state/document-store.ts";
import { putInNewRoom } from "../../state/new-room.ts";
import { goTo } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { NewRoomOptions, newRoomKind } from "./new-room-options.tsx";
import { ROOM_KIND_WORDS } from "./room-kind-words.ts";
import { wording } from "./words.ts";

const NOWHERE = "";

/** A box with the choice of its room. `outlets` are those whose protection waits for it. */
export function BoxLine({ box, outlets = [] }: { readonly box: Enclosure; readonly outlets?: readonly string[] }) {
  return (
    <li className="room-box">
      <button type="button" className="link" onClick={() => goTo({ kind: "enclosure", id: box.id })}>
        {box.name}
      </button>
      <span className="dim">{box.note}</span>
      <RoomSelect box={box} />
      {outlets.length > 0 && (
        <p className="room-missing">
          {wording.whatProtection(outlets.join(", "))}
          {outlets.length === 1 ? wording.itNeeds : wording.theyNeed}
          {wording.cannotBeToldWithoutARoom}
        </p>
      )}
    </li>
  );
}

/** Chooses the room of a box. */
export function RoomSelect({ box }: { readonly box: Enclosure }) {
  const rooms = useStore(documentStore, ({ project }) => project.rooms);
  const choose = (value: string): void => {
    const kind = newRoomKind(value);
    if (kind !== undefined) {
      putInNewRoom(box.id, kind, ROOM_KIND_WORDS[kind]);
      return;
    }
    const { state } = documentStore.get();
    const room = value === NOWHERE ? null : (value as RoomId);
    dispatch({ command: "assign-room", args: { state, enclosures: [box.id], room } });
  };
  return (
    <select
      className="field small"
      aria-label={wording.roomOf(box.name)}
      value={box.roomId ?? NOWHERE}
      onChange={({ target }) => choose(target.value)}
    >
      <option value={NOWHERE}>{wording.noRoom}</option>
      {inOrder<Room>(rooms).map(({ id, name }) => (
        <option key={id} value={id}>
          {name}
        </option>
      ))}
      <NewRoomOptions />
    </select>
  );
}
