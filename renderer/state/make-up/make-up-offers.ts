import { findDeviceType } from "../../../shared-model/catalog/device-types.ts";
import type { Device } from "../../../shared-model/model/device.ts";
import type { Box, Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { OutletKey } from "../../../shared-model/model/ids.ts";
import { cablesInto } from "../../../shared-model/queries/cables-into.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { documentStore, shownInstallation } from "../document-store.ts";
import { pickBox } from "../pick-box.ts";
import { openPick } from "../pick-store.ts";
import { beginFit, beginMakeUp } from "./making-up.ts";
import { wording } from "./words.ts";

/** Something of a make-up that can be begun, named by what it does. */
interface Offer {
  readonly title: string;
  readonly run: () => void;
}

/** A make-up needs a cable to be made up. */
const mayBeMadeUp = (enclosure: Enclosure): enclosure is Box =>
  enclosure.kind === "box" && cablesInto(shownInstallation().cables, enclosure.id).length > 0;

/** A receptacle in a box that is no ground-fault device yet. */
const mayBecome = (enclosure: Enclosure, { type }: Device): boolean =>
  enclosure.kind === "box" && findDeviceType(type)?.family === "receptacle";

/** The make-up of a box, where it can be begun. */
export const boxOffers = (enclosure: Enclosure): readonly Offer[] =>
  mayBeMadeUp(enclosure) ? [{ title: wording.makeUp(enclosure.name), run: () => beginMakeUp(enclosure.id) }] : [];

/** A ground-fault device in the place of a receptacle, where that can be asked. */
export const deviceOffers = (enclosure: Enclosure, device: Device): readonly Offer[] =>
  mayBecome(enclosure, device)
    ? [{ title: wording.fitAt(device.name), run: () => beginFit(device.id as string as OutletKey) }]
    : [];

/** The same without a thing that is selected: which one is asked. */
export function makeUpOffers(): readonly Offer[] {
  if (documentStore.get().readOnly) return [];
  const enclosures = inOrder<Enclosure>(shownInstallation().enclosures);
  const boxes = enclosures.filter(mayBeMadeUp);
  const places = enclosures.flatMap((enclosure) =>
    inOrder<Device>(enclosure.devices)
      .filter((device) => mayBecome(enclosure, device))
      .map((device) => ({ device, enclosure })),
  );
  return [
    ...(boxes.length > 0
      ? [{ title: wording.makeUpABox, run: () => pickBox(wording.whichBox, boxes, beginMakeUp) }]
      : []),
    ...(places.length > 0 ? [{ title: wording.fitADevice, run: () => pickReceptacle(places) }] : []),
  ];
}

function pickReceptacle(places: readonly { readonly device: Device; readonly enclosure: Enclosure }[]): void {
  openPick({
    title: wording.whichReceptacle,
    lines: () =>
      places.map(({ device, enclosure }) => ({
        key: device.id,
        title: device.name,
        note: wording.inBox(enclosure.name),
        run: () => beginFit(device.id as string as OutletKey),
      })),
  });
}
