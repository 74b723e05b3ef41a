import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { At } from "../../model/place.ts";
import { inOrder } from "../../queries/in-order.ts";
import { landedAt } from "../../queries/landings.ts";
import { type PlacedTerminal, terminalsOf } from "../../queries/terminals-of.ts";
import type { Kind } from "./net.ts";

/** Of a device that protects what hangs behind it, the side; undefined where a box has none. */
export type DeviceSide = "LINE" | "LOAD" | undefined;

/** A terminal with nothing on it. */
export interface OpenTerminal {
  readonly device: Device;
  readonly terminal: PlacedTerminal;
}

type Purposes = ReadonlySet<PlacedTerminal["purpose"]>;

export const PURPOSES: Readonly<Record<Kind, Purposes>> = {
  0: new Set(["hot", "common"]),
  1: new Set(["neutral"]),
  2: new Set(["ground"]),
};
export const SWITCHED: Purposes = new Set(["switched"]);

export const firstHole = ({ device, terminal }: OpenTerminal): At => ({
  kind: "terminal",
  device: device.id,
  terminal: terminal.name,
  hole: 1,
});

export const openTerminals = (box: Enclosure, purposes: Purposes): readonly OpenTerminal[] =>
  inOrder(box.devices).flatMap((device) =>
    terminalsOf(device)
      .filter(({ purpose, name }) => purposes.has(purpose) && isOpen(box, device, name))
      .map((terminal) => ({ device, terminal })),
  );

/** Of each device that has nothing of a kind on a side, the first terminal for it. */
export const unfedTerminals = (box: Enclosure, kind: Kind, side: DeviceSide): readonly OpenTerminal[] =>
  inOrder(box.devices).flatMap((device) => {
    const own = terminalsOf(device).filter((terminal) => PURPOSES[kind].has(terminal.purpose) && isOn(terminal, side));
    const [terminal] = own;
    return terminal !== undefined && own.every(({ name }) => isOpen(box, device, name)) ? [{ device, terminal }] : [];
  });

const isOpen = (box: Enclosure, device: Device, name: PlacedTerminal["name"]): boolean =>
  landedAt(box, device.id, name).length === 0;

/** Terminals that have no side are fed as the line side is. */
const isOn = ({ group }: PlacedTerminal, side: DeviceSide): boolean => (group === "LOAD") === (side === "LOAD");

export const hasLoadSide = (box: Enclosure): boolean =>
  Object.values(box.devices).some((device) => terminalsOf(device).some(({ group }) => group === "LOAD"));
