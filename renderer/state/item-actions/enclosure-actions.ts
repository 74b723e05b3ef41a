import { cableItems } from "../../../shared-model/catalog/cable-items.ts";
import { deviceTypes } from "../../../shared-model/catalog/device-types.ts";
import { enclosureItems } from "../../../shared-model/catalog/enclosure-items.ts";
import { freePlace } from "../../../shared-model/geometry/free-place.ts";
import type { Enclosure, Ring } from "../../../shared-model/model/enclosure.ts";
import type { CableId, RingId } from "../../../shared-model/model/ids.ts";
import type { BoxIntent } from "../../../shared-model/model/project.ts";
import type { Room } from "../../../shared-model/model/room.ts";
import { cablesInto } from "../../../shared-model/queries/cables-into.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { type Dispatched, documentStore, shownInstallation } from "../document-store.ts";
import { mintId } from "../mint-id.ts";
import { lineFor, openPick, type PickLine } from "../pick-store.ts";
import { placeDevice, placeEnclosure, routeCable } from "../placing.ts";
import { routeToOutside } from "../route-outside.ts";
import { goTo, notify, sessionStore } from "../session-store.ts";
import { resetProposed } from "../shown-state.ts";
import { addJumperFrom } from "./jumper-action.ts";
import { writeLabel } from "./label-action.ts";
import { moveBoxes } from "./move-boxes.ts";
import type { ItemAction } from "./subject.ts";

/** Puts a box or panel of the stock on the first free place of the sheet and shows it. */
export function addEnclosure(): void {
  openPick({
    title: "Add a box or panel",
    lines: () =>
      enclosureItems.map(({ id, title, figure, make }) => ({
        key: id,
        title,
        note: make.kind === "box" ? `${figure} in³` : figure,
        run: () => putEnclosure(id),
      })),
  });
}

/** Puts one item of the stock on a free place. */
export function putEnclosure(item: string): void {
  const done = placeEnclosure(item, freePlace(documentStore.get().project, shownInstallation(), item));
  tell(done);
  const [placed] = sessionStore.get().selection;
  if (done.ok && placed !== undefined) goTo(placed);
}

export const tell = (done: Dispatched): void => {
  if (!done.ok) notify("problem", "Not done", [done.refusal.message]);
};

/** Everything that can be done with a box or panel, most used first. */
export function enclosureActions(enclosure: Enclosure): readonly ItemAction[] {
  const { id, name } = enclosure;
  const { state } = documentStore.get();
  const entered = cablesInto(shownInstallation().cables, id).map(({ cable }) => cable);
  return [
    { title: `Add a device to ${name}…`, run: () => addDevice(enclosure) },
    { title: `Run a cable from ${name}…`, run: () => runCable(enclosure) },
    { title: `Add a pigtail or jumper in ${name}…`, run: () => addJumperFrom(enclosure) },
    ...(enclosure.kind === "box"
      ? [{ title: `Add a ring or extension to ${name}…`, run: () => addRing(enclosure) }]
      : []),
    { title: `Write a label on ${name}…`, run: () => writeLabel(name, { enclosure: id }) },
    { title: `Put ${name} in a room…`, run: () => putInRoom(enclosure) },
    { title: `Move ${name} on the sheet…`, run: () => moveBoxes(id) },
    ...(enclosure.kind === "box" && entered.length > 0
      ? [{ title: `Say what ${name} is meant to do…`, run: () => sayIntent(enclosure) }]
      : []),
    ...(state === "proposed" ? [{ title: `Reset ${name} in proposed to as found`, run: () => resetProposed(id) }] : []),
  ];
}

/** Asks which device of the stock goes into an enclosure. */
function addDevice({ id, kind, name }: Enclosure): void {
  openPick({
    title: `Add a device to ${name}`,
    lines: () =>
      deviceTypes
        .filter(({ where }) => where === kind)
        .map((type) => ({ key: type.id, title: type.title, run: () => tell(placeDevice(type.id, id)) })),
  });
}

