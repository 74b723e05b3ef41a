import type { Device } from "../../shared-model/model/device.ts";
import type { Enclosure, Splice } from "../../shared-model/model/enclosure.ts";
import type { At } from "../../shared-model/model/place.ts";
import { inOrder } from "../../shared-model/queries/in-order.ts";
import { nameOfTerminal, terminalsOf } from "../../shared-model/queries/terminals-of.ts";

export interface NamedPlace {
  readonly key: string;
  readonly at: At;
  readonly name: string;
}

/** Every place of an enclosure that a jumper could end on: splices, the holes of terminals, the bond. */
export function placesIn(enclosure: Enclosure): readonly NamedPlace[] {
  const splices = inOrder<Splice>(enclosure.splices).map(({ id, name }) => ({
    key: `splice ${id}`,
    at: { kind: "splice", splice: id } as const,
    name,
  }));
  const holes = inOrder<Device>(enclosure.devices).flatMap((device) =>
    terminalsOf(device).flatMap(({ name, holes: count }) =>
      Array.from({ length: count }, (_, index) => ({
        key: `terminal ${device.id} ${name} ${index + 1}`,
        at: { kind: "terminal", device: device.id, terminal: name, hole: index + 1 } as const,
        name: `${nameOfTerminal(device, name)}${count > 1 ? `, hole ${index + 1}` : ""}`,
      })),
    ),
  );
  const bond = {
    key: "bond",
    at: { kind: "bond" } as const,
    name: enclosure.kind === "panel" ? "panel bond" : "box bond",
  };
  return [...splices, ...holes, bond];
}
