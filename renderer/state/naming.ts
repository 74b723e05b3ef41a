import type { DeviceFamily } from "../../shared-model/catalog/device-type.ts";
import { getDeviceType } from "../../shared-model/catalog/device-types.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EndKey } from "../../shared-model/model/ids.ts";
import type { Installation, Project } from "../../shared-model/model/project.ts";
import { getEndFacts } from "../../shared-model/queries/end-facts.ts";

/** First letter of a device's name, as the trade writes it on a sketch. */
const LETTERS: Readonly<Record<DeviceFamily, string>> = {
  receptacle: "R",
  "ground-fault-receptacle": "R",
  "ground-fault-blank": "R",
  switch: "S",
  dimmer: "S",
  timer: "S",
  combination: "S",
  luminaire: "L",
  fan: "F",
  alarm: "A",
  appliance: "A",
  breaker: "CB",
  fuse: "FU",
  "neutral-bar": "NB",
  "ground-bar": "GB",
  lugs: "LG",
  disconnect: "D",
};

/** "B3" for the letter B when B1 and B2 are taken; the lowest free number, so that a removed name comes back. */
export function nextName(letter: string, taken: ReadonlySet<string>): string {
  for (let number = 1; ; number += 1) {
    const name = `${letter}${number}`;
    if (!taken.has(name)) return name;
  }
}

/** Name of the next box or panel: "B2"; the first panel is plain "P". */
export function nextEnclosureName(installation: Installation, kind: Enclosure["kind"]): string {
  const taken = namesOf(installation.enclosures);
  if (kind === "box") return nextName("B", taken);
  return taken.has("P") ? nextName("P", new Set([...taken, "P1"])) : "P";
}

/** @param also Names that are as good as taken. */
export const nextCableName = (installation: Installation, also: Iterable<string> = []): string =>
  nextName("C", new Set([...namesOf(installation.cables), ...also]));

export const nextLoadName = (installation: Installation): string => nextName("K", namesOf(installation.loads));

/**
 * Name of the next device of a type: "R5" for any receptacle, "S1" for a switch. Names count over the whole drawing.
 * @param also Names that are as good as taken.
 */
export function nextDeviceName(installation: Installation, type: string, also: Iterable<string> = []): string {
  const taken = new Set<string>(also);
  for (const enclosure of Object.values(installation.enclosures)) {
    for (const device of Object.values(enclosure.devices)) taken.add(device.name);
  }
  return nextName(LETTERS[getDeviceType(type).family], taken);
}

/** Name of the next splice of a box by what is joined: "H1" for hots, "N1" for whites, "E1" for grounds. */
export function nextSpliceName(installation: Installation, enclosure: Enclosure, ends: readonly EndKey[]): string {
  const facts = ends.map((end) => getEndFacts(installation, enclosure, end));
  const letter = facts.some((end) => end.grounding) ? "E" : facts.every((end) => end.colour === "white") ? "N" : "H";
  return nextName(letter, namesOf(enclosure.splices));
}

/** Name of the next jumper of a box: "a" to "z", then "a2" and so on. */
export function nextJumperName(enclosure: Enclosure): string {
  const taken = namesOf(enclosure.jumpers);
  for (let round = 1; ; round += 1) {
    for (const letter of "abcdefghijklmnopqrstuvwxyz") {
      const name = round === 1 ? letter : `${letter}${round}`;
      if (!taken.has(name)) return name;
    }
  }
}

/** A room name that no other room has: "Laundry", "Laundry 2". */
export function freeRoomName(project: Project, wanted: string): string {
  const taken = namesOf(project.rooms);
  if (!taken.has(wanted)) return wanted;
  for (let number = 2; ; number += 1) {
    const name = `${wanted} ${number}`;
    if (!taken.has(name)) return name;
  }
}

const namesOf = (table: Readonly<Record<string, { readonly name: string }>>): ReadonlySet<string> =>
  new Set(Object.values(table).map((item) => item.name));
