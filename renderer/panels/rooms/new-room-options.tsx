import { ROOM_KINDS, type RoomKind } from "../../../shared-model/model/room.ts";
import { ROOM_KIND_WORDS } from "./room-kind-words.ts";
import { wording } from "./words.ts";

const NEW = "new ";

/** Choices of a room list that make a room of that kind first. */
export const NewRoomOptions = () => (
  <optgroup label={wording.newRoom}>
    {ROOM_KINDS.map((kind) => (
      <option key={kind} value={`${NEW}${kind}`}>
        {wording.newWord(ROOM_KIND_WORDS[kind])}
      </option>
    ))}
  </optgroup>
);

/** The kind of the room to make; undefined for a room that is there. */
export const newRoomKind = (value: string): RoomKind | undefined =>
  ROOM_KINDS.find((kind) => value === `${NEW}${kind}`);
