import { useId } from "react";
import type { SupplyAnswer } from "../../../shared-model/answers/supply.ts";
import { ROOM_KINDS, type Room, type RoomKind } from "../../../shared-model/model/room.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { documentStore } from "../../state/document-store.ts";
import { type Counted, hasChoiceOfHold, type SeenBox } from "../../state/new-box.ts";
import { BOX_ITEMS, CABLE_ITEMS, DEVICE_TYPES, type Into, roomFor } from "../../state/new-box-form.ts";
import { useStore } from "../../state/use-store.ts";
import { ROOM_KIND_WORDS } from "../rooms/room-kind-words.ts";
import { CountedRows } from "./counted-rows.tsx";
import { PanelChoice } from "./panel-choice.tsx";
import { wording } from "./words.ts";

interface Props {
  readonly seen: SeenBox;
  readonly onChange: (seen: SeenBox) => void;
  readonly into: Into;
  /** Names that the cables will have. */
  readonly cables: readonly string[];
  /** Name that the box will have where none is typed. */
  readonly name: string;
  /** The panel that would be drawn for the supply, or why none can be. */
  readonly panel: SupplyAnswer | undefined;
}

/** One sentence about a box, with something to choose in the place of every fact. */
export function SeenForm({ seen, onChange, into, cables, name, panel }: Props) {
  const id = useId();
  const rooms = useStore(documentStore, ({ project }) => project.rooms);
  const there = into === "this-drawing" ? inOrder<Room>(rooms) : [];
  const setCables = (changed: readonly Counted[]): void => {
    const { supply: _gone, ...rest } = seen;
    onChange({ ...rest, cables: changed });
  };
  return (
    <div className="seen">
      <p className="seen-line">
        <span className="seen-pair">
          <label htmlFor={`${id}box`}>A</label>
          <select
            id={`${id}box`}
            className="field pick-wide"
            aria-label={wording.box}
            value={seen.item}
            onChange={({ target }) => onChange({ ...seen, item: target.value })}
          >
            {BOX_ITEMS.map((item) => (
              <option key={item.id} value={item.id}>
                {item.title}
              </option>
            ))}
          </select>
        </span>
        <span className="seen-pair">
          <label htmlFor={`${id}name`}>{wording.called}</label>
          <input
            id={`${id}name`}
            className="field pick-name"
            aria-label={wording.nameOfTheBox}
            placeholder={name}
            maxLength={80}
            value={seen.name}
            onChange={({ target }) => onChange({ ...seen, name: target.value })}
          />
        </span>
        <span className="seen-pair">
          <label htmlFor={`${id}room`}>{wording.inWord}</label>
          <select
            id={`${id}room`}
            className="field pick"
            aria-label={wording.room}
            value={roomValue(seen.room)}
            onChange={({ target }) => onChange({ ...seen, room: roomOf(target.value, there) })}
          >
            <option value="none">{wording.aRoomNotSaid}</option>
            {there.map((room) => (
              <option key={room.id} value={`there ${room.id}`}>
                {room.name}
              </option>
            ))}
            {ROOM_KINDS.map((kind) => (
              <option key={kind} value={`new ${kind}`}>
                {there.length > 0 ? wording.aNewRoom(ROOM_KIND_WORDS[kind]) : ROOM_KIND_WORDS[kind]}
              </option>
            ))}
          </select>
        </span>
      </p>
      <CountedRows
        first={wording.withWord2}
        joint={[wording.cableOf, wording.cablesOf]}
        one={wording.cable}
        many={wording.cables}
        choices={CABLE_ITEMS}
        rows={seen.cables}
        free={roomFor(seen, "cables")}
        onChange={setCables}
      />
      <p className="seen-line">
        {hasChoiceOfHold(seen.item) && (
          <span className="seen-pair">
            <label htmlFor={`${id}held`}>{wording.heldBy}</label>
            <select
              id={`${id}held`}
              className="field pick"
              aria-label={wording.whatHoldsTheCables}
              value={seen.held}
              onChange={({ target }) =>
                onChange({ ...seen, held: target.value === "connectors" ? "connectors" : "clamps" })
              }
            >
              <option value="clamps">{wording.clampsInsideTheBox}</option>
              <option value="connectors">{wording.connectorsNoClampsInside}</option>
            </select>
          </span>
        )}
        <span className="seen-pair">
          <label htmlFor={`${id}supply`}>{wording.andSuppliedBy}</label>
          <select
            id={`${id}supply`}
            className="field pick"
            aria-label={wording.cableThoughtToBringTheSupply}
            value={seen.supply ?? 0}
            onChange={({ target }) => onChange(withSupply(seen, Number(target.value)))}
          >
            <option value={0}>{wording.aCableNotKnownYet}</option>
            {cables.map((cable, index) => (
              <option key={cable} value={index + 1}>
                {wording.iThink(cable)}
              </option>
            ))}
          </select>
        </span>
        {seen.supply !== undefined && <PanelChoice seen={seen} onChange={onChange} panel={panel} />}
      </p>
      <CountedRows
        first={wording.andWord}
        one={wording.device}
        many={wording.devices}
        choices={DEVICE_TYPES}
        rows={seen.devices}
        free={roomFor(seen, "devices")}
        onChange={(devices) => onChange({ ...seen, devices })}
      />
    </div>
  );
}

function withSupply(seen: SeenBox, supply: number): SeenBox {
  const { supply: _before, ...rest } = seen;
  return supply === 0 ? rest : { ...rest, supply };
}

function roomValue(room: SeenBox["room"]): string {
  if (room.kind === "none") return "none";
  return room.kind === "there" ? `there ${room.id}` : `new ${room.roomKind}`;
}

function roomOf(value: string, there: readonly Room[]): SeenBox["room"] {
  const known = there.find(({ id }) => value === `there ${id}`);
  if (known !== undefined) return { kind: "there", id: known.id };
  const roomKind = ROOM_KINDS.find((kind) => value === `new ${kind}`);
  return roomKind === undefined ? { kind: "none" } : { kind: "new", roomKind, name: capital(roomKind) };
}

function capital(kind: RoomKind): string {
  const words = ROOM_KIND_WORDS[kind];
  return words.charAt(0).toUpperCase() + words.slice(1);
}
