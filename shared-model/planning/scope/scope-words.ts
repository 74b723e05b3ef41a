import { findConnector } from "../../catalog/connectors.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import { findEnclosureItem } from "../../catalog/enclosure-items.ts";
import { sizeWords } from "../../catalog/standard-boxes.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import { inSentence } from "../../lib/in-sentence.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure, EntryMeans, Jumper, VolumeFact } from "../../model/enclosure.ts";
import type { At } from "../../model/place.ts";
import { nameOfTerminal } from "../../queries/terminals-of.ts";
import { inchWords } from "../../units/inch-words.ts";
import { type CubicInches, formatVolume } from "../../units/volume.ts";
import { splicesJoined } from "../joint-cost.ts";

const wording = catalogue({
  boxGroundScrew: "box ground screw",
  capped: "capped",
  cubicInches: (volume: Part) => `${volume} in³`,
  device: (name: Part, caption: Part) => `${name} ${caption}`,
  fromTo: (from: Part, to: Part) => `${from} to ${to}`,
  groundJumper: "ground jumper",
  groundLink: "ground link",
  groundPigtail: "ground pigtail",
  inBox: (name: Part, box: Part) => `${name} in ${box}`,
  jumper: "jumper",
  link: "link",
  loose: "loose",
  marked: (volume: Part) => `marked ${volume} in³`,
  panelBond: "panel bond",
  pigtail: "pigtail",
  usualJumper: "6 to 8 in.",
  volumeUnknown: "volume not known",
});

/** How a joint is made that has no connector of the stock. */
const NO_STOCK = new Map<string, string>(
  Object.entries(
    catalogue({
      none: "no connector",
      soldered: "soldered",
      taped: "taped",
      unknown: "connector not known",
    }),
  ),
);

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
      return kind === "panel" ? wording.panelBond : wording.boxGroundScrew;
    case "capped":
      return wording.capped;
    case "loose":
      return wording.loose;
  }
}

/** What a device is called in a list: "R1b GFCI receptacle". */
export const deviceWords = ({ name, type }: Device): string => wording.device(name, getDeviceType(type).caption);

/** "twist-on, large", "taped"; what the stock calls it where it is of the stock. */
export const connectorWords = (connector: string): string => {
  const found = findConnector(connector);
  return found === undefined ? (NO_STOCK.get(connector) ?? connector) : inSentence(found.title);
};

export const MEANS_WORDS: Readonly<Record<EntryMeans, string>> = catalogue({
  "internal-clamp": "internal clamp",
  "external-connector": "external connector",
  "integral-clamp": "clamp of the box",
  none: "nothing",
});

export const RING_WORDS = catalogue({
  "plaster-ring": "ring",
  "raised-cover": "raised cover",
  extension: "extension",
});

/** How a jumper is called by what it joins. */
export function jumperKindWords(enclosure: Enclosure, jumper: Jumper): string {
  const isGround = jumper.colour === "bare" || jumper.colour === "green";
  switch (splicesJoined(enclosure, jumper.id)) {
    case 1:
      return isGround ? wording.groundPigtail : wording.pigtail;
    case 2:
      return isGround ? wording.groundLink : wording.link;
    default:
      return isGround ? wording.groundJumper : wording.jumper;
  }
}

/** Where nothing is recorded, a pigtail is as long as usual: common practice. */
export const lengthWords = ({ lengthIn }: Jumper): string =>
  lengthIn === undefined ? wording.usualJumper : inchWords(lengthIn);

export function volumeWords(volume: VolumeFact): string {
  if (volume.kind === "marked") return wording.marked(formatVolume(volume.volumeIn3));
  return volume.kind === "table" ? sizeWords(volume.size) : wording.volumeUnknown;
}

export const boxItemWords = ({ item }: Enclosure): string => findEnclosureItem(item)?.title ?? item;

/** "2.25 in³". */
export const cubicInchWords = (volume: CubicInches): string => wording.cubicInches(formatVolume(volume));

/** "R1b in B1". */
export const inBoxWords = (name: string, { name: box }: Pick<Enclosure, "name">): string => wording.inBox(name, box);

/** "HD to R1b LINE H". */
export const fromToWords = (from: string, to: string): string => wording.fromTo(from, to);
