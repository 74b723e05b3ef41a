import { findDeviceType } from "../../catalog/device-types.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { PropertyTarget } from "../command-args.ts";
import { hasTrait } from "./device-traits.ts";
import { type Property, properties } from "./properties.ts";

type Kind = PropertyTarget["kind"];

/** Fields that mean something on one item, in the order in which a form shows them. Enclosures and devices differ by kind and type. */
export function propertiesOf(kind: "enclosure", item: Enclosure): readonly Property[];
export function propertiesOf(kind: "device", item: Device): readonly Property[];
export function propertiesOf(kind: Exclude<Kind, "enclosure" | "device">): readonly Property[];
export function propertiesOf(kind: Kind, item?: Enclosure | Device): readonly Property[] {
  const all = properties[kind];
  if (item === undefined) return all;
  if ("kind" in item) return all.filter((property) => property.only === undefined || property.only === item.kind);
  const type = findDeviceType(item.type);
  return all.filter(
    ({ traits }) => traits === undefined || (type !== undefined && traits.some((trait) => hasTrait(type, trait))),
  );
}
