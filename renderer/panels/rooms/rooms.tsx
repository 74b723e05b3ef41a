import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { Room } from "../../../shared-model/model/room.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { outletsOf } from "../../../shared-model/queries/outlets-of.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { useStore } from "../../state/use-store.ts";
import { AddRoom } from "./add-room.tsx";
import { BoxLine } from "./box-line.tsx";
import { RoomCard } from "./room-card.tsx";
import { wording } from "./words.ts";

/** A house of a thousand boxes still shows its rooms at once. */
const MOST = 100;

/** Where things stand: what a room is decides which protection its outlets need. */
export function Rooms() {
  const rooms = useStore(documentStore, ({ project }) => project.rooms);
  const { enclosures } = useStore(documentStore, installationOf);
  const sorted = inOrder<Room>(rooms);
  const boxes = inOrder<Enclosure>(enclosures).filter(({ kind }) => kind === "box");
  const placeless = boxes.filter(({ roomId }) => roomId === undefined);
  return (
    <div className="rooms">
      <AddRoom />
      {sorted.map((room) => (
        <RoomCard key={room.id} room={room} boxes={boxes.filter(({ roomId }) => roomId === room.id)} />
      ))}
      {placeless.length > 0 && (
        <section aria-label={wording.inNoRoom}>
          <h3>
            {wording.inNoRoom2}
            <small className="fig">{placeless.length}</small>
          </h3>
          <ul className="room-boxes">
            {placeless.slice(0, MOST).map((box) => (
              <BoxLine key={box.id} box={box} outlets={receptaclesIn(box)} />
            ))}
          </ul>
          {placeless.length > MOST && (
            <p className="empty">
              {wording.and}
              {placeless.length - MOST}
              {wording.moreShownAsTheseFindA}
            </p>
          )}
        </section>
      )}
      {boxes.length === 0 && <p className="empty">{wording.boxesAppearHereOnceTheyAre}</p>}
    </div>
  );
}

/** Names of the outlets that need a room before their protection can be judged. */
const receptaclesIn = (box: Enclosure): readonly string[] =>
  inOrder(box.devices)
    .flatMap((device) => outletsOf(device))
    .filter(({ receptacle }) => receptacle)
    .map(({ name }) => name);
