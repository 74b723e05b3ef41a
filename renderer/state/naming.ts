import type { DeviceFamily } from "../../shared-model/catalog/device-type.ts";
import { getDeviceType } from "../../shared-model/catalog/device-types.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EndKey } from "../../shared-model/model/ids.ts";
import type { Installation, Project } from "../../shared-model/model/project.ts";
import { getEndFacts } from "../../shared-model/queries/end-facts.ts";
import { documentStore } from "./document-store.ts";

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

/**
 * A name means one thing in the whole drawing: what one account of the wiring calls R1 is not minted in the other, where
 * something else would then have it. These are the account at hand and every account of the document.
 */
export function everyAccount(at: Installation): readonly Installation[] {
  const { asFound, proposed } = documentStore.get().project;
  return [...new Set([at, asFound, ...(proposed === undefined ? [] : [proposed])])];
}

/** An enclosure, and what the accounts of the document say of it. */
const everySide = (enclosure: Enclosure): readonly Enclosure[] => {
  const { asFound, proposed } = documentStore.get().project;
  const sides = [asFound, proposed].flatMap((account) => account?.enclosures[enclosure.id] ?? []);
  return [enclosure, ...sides];
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
  const taken = namesOf(...everyAccount(installation).map(({ enclosures }) => enclosures));
  if (kind === "box") return nextName("B", taken);
  return taken.has("P") ? nextName("P", new Set([...taken, "P1"])) : "P";
}

/** @param also Names that are as good as taken. */
export const nextCableName = (installation: Installation, also: Iterable<string> = []): string =>
  nextName("C", new Set([...namesOf(...everyAccount(installation).map(({ cables }) => cables)), ...also]));

export const nextLoadName = (installation: Installation): string =>
  nextName("K", namesOf(...everyAccount(installation).map(({ loads }) => loads)));

/**
 * Name of the next device of a type: "R5" for any receptacle, "S1" for a switch. Names count over the whole drawing.
 * @param also Names that are as good as taken.
 */
export function nextDeviceName(installation: Installation, type: string, also: Iterable<string> = []): string {
  const taken = new Set([...deviceNames(installation), ...also]);
  return nextName(LETTERS[getDeviceType(type).family], taken);
}

/** Names of all devices of the drawing, in every account of the wiring. */
export function deviceNames(installation: Installation): Set<string> {
  const boxes = everyAccount(installation).flatMap(({ enclosures }) => Object.values(enclosures));
  return namesOf(...boxes.map(({ devices }) => devices));
}

/** Name of the next splice of a box by what is joined: "H1" for hots, "N1" for whites, "E1" for grounds. */
export function nextSpliceName(installation: Installation, enclosure: Enclosure, ends: readonly EndKey[]): string {
  const facts = ends.map((end) => getEndFacts(installation, enclosure, end));
  const letter = facts.some((end) => end.grounding) ? "E" : facts.every((end) => end.colour === "white") ? "N" : "H";
  return nextName(letter, spliceNames(enclosure));
}

/** Names of the splices, and of the jumpers, of a box in every account of the wiring. */
export const spliceNames = (enclosure: Enclosure): Set<string> =>
  namesOf(...everySide(enclosure).map(({ splices }) => splices));
export const jumperNames = (enclosure: Enclosure): Set<string> =>
  namesOf(...everySide(enclosure).map(({ jumpers }) => jumpers));

/** Name of the next jumper of a box: "a" to "z", then "a2" and so on. */
export function nextJumperName(enclosure: Enclosure): string {
  const taken = jumperNames(enclosure);
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

/** Names of everything in some tables. */
export const namesOf = (...tables: readonly Readonly<Record<string, { readonly name: string }>>[]): Set<string> =>
  new Set(tables.flatMap((table) => Object.values(table).map(({ name }) => name)));
