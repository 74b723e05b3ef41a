import { findDeviceType } from "../../../shared-model/catalog/device-types.ts";
import { loadItems } from "../../../shared-model/catalog/load-items.ts";
import type { Device } from "../../../shared-model/model/device.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { TerminalName } from "../../../shared-model/model/ids.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { landedAt, terminalKey } from "../../../shared-model/queries/landings.ts";
import { outletsOf, type PlacedOutlet } from "../../../shared-model/queries/outlets-of.ts";
import { findTerminal, nameOfTerminal } from "../../../shared-model/queries/terminals-of.ts";
import { openDialog } from "../dialog-store.ts";
import { documentStore, shownInstallation } from "../document-store.ts";
import { keyOfPlace } from "../landing-choices.ts";
import { deviceOffers } from "../make-up/make-up-offers.ts";
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
import { wording } from "./words.ts";

/** Everything that can be done with a device. */
export function deviceActions(enclosure: Enclosure, device: Device): readonly ItemAction[] {
  const { id, name } = device;
  const outlets = outletsOf(device);
  return [
    ...outlets
      .filter(({ receptacle }) => receptacle)
      .map((outlet) => ({ title: wording.plugALoadInto(outlet.name), run: () => plugIn(outlet) })),
    ...deviceOffers(enclosure, device),
    { title: wording.pigtailOrJumperFrom(name), run: () => addJumperOn(enclosure, device) },
    { title: wording.replace(name), run: () => replace(enclosure, device) },
    { title: wording.move(name), run: () => moveDevice(enclosure, device) },
    ...outlets.map((outlet) => ({ title: wording.wishProtectionFor(outlet.name), run: () => wish(outlet) })),
    ...(isTested(device)
      ? [{ title: wording.testRecordOf(name), run: () => openDialog({ kind: "test-record", at: id }) }]
      : []),
    { title: wording.writeALabelOn(name), run: () => writeLabel(name, { device: id }) },
    ...(enclosure.kind === "panel"
      ? [{ title: wording.writeTheDirectoryLineOf(name), run: () => writeDirectory(device) }]
      : []),
  ];
}

/** The test record has lines of it: an outlet, or a device with TEST and RESET. */
const isTested = (device: Device): boolean =>
  outletsOf(device).length > 0 || findDeviceType(device.type)?.sensing !== undefined;

function plugIn({ key, name }: PlacedOutlet): void {
  openPick({
    title: wording.plugALoadInto2(name),
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
    title: wording.replaceBy(device.name),
    lines() {
      const { kin, others } = replacementTypes(enclosure, device);
      const name = replacementName(documentStore.get(), device);
      return [...kin, ...others].map((type): PickLine => {
        const { call, id, capped, refusal } = tryReplacement(enclosure, device, type.id, name);
        const note = capped.length === 0 ? wording.everyConductorStaysLanded : wording.wouldBeCapped(capped.join(", "));
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
    title: wording.move2(name),
    lines() {
      const { state } = documentStore.get();
      const { enclosures } = shownInstallation();
      const others = inOrder<Device>(enclosures[home.id]?.devices ?? {}).filter((one) => one.id !== id);
      const within = others.map((other) =>
        lineFor(wording.before(other.name), {
          command: "move-device",
          args: { state, id, enclosure: home.id, before: other.id },
        }),
      );
      const last = lineFor(wording.lastIn(home.name), {
        command: "move-device",
        args: { state, id, enclosure: home.id },
      });
      const away = inOrder<Enclosure>(enclosures)
        .filter((to) => to.id !== home.id && to.kind === home.kind)
        .map((to) =>
          lineFor(
            wording.to(to.name),
            { command: "move-device", args: { state, id, enclosure: to.id } },
            titled(to).note,
          ),
        );
      return [...within, ...(others.length > 0 ? [last] : []), ...away];
    },
  });
}

function wish({ key: outlet, name }: PlacedOutlet): void {
  openPick({
    title: wording.protectionOf(name),
    lines() {
      const { state } = documentStore.get();
      const say = (title: string, to: "protect" | "decided-not" | null) =>
        lineFor(title, {
          command: "set-outlet-wish",
          args: { state, outlet, wish: to === null ? null : { wish: to } },
        });
      return [
        say(wording.protectionWished, "protect"),
        say(wording.decidedAgainstAWish, "decided-not"),
        say(wording.noWish, null),
      ];
    },
  });
}

function writeDirectory({ id: device, name }: Device): void {
  const line = (text: string): PickLine => {
    const { state } = documentStore.get();
    const title = text === "" ? wording.leaveTheLineEmpty : wording.write(text);
    return lineFor(title, { command: "set-directory-line", args: { state, device, text: text === "" ? null : text } });
  };
  openPick({
    title: wording.directoryLineOf(name),
    hint: wording.now(shownInstallation().directory[device] ?? wording.nothingIsWritten),
    lines: () => [...usualDirectory().map(line), line("")],
    typed: { label: wording.whatTheDirectorySays, line },
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
    { title: wording.landAnEndOn(name), run: () => landHere(enclosure, keyOfPlace(at), name) },
    { title: wording.pigtailOrJumperFrom(name), run: () => addJumperFrom(enclosure, at) },
    ...(landed.length > 0
      ? [{ title: wording.pigtail(name), run: () => tell(pigtail(enclosure, device.id, terminal)) }]
      : []),
    {
      title: wording.recordAReadingAt(name),
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
