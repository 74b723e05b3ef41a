import type { Device } from "../../shared-model/model/device.ts";
import type { Enclosure, Splice } from "../../shared-model/model/enclosure.ts";
import type { TerminalName } from "../../shared-model/model/ids.ts";
import type { At } from "../../shared-model/model/place.ts";
import { inOrder } from "../../shared-model/queries/in-order.ts";
import { landingsOf } from "../../shared-model/queries/landings.ts";
import { HALF_WORDS } from "../../shared-model/queries/outlets-of.ts";
import { nameOfTerminal, terminalsOf } from "../../shared-model/queries/terminals-of.ts";
import { laterWording } from "./later-words.ts";
import { wording } from "./words.ts";

export interface NamedPlace {
  readonly key: string;
  readonly at: At;
  readonly name: string;
}

/**
 * Every place of an enclosure that a jumper could end on: splices, the holes of terminals, the bond; no bond where the
 * box is nonmetallic and nobody says otherwise. Two terminals of one name are told apart as they are drawn.
 */
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
        name: `${nameOfTerminal(device, name)}${whichOf(device, name)}${count > 1 ? laterWording.hole2(index + 1) : ""}`,
      })),
    ),
  );
  const bond = {
    key: "bond",
    at: { kind: "bond" } as const,
    name: enclosure.kind === "panel" ? wording.panelBond2 : wording.boxGroundScrew2,
  };
  const bonds = hasBond(enclosure) || landingsOf(enclosure).bonded.length > 0 ? [bond] : [];
  return [...splices, ...holes, ...bonds];
}

const hasBond = (enclosure: Enclosure): boolean => enclosure.kind === "panel" || enclosure.material !== "nonmetallic";

/** The two hot screws of a duplex are both called H: the one of the upper half is drawn above. */
function whichOf(device: Device, name: TerminalName): string {
  const words = nameOfTerminal(device, name);
  const alike = terminalsOf(device).filter((other) => nameOfTerminal(device, other.name) === words);
  if (alike.length < 2) return "";
  const at = alike.findIndex((other) => other.name === name);
  return alike.length === 2 ? `, ${HALF_WORDS[at === 0 ? "upper" : "lower"]}` : `, ${at + 1}`;
}
