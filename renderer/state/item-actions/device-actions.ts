import { loadItems } from "../../../shared-model/catalog/load-items.ts";
import type { Device } from "../../../shared-model/model/device.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { TerminalName } from "../../../shared-model/model/ids.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { landedAt, terminalKey } from "../../../shared-model/queries/landings.ts";
import { outletsOf, type PlacedOutlet } from "../../../shared-model/queries/outlets-of.ts";
import { findTerminal, nameOfTerminal } from "../../../shared-model/queries/terminals-of.ts";
import { documentStore, shownInstallation } from "../document-store.ts";
import { keyOfPlace } from "../landing-choices.ts";
import { lineFor, openPick, type PickLine, runOrTell } from "../pick-store.ts";
import { pigtail } from "../pigtail.ts";
import { placeLoad } from "../placing.ts";
import { replacementName, replacementTypes, tryReplacement } from "../replacing.ts";
import { select } from "../session-store.ts";
import { tell, titled } from "./enclosure-actions.ts";
import { landHere } from "./end-actions.ts";
import { addJumperFrom, addJumperOn } from "./jumper-action.ts";
import { writeLabel } from "./label-action.ts";
import { recordReading } from "./reading-action.ts";
import type { ItemAction } from "./subject.ts";

/** Everything that can be done with a device. */
export function deviceActions(enclosure: Enclosure, device: Device): readonly ItemAction[] {
  const { id, name } = device;
  const outlets = outletsOf(device);
  return [
    ...outlets
      .filter(({ receptacle }) => receptacle)
      .map((outlet) => ({ title: `Plug a load into ${outlet.name}…`, run: () => plugIn(outlet) })),
    { title: `Pigtail or jumper from ${name}…`, run: () => addJumperOn(enclosure, device) },
    { title: `Replace ${name}…`, run: () => replace(enclosure, device) },
    { title: `Move ${name}…`, run: () => moveDevice(enclosure, device) },
    ...outlets.map((outlet) => ({ title: `Wish protection for ${outlet.name}…`, run: () => wish(outlet) })),
    { title: `Write a label on ${name}…`, run: () => writeLabel(name, { device: id }) },
    ...(enclosure.kind === "panel"
      ? [{ title: `Write the directory line of ${name}…`, run: () => writeDirectory(device) }]
      : []),
  ];
}

function plugIn({ key, name }: PlacedOutlet): void {
  openPick({
    title: `Plug a load into ${name}`,
    lines: () =>
      loadItems.map(({ id, title, figure }) => ({
        key: id,
        title,
        note: figure,
        run: () => tell(placeLoad(id, key)),
      })),
  });
}

/** The types that commonly take its place come first; each says what would have to be capped. */
function replace(enclosure: Enclosure, device: Device): void {
  openPick({
    title: `Replace ${device.name} by`,
    lines() {
      const { kin, others } = replacementTypes(enclosure, device);
      const name = replacementName(documentStore.get(), device);
      return [...kin, ...others].map((type): PickLine => {
        const { call, id, capped, refusal } = tryReplacement(enclosure, device, type.id, name);
        const note = capped.length === 0 ? "every conductor stays landed" : `would be capped: ${capped.join(", ")}`;
        return {
          key: type.id,
          title: type.title,
          note,
          run() {
            if (runOrTell(call)) select({ kind: "device", id });
          },
          ...(refusal !== undefined && { refusal }),
        };
      });
    },
  });
}

/** To another place in the row of its enclosure, or to another enclosure. */
function moveDevice(home: Enclosure, { id, name }: Device): void {
  openPick({
    title: `Move ${name}`,
    lines() {
      const { state } = documentStore.get();
      const { enclosures } = shownInstallation();
      const others = inOrder<Device>(enclosures[home.id]?.devices ?? {}).filter((one) => one.id !== id);
      const within = others.map((other) =>
        lineFor(`Before ${other.name}`, {
          command: "move-device",
          args: { state, id, enclosure: home.id, before: other.id },
        }),
      );
      const last = lineFor(`Last in ${home.name}`, { command: "move-device", args: { state, id, enclosure: home.id } });
      const away = inOrder<Enclosure>(enclosures)
        .filter((to) => to.id !== home.id && to.kind === home.kind)
        .map((to) =>
          lineFor(`To ${to.name}`, { command: "move-device", args: { state, id, enclosure: to.id } }, titled(to).note),
        );
      return [...within, ...(others.length > 0 ? [last] : []), ...away];
    },
  });
}

function wish({ key: outlet, name }: PlacedOutlet): void {
  openPick({
    title: `Protection of ${name}`,
    lines() {
      const { state } = documentStore.get();
      const say = (title: string, to: "protect" | "decided-not" | null) =>
        lineFor(title, {
          command: "set-outlet-wish",
          args: { state, outlet, wish: to === null ? null : { wish: to } },
        });
      return [say("Protection wished", "protect"), say("Decided against a wish", "decided-not"), say("No wish", null)];
    },
  });
}

function writeDirectory({ id: device, name }: Device): void {
  const line = (text: string): PickLine => {
    const { state } = documentStore.get();
    const title = text === "" ? "Leave the line empty" : `Write “${text}”`;
    return lineFor(title, { command: "set-directory-line", args: { state, device, text: text === "" ? null : text } });
  };
  openPick({
    title: `Directory line of ${name}`,
    hint: `Now: ${shownInstallation().directory[device] ?? "nothing is written"}.`,
    lines: () => [...usualDirectory().map(line), line("")],
    typed: { label: "What the directory says", line },
  });
}

/** The rooms of the drawing are what a directory names first. */
const usualDirectory = (): readonly string[] => inOrder(documentStore.get().project.rooms).map(({ name }) => name);

/** Everything that can be done at a terminal. */
export function terminalActions(enclosure: Enclosure, device: Device, terminal: TerminalName): readonly ItemAction[] {
  const name = nameOfTerminal(device, terminal);
  const hole = freeHole(enclosure, device, terminal);
  const at = { kind: "terminal", device: device.id, terminal, hole } as const;
  const landed = landedAt(enclosure, device.id, terminal);
  return [
    { title: `Land an end on ${name}…`, run: () => landHere(enclosure, keyOfPlace(at), name) },
    { title: `Pigtail or jumper from ${name}…`, run: () => addJumperFrom(enclosure, at) },
    ...(landed.length > 0
      ? [{ title: `Pigtail ${name}`, run: () => tell(pigtail(enclosure, device.id, terminal)) }]
      : []),
    {
      title: `Record a reading at ${name}…`,
      run: () => recordReading(enclosure, { point: terminalKey(device.id, terminal), name }),
    },
  ];
}

/** The first hole with nobody in it; the first of all where each is taken, so that the refusal or finding says so. */
export function freeHole(enclosure: Enclosure, device: Device, terminal: TerminalName): number {
  const taken = new Set(landedAt(enclosure, device.id, terminal).map(({ hole }) => hole));
  const holes = findTerminal(device, terminal)?.holes ?? 1;
  return Array.from({ length: holes }, (_, index) => index + 1).find((hole) => !taken.has(hole)) ?? 1;
}

/** Every receptacle of the drawing that something can be plugged into. */
export function receptacles(): readonly { readonly outlet: PlacedOutlet; readonly box: Enclosure }[] {
  return inOrder<Enclosure>(shownInstallation().enclosures).flatMap((box) =>
    inOrder<Device>(box.devices).flatMap((device) =>
      outletsOf(device)
        .filter(({ receptacle }) => receptacle)
        .map((outlet) => ({ outlet, box })),
    ),
  );
}