function runCable(from: Enclosure): void {
  openPick({
    title: `Run a cable from ${from.name}`,
    hint: "First which cable, then where it goes.",
    lines: () => cableItems.map(({ id, title }) => ({ key: id, title, run: () => chooseFarSide(id, title, from) })),
  });
}

/** Asks where a cable from an enclosure goes. */
export function chooseFarSide(item: string, title: string, from: Enclosure): void {
  openPick({
    title: `${title} from ${from.name}`,
    hint: "Where does it go?",
    lines: () => [
      ...inOrder<Enclosure>(shownInstallation().enclosures)
        .filter(({ id }) => id !== from.id)
        .map((to) => ({ ...titled(to), run: () => tell(routeCable(item, from.id, to.id)) })),
      {
        key: "outside",
        title: "Leaves this drawing",
        note: "its far end is not drawn",
        run: () => tell(routeToOutside(item, from.id)),
      },
    ],
  });
}

/** Name and note of an enclosure, for a list of them. */
export const titled = ({ id, name, note, kind }: Enclosure): Pick<PickLine, "key" | "title" | "note"> => ({
  key: id,
  title: name,
  note: note === undefined ? kind : `${kind}, ${note}`,
});

const RINGS: readonly (readonly [Ring["kind"], string])[] = [
  ["plaster-ring", "Plaster ring"],
  ["raised-cover", "Raised cover"],
  ["extension", "Extension"],
];

function addRing({ id: enclosure, name }: Enclosure): void {
  openPick({
    title: `Add a ring or extension to ${name}`,
    hint: "Its volume is entered afterwards, in the details of the box.",
    lines: () =>
      RINGS.map(([kind, title]) => {
        const { state } = documentStore.get();
        const id = mintId<RingId>("g");
        return lineFor(title, {
          command: "add-ring",
          args: { state, enclosure, id, kind, volume: { kind: "unknown" } },
        });
      }),
  });
}

function putInRoom({ id, name }: Enclosure): void {
  openPick({
    title: `Put ${name} in a room`,
    lines: () => {
      const { project, state } = documentStore.get();
      const args = { state, enclosures: [id] };
      return [
        ...inOrder<Room>(project.rooms).map((room) =>
          lineFor(room.name, { command: "assign-room", args: { ...args, room: room.id } }),
        ),
        lineFor("In no room", { command: "assign-room", args: { ...args, room: null } }),
      ];
    },
  });
}

/** Asks which cable is meant to bring the supply, and which are meant to be behind a ground-fault device here. */
function sayIntent({ id: enclosure, name }: Enclosure): void {
  openPick({
    title: `What ${name} is meant to do`,
    lines: () => {
      const { state } = documentStore.get();
      const installation = shownInstallation();
      const { supply, protect = {} } = installation.intent.boxes[enclosure] ?? {};
      const say = (title: string, intent: BoxIntent) =>
        lineFor(title, { command: "set-box-intent", args: { state, enclosure, intent } });
      const keep = supply === undefined ? {} : { supply };
      return cablesInto(installation.cables, enclosure).flatMap(({ cable }) => [
        say(`Supply by ${cable.name}`, { protect, supply: cable.id }),
        say(`${cable.name} behind the ground-fault device`, { ...keep, protect: { ...protect, [cable.id]: true } }),
        say(`${cable.name} not behind the ground-fault device`, {
          ...keep,
          protect: { ...protect, [cable.id]: false },
        }),
        say(`${cable.name}: nothing meant`, { ...(supply !== cable.id && keep), protect: without(protect, cable.id) }),
      ]);
    },
  });
}

const without = (table: Readonly<Record<CableId, boolean>>, id: CableId): Readonly<Record<CableId, boolean>> =>
  Object.fromEntries(Object.entries(table).filter(([key]) => key !== id));
