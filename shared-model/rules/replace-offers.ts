import type { Fix } from "../answers/finding.ts";
import { deviceTypes, findDeviceType, getDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { StateName } from "../model/project.ts";
import { nameOfReplacement } from "../queries/replacement-name.ts";
import type { Section } from "../solver/section.ts";
import { fixBy, makeFresh } from "./fix-parts.ts";

const wording = catalogue({
  inPlaceOf: (type: Part, device: Part) => `${type} in place of ${device}`,
});

/** Another type in the place of a device; ends stay where terminals correspond. Undefined where there is no such type. */
export function replaceOffer(
  section: Section,
  enclosure: Enclosure,
  device: Device,
  type: string,
  state: StateName,
): Fix | undefined {
  const found = findDeviceType(type);
  if (found === undefined || found.id === device.type) return undefined;
  const { id } = makeFresh(enclosure)("d");
  const names = section.enclosures.flatMap(({ devices }) => Object.values(devices).map((one) => one.name));
  const name = nameOfReplacement(device.name, new Set(names));
  return fixBy(wording.inPlaceOf(found.title, device.name), "replace-device", {
    state,
    device: device.id,
    id,
    type,
    name,
  });
}

/** Markings of the face of a receptacle. */
interface Markings {
  readonly ratingA: number;
  readonly tamperResistant: boolean;
  readonly weatherResistant: boolean;
}

/**
 * The type of the stock that does what the type of a receptacle does, with the markings wanted; those that nobody asks for
 * stay as they are, and tamper resistance may come along. Undefined where the stock has none.
 */
export function faceWith(device: Device, wanted: Partial<Markings>): string | undefined {
  const old = getDeviceType(device.type);
  const marked: Markings = {
    ratingA: wanted.ratingA ?? device.ratingA ?? 15,
    tamperResistant: wanted.tamperResistant ?? device.tamperResistant === true,
    weatherResistant: wanted.weatherResistant ?? device.weatherResistant === true,
  };
  return deviceTypes.find(({ family, outlets, terminals, sensing, defaults }) => {
    if (family !== old.family || outlets.length !== old.outlets.length || terminals.length !== old.terminals.length)
      return false;
    if (sensing?.class !== old.sensing?.class || sensing?.arcFault !== old.sensing?.arcFault) return false;
    return (
      defaults.ratingA === marked.ratingA &&
      (defaults.tamperResistant === true || !marked.tamperResistant) &&
      (defaults.weatherResistant === true) === marked.weatherResistant
    );
  })?.id;
}
