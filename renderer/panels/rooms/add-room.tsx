import { useState } from "react";
import type { RoomId } from "../../../shared-model/model/ids.ts";
import { ROOM_KINDS, type RoomKind } from "../../../shared-model/model/room.ts";
import { dispatch, documentStore } from "../../state/document-store.ts";
import { mintId } from "../../state/mint-id.ts";
import { freeRoomName } from "../../state/naming.ts";
import { Refused } from "../refused.tsx";
import { ROOM_KIND_WORDS } from "./room-kind-words.ts";
import { wording } from "./words.ts";

/** Adds a room of one kind; more kinds and its name are set on the room. */
export function AddRoom() {
  const [kind, setKind] = useState<RoomKind>("laundry");
  const [name, setName] = useState("");
  const [refusal, setRefusal] = useState<string>();
  const add = (): void => {
    const wanted = name.trim() === "" ? capital(ROOM_KIND_WORDS[kind]) : name.trim();
    const done = dispatch({
      command: "add-room",
      args: { id: mintId<RoomId>("r"), name: freeRoomName(documentStore.get().project, wanted), kinds: [kind] },
    });
    setRefusal(done.ok ? undefined : done.refusal.message);
    if (done.ok) setName("");
  };
  return (
    <form
      className="add-room"
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <label>
        <span className="cap">{wording.kindOfRoom}</span>
        <select
          className="field"
          value={kind}
          onChange={({ target }) => setKind(ROOM_KINDS.find((one) => one === target.value) ?? kind)}
        >
          {ROOM_KINDS.map((one) => (
            <option key={one} value={one}>
              {ROOM_KIND_WORDS[one]}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span className="cap">{wording.nameIfNotTheSame}</span>
        <input className="field" value={name} onChange={({ target }) => setName(target.value)} />
      </label>
      <button type="submit" className="button">
        {wording.addRoom}
      </button>
      <Refused message={refusal} />
    </form>
  );
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
