import { deviceTypes } from "../../../shared-model/catalog/device-types.ts";
import { enclosureItems } from "../../../shared-model/catalog/enclosure-items.ts";
import { freePlace } from "../../../shared-model/geometry/free-place.ts";
import type { Enclosure, Ring } from "../../../shared-model/model/enclosure.ts";
import type { CableId, RingId } from "../../../shared-model/model/ids.ts";
import type { BoxIntent } from "../../../shared-model/model/project.ts";
import type { Room } from "../../../shared-model/model/room.ts";
import { cablesInto } from "../../../shared-model/queries/cables-into.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { pinsOf } from "../arranging.ts";
import { cableKindStore, kindsFor } from "../cable-kind.ts";
import { type Dispatched, documentStore, shownInstallation } from "../document-store.ts";
import { boxOffers } from "../make-up/make-up-offers.ts";
import { mintId } from "../mint-id.ts";
import { choosePhotos } from "../photos/photos.ts";
import { lineFor, openPick, type PickLine } from "../pick-store.ts";
import { placeDevice, placeEnclosure, routeCable } from "../placing.ts";
import { routeToOutside } from "../route-outside.ts";
import { goTo, notify, sessionStore } from "../session-store.ts";
import { resetProposed } from "../shown-state.ts";
import { cableOffers } from "../survey/survey-offers.ts";
import { addJumperFrom } from "./jumper-action.ts";
import { writeLabel } from "./label-action.ts";
import { moveBoxes } from "./move-boxes.ts";
import type { ItemAction } from "./subject.ts";
import { wording } from "./words.ts";

/** Puts a box or panel of the stock on the first free place of the sheet and shows it. */
export function addEnclosure(): void {
  openPick({
    title: wording.addABoxOrPanel,
    lines: () =>
      enclosureItems.map(({ id, title, figure, make }) => ({
        key: id,
        title,
        note: make.kind === "box" ? wording.in3(figure) : figure,
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
  if (!done.ok) notify("problem", wording.notDone, [done.refusal.message]);
};

/** Everything that can be done with a box or panel, most used first. */
export function enclosureActions(enclosure: Enclosure): readonly ItemAction[] {
  const { id, name } = enclosure;
  const { state } = documentStore.get();
  const entered = cablesInto(shownInstallation().cables, id).map(({ cable }) => cable);
  return [
    ...boxOffers(enclosure),
    ...cableOffers(enclosure),
    { title: wording.addADeviceTo(name), run: () => addDevice(enclosure) },
    { title: wording.runACableFrom(name), run: () => runCable(enclosure) },
    { title: wording.addAPigtailOrJumperIn(name), run: () => addJumperFrom(enclosure) },
    ...(enclosure.kind === "box"
      ? [{ title: wording.addARingOrExtensionTo(name), run: () => addRing(enclosure) }]
      : []),
    { title: wording.writeALabelOn(name), run: () => writeLabel(name, { enclosure: id }) },
    { title: wording.attachPhotosTo(name), run: () => choosePhotos(id) },
    { title: wording.putInARoom(name), run: () => putInRoom(enclosure) },
    { title: wording.moveOnTheSheet(name), run: () => moveBoxes(id) },
    ...pinsOf([id], name),
    ...(enclosure.kind === "box" && entered.length > 0
      ? [{ title: wording.sayWhatIsMeantToDo(name), run: () => sayIntent(enclosure) }]
      : []),
    ...(state === "proposed" ? [{ title: wording.resetInProposedToAsFound(name), run: () => resetProposed(id) }] : []),
  ];
}

/** Asks which device of the stock goes into an enclosure. */
function addDevice({ id, kind, name }: Enclosure): void {
  openPick({
    title: wording.addADeviceTo2(name),
    lines: () =>
      deviceTypes
        .filter(({ where }) => where === kind)
        .map((type) => ({
          key: type.id,
          title: type.title,
          aim: { tool: { kind: "device", id: type.id }, enclosure: id },
          run: () => tell(placeDevice(type.id, id)),
        })),
  });
}

function runCable(from: Enclosure): void {
  openPick({
    title: wording.runACableFrom2(from.name),
    hint: wording.firstWhichCableThenWhereIt,
    lines: () =>
      kindsFor("", cableKindStore.get().last).map(({ id, title }) => ({
        key: id,
        title,
        run: () => chooseFarSide(id, title, from),
      })),
  });
}

/** Asks where a cable from an enclosure goes. */
export function chooseFarSide(item: string, title: string, from: Enclosure): void {
  openPick({
    title: wording.from(title, from.name),
    hint: wording.whereDoesItGo,
    lines: () => [
      ...inOrder<Enclosure>(shownInstallation().enclosures)
        .filter(({ id }) => id !== from.id)
        .map(
          (to): PickLine => ({
            ...titled(to),
            aim: { tool: { kind: "cable", id: item }, enclosure: to.id, from: from.id },
            run: () => tell(routeCable(item, from.id, to.id)),
          }),
        ),
      {
        key: "outside",
        title: wording.leavesThisDrawing,
        note: wording.itsFarEndIsNotDrawn,
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
  ["plaster-ring", wording.plasterRing],
  ["raised-cover", wording.raisedCover],
  ["extension", wording.extension],
];

function addRing({ id: enclosure, name }: Enclosure): void {
  openPick({
    title: wording.addARingOrExtensionTo2(name),
    hint: wording.itsVolumeIsEnteredAfterwardsIn,
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
    title: wording.putInARoom2(name),
    lines: () => {
      const { project, state } = documentStore.get();
      const args = { state, enclosures: [id] };
      return [
        ...inOrder<Room>(project.rooms).map((room) =>
          lineFor(room.name, { command: "assign-room", args: { ...args, room: room.id } }),
        ),
        lineFor(wording.inNoRoom, { command: "assign-room", args: { ...args, room: null } }),
      ];
    },
  });
}

/** Asks which cable is meant to bring the supply, and which are meant to be behind a ground-fault device here. */
function sayIntent({ id: enclosure, name }: Enclosure): void {
  openPick({
    title: wording.whatIsMeantToDo(name),
    lines: () => {
      const { state } = documentStore.get();
      const installation = shownInstallation();
      const { supply, protect = {} } = installation.intent.boxes[enclosure] ?? {};
      const say = (title: string, intent: BoxIntent) =>
        lineFor(title, { command: "set-box-intent", args: { state, enclosure, intent } });
      const keep = supply === undefined ? {} : { supply };
      return cablesInto(installation.cables, enclosure).flatMap(({ cable }) => [
        say(wording.supplyBy(cable.name), { protect, supply: cable.id }),
        say(wording.behindTheGroundFaultDevice(cable.name), { ...keep, protect: { ...protect, [cable.id]: true } }),
        say(wording.notBehindTheGroundFaultDevice(cable.name), {
          ...keep,
          protect: { ...protect, [cable.id]: false },
        }),
        say(wording.nothingMeant(cable.name), {
          ...(supply !== cable.id && keep),
          protect: without(protect, cable.id),
        }),
      ]);
    },
  });
}

const without = (table: Readonly<Record<CableId, boolean>>, id: CableId): Readonly<Record<CableId, boolean>> =>
  Object.fromEntries(Object.entries(table).filter(([key]) => key !== id));
