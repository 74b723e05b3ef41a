import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { ROOM_KINDS, type Room, type RoomKind } from "../../../shared-model/model/room.ts";
import { dispatch, documentStore } from "../../state/document-store.ts";
import { NameField } from "../name-field.tsx";
import { RemoveButton } from "../remove-button.tsx";
import { BoxLine } from "./box-line.tsx";
import { ROOM_KIND_WORDS } from "./room-kind-words.ts";
import { wording } from "./words.ts";

/** A room: its name, what it is, and the boxes that stand in it. */
export function RoomCard({ room, boxes }: { readonly room: Room; readonly boxes: readonly Enclosure[] }) {
  return (
    <section aria-label={room.name} className="room">
      <div className="room-head">
        <NameField item={{ kind: "room", id: room.id }} name={room.name} />
        <RemoveButton items={[{ kind: "room", id: room.id }]} what={room.name} />
      </div>
      <details className="room-kinds">
        <summary>
          {room.kinds.length === 0 ? wording.noKindYet : room.kinds.map((kind) => ROOM_KIND_WORDS[kind]).join("; ")}
        </summary>
        <fieldset>
          <legend className="unseen">{wording.whatIs(room.name)}</legend>
          {ROOM_KINDS.map((kind) => (
            <KindBox key={kind} kind={kind} room={room} />
          ))}
        </fieldset>
      </details>
      <ul className="room-boxes">
        {boxes.map((box) => (
          <BoxLine key={box.id} box={box} />
        ))}
        {boxes.length === 0 && <li className="empty">{wording.noBoxStandsHereYet}</li>}
      </ul>
    </section>
  );
}

function KindBox({ kind, room }: { readonly kind: RoomKind; readonly room: Room }) {
  const change = (on: boolean): void => {
    const value = ROOM_KINDS.filter((one) => (one === kind ? on : room.kinds.includes(one)));
    const { state } = documentStore.get();
    dispatch({
      command: "set-property",
      args: { state, target: { kind: "room", id: room.id }, field: "kinds", value },
    });
  };
  return (
    <label className="check">
      <input type="checkbox" checked={room.kinds.includes(kind)} onChange={({ target }) => change(target.checked)} />
      {ROOM_KIND_WORDS[kind]}
    </label>
  );
}
