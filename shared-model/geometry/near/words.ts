import { findConnector } from "../../catalog/connectors.ts";
import type { Finish } from "../../catalog/device-type.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import { findEnclosureItem } from "../../catalog/enclosure-items.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Box, Enclosure, EntryMeans, Splice } from "../../model/enclosure.ts";
import { cableEnd, otherSide, parseEnd } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { creditedVolume } from "../../queries/box-volume.ts";
import { saysWhere } from "../../queries/far-side.ts";
import { inOrder } from "../../queries/in-order.ts";
import { formatVolume } from "../../units/volume.ts";
import { fitText, textWidth } from "../text-width.ts";
import type { EntryPlan } from "./entries.ts";

const wording = catalogue({
  breaker: (slot: Part) => `breaker ${slot}`,
  breakerOf: (slot: Part, ampere: Part) => `breaker ${slot}, ${ampere} A`,
  from: (box: Part) => `from ${box}`,
  metal: "metal",
  nonmetallic: "nonmetallic",
  notDrawn: "not drawn",
  panel: "panel",
  to: (box: Part) => `to ${box}`,
  volume: (in3: Part) => `${in3} in³`,
  volumeUnknown: "volume unknown",
});

/** How the metal of a terminal looks. */
export const FINISH_WORDS: Readonly<Record<Finish, string>> = {
  ...catalogue({ brass: "brass", silver: "silver", green: "green", black: "black" }),
  none: "",
};

interface Captioned {
  readonly splice?: Splice;
  readonly bar?: Device;
  readonly sizes?: string;
}

/** "4 × 12, large": how many of which sizes, and the connector. */
export function spliceCaption(stack: Captioned): string {
  if (stack.bar) return getDeviceType(stack.bar.type).caption;
  const { splice } = stack;
  if (splice === undefined) return "";
  const word = findConnector(splice.connector)?.word ?? CONNECTOR_WORDS[splice.connector] ?? splice.connector;
  return stack.sizes === undefined || stack.sizes === "" ? word : `${stack.sizes}, ${word}`;
}

const CONNECTOR_WORDS: Readonly<Record<string, string>> = catalogue({
  none: "no connector",
  taped: "taped",
  soldered: "soldered",
  unknown: "connector ?",
});

/** "3 × 12", "2 × 12 + 1 × 14": thickest first. */
export function sizesOf(enclosure: Enclosure, installation: Installation, ends: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const end of ends) {
    const parsed = parseEnd(end);
    if (parsed === undefined) continue;
    const wire =
      parsed.of === "jumper"
        ? enclosure.jumpers[parsed.jumper]
        : installation.cables[parsed.cable]?.conductors[parsed.conductor];
    if (wire) counts.set(wire.awg, (counts.get(wire.awg) ?? 0) + 1);
  }
  return [...counts]
    .sort(([a], [b]) => Number.parseFloat(a) - Number.parseFloat(b))
    .map(([awg, count]) => `${count} × ${awg}`)
    .join(" + ");
}

/** "laundry, 4 in. square × 2-1/8, metal, 30.3 in³". */
export function headerNote(enclosure: Enclosure): string {
  const title = findEnclosureItem(enclosure.item)?.title;
  const parts = [enclosure.note, title];
  if (enclosure.kind === "box") {
    const { material } = enclosure;
    if (material !== "unknown" && !titleSaysMaterial(enclosure)) parts.push(wording[material]);
    const volume = creditedVolume(enclosure);
    parts.push(volume === undefined ? wording.volumeUnknown : wording.volume(formatVolume(volume)));
  }
  return parts.filter((part) => part !== undefined && part !== "").join(", ");
}

/** Boxes of the stock that are called by what they are made of. */
const CALLED_NONMETALLIC: ReadonlySet<string> = new Set([
  "plastic-new-1",
  "plastic-new-2",
  "plastic-old-1",
  "plastic-old-2",
  "plastic-ceiling",
]);

/** Whether the title of a box in the stock says already what it is made of. */
export const titleSaysMaterial = ({ item, material }: Pick<Box, "item" | "material">): boolean =>
  material === "nonmetallic" && CALLED_NONMETALLIC.has(item);

/** Room in the stub of a sheath, from its torn end to the wall or to a connector outside it, and the gap between words. */
const IN_SHEATH = { toWall: 104, toConnector: 90, gap: 7, size: 11.5 } as const;

/** Name, size and length as they fit into the sheath: a long name takes the place of the length, then is cut. */
export function sheathWords(
  name: string,
  sizeText: string,
  lengthText: string,
  means: EntryMeans,
): { readonly name: string; readonly sizeText: string; readonly lengthText: string } {
  const { toWall, toConnector, gap, size } = IN_SHEATH;
  const width = means === "external-connector" ? toConnector : toWall;
  const forSize = textWidth(sizeText, size) + gap;
  const forLength = lengthText === "" ? 0 : textWidth(lengthText, size) + gap;
  const forName = textWidth(name, size, 700);
  if (forName + forSize + forLength <= width) return { name, sizeText, lengthText };
  return { name: fitText(name, width - forSize, size, 700), sizeText, lengthText: "" };
}

/** "to B4" and what is there; "from P" and the breaker where the cable brings the supply. */
export function sheathCaption(
  installation: Installation,
  enclosure: Enclosure,
  entry: EntryPlan,
): { readonly title: string; readonly note: string } {
  const far = entry.cable.sides[otherSide(entry.side)];
  if ("outside" in far) {
    const named = saysWhere(far.outside);
    const leads = installation.intent.boxes[enclosure.id]?.supply === entry.cable.id ? wording.from : wording.to;
    return {
      title: fitText(named ? leads(far.outside) : wording.notDrawn, CAPTION_WIDTH, 13, 700),
      note: named ? wording.notDrawn : "",
    };
  }
  const there = installation.enclosures[far.enclosure];
  if (there === undefined) return { title: "", note: "" };
  const title = (bringsSupply(installation, enclosure, entry) ? wording.from : wording.to)(there.name);
  return { title: fitText(title, CAPTION_WIDTH, 13, 700), note: fitText(farNote(there, entry), CAPTION_WIDTH, 12) };
}

/** Whether a cable comes from another box or panel with the supply: what was said of it counts, then that it comes from a panel. */
export function bringsSupply(
  installation: Installation,
  enclosure: Enclosure,
  { cable, side }: Pick<EntryPlan, "cable" | "side">,
): boolean {
  const far = cable.sides[otherSide(side)];
  const there = "outside" in far ? undefined : installation.enclosures[far.enclosure];
  if (there === undefined) return false;
  const supply = installation.intent.boxes[enclosure.id]?.supply;
  return supply === undefined ? there.kind === "panel" && enclosure.kind === "box" : supply === cable.id;
}

/** Over the stub of a sheath, clear of the wall and of the frame around a selected box. */
const CAPTION_WIDTH = 104;

function farNote(there: Enclosure, entry: EntryPlan): string {
  if (there.kind === "panel") {
    for (const { key } of entry.conductors) {
      const at = there.places[cableEnd(entry.cable.id, key, otherSide(entry.side))]?.at;
      const device = at?.kind === "terminal" ? there.devices[at.device] : undefined;
      if (device?.slot === undefined) continue;
      const rating = device.breakerRatingA;
      return rating === undefined ? wording.breaker(device.slot) : wording.breakerOf(device.slot, rating);
    }
    return there.note ?? wording.panel;
  }
  const names = inOrder(there.devices).map((device) => device.name);
  return [names.join(", "), there.note].filter((part) => part !== undefined && part !== "").join(" ");
}
