import { findConnector } from "../../catalog/connectors.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import { findEnclosureItem } from "../../catalog/enclosure-items.ts";
import type { Device } from "../../model/device.ts";
import type { Box, Enclosure, EntryMeans, Jumper, VolumeFact } from "../../model/enclosure.ts";
import type { At } from "../../model/place.ts";
import { nameOfTerminal } from "../../queries/terminals-of.ts";
import { inchWords } from "../../units/inch-words.ts";
import { formatVolume } from "../../units/volume.ts";
import { splicesJoined } from "../joint-cost.ts";

/** Where an end is, as it is called at the box: "X", "R1b LINE H", "capped". */
export function placeWords({ devices, splices, kind }: Enclosure, at: At): string {
  switch (at.kind) {
    case "splice":
      return splices[at.splice]?.name ?? at.splice;
    case "terminal": {
      const device = devices[at.device];
      return device === undefined ? at.device : nameOfTerminal(device, at.terminal);
    }
    case "bond":
      return kind === "panel" ? "panel bond" : "box bond";
    case "capped":
      return "capped";
    case "loose":
      return "loose";
  }
}

/** What a device is called in a list: "R1b GFCI receptacle". */
export const deviceWords = ({ name, type }: Device): string => `${name} ${getDeviceType(type).caption}`;

/** "twist-on, large", "taped"; what the stock calls it where it is of the stock. */
export const connectorWords = (connector: string): string => {
  const found = findConnector(connector);
  if (found !== undefined) return found.title.charAt(0).toLowerCase() + found.title.slice(1);
  return connector === "none" ? "no connector" : connector === "unknown" ? "connector not known" : connector;
};

export const MEANS_WORDS: Readonly<Record<EntryMeans, string>> = {
  "internal-clamp": "internal clamp",
  "external-connector": "external connector",
  "integral-clamp": "clamp of the box",
  none: "nothing",
};

export const RING_WORDS = {
  "plaster-ring": "ring",
  "raised-cover": "raised cover",
  extension: "extension",
} as const;

/** How a jumper is called by what it joins. */
export function jumperKindWords(enclosure: Enclosure, jumper: Jumper): string {
  const ground = jumper.colour === "bare" || jumper.colour === "green" ? "ground " : "";
  const joined = splicesJoined(enclosure, jumper.id);
  return `${ground}${joined === 1 ? "pigtail" : joined === 2 ? "link" : "jumper"}`;
}

/** A pigtail as long as usual, where nothing is recorded: common practice. */
export const USUAL_JUMPER = "6 to 8 in.";

export const lengthWords = ({ lengthIn }: Jumper): string =>
  lengthIn === undefined ? USUAL_JUMPER : inchWords(lengthIn);

export function volumeWords(volume: VolumeFact): string {
  if (volume.kind === "marked") return `marked ${formatVolume(volume.volumeIn3)} in³`;
  return volume.kind === "table" ? volume.size : "volume not known";
}

export const boxItemWords = ({ item }: Enclosure): string => findEnclosureItem(item)?.title ?? item;

/** Parts of a box that a person fits or takes out, as they are called. What is not named here is a fact of the box. */
export const PART_WORDS: Readonly<Partial<Record<keyof Box, string>>> = {
  internalClamps: "internal clamps",
  supports: "supports inside",
  terminalBlocks: "terminal blocks",
  gangs: "gangs",
  cover: "cover",
  openKnockouts: "open knockouts",
  setbackIn: "setback from the surface",
  accessible: "access",
};

/** "none", "present", "blank", 2: a value of a part. */
export function partValueWords(value: unknown): string {
  if (value === undefined) return "not recorded";
  if (Array.isArray(value)) return value.length === 0 ? "none" : value.join(", ");
  if (typeof value === "boolean") return value ? "yes" : "no";
  return String(value).replaceAll("-", " ");
}
