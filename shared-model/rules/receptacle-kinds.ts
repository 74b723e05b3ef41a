import { getDeviceType } from "../catalog/device-types.ts";
import type { Device } from "../model/device.ts";
import { SMALL_RECEPTACLES_UP_TO } from "./editions/circuit-values.ts";

/** A device with a face to plug into: a receptacle, a ground-fault receptacle, a receptacle beside a switch. */
export function isReceptacle({ type }: Pick<Device, "type">): boolean {
  const { outlets, yokes } = getDeviceType(type);
  return outlets.length > 0 && yokes > 0;
}

/** One of 15 or 20 A; one whose rating is not recorded counts as such. */
export const isSmallReceptacle = (device: Device): boolean =>
  isReceptacle(device) && (device.ratingA === undefined || device.ratingA <= SMALL_RECEPTACLES_UP_TO);

/** A face that takes a grounding plug. */
export const takesGroundPin = ({ type }: Pick<Device, "type">): boolean =>
  isReceptacle({ type }) && getDeviceType(type).outlets.some(({ ground }) => ground !== undefined);
