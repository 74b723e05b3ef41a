import type { FillItem, FillLine } from "../../answers/fill.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Box } from "../../model/enclosure.ts";
import type { EvidenceMark } from "../../model/evidence.ts";
import type { Installation } from "../../model/project.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { addVolumes, exceedsVolume, formatVolume, subtractVolume, toDecimal } from "../../units/volume.ts";
import { roomIn, whyNotInTable } from "../fill/box-room.ts";
import { countFill } from "../fill/count-fill.ts";
import { boxContents } from "../fill/fill-ledger.ts";
import { roomOffers } from "../larger-box.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject, withCanada } from "../rule-parts.ts";
import { sizesWords } from "../standard-sizes.ts";

const messages = templates({
  overfull:
    "{box} needs {fill} in³ and has {volume}: {over} in³ too much. {parts}. A box with rings or an extension of {fill} in³ or more in all cures it.{clamps}",
  volumeUnknown: "Cannot tell whether {box} is overfull: its volume is not recorded and it needs {fill} in³. {sizes}",
  notInTable: "Cannot tell whether {box} is overfull: it needs {fill} in³. {why} {sizes}",
  clampsUnknown:
    "Cannot tell whether {box} is overfull: it needs {fill} in³ with internal clamps and {fillWithout} without, and has {volume}. Record whether internal clamps are present, used or not.",
});

const wording = catalogue({
  clampsOut: (saved: Part) => ` Or take the internal clamps out (saves ${saved} in³) and fit connectors outside.`,
  part: (items: Part, volume: Part) => `${items} ${volume}`,
  volumeOf: (box: Part) => `the volume of ${box}`,
  whetherClamps: (box: Part) => `whether ${box} has internal clamps`,
});

/** Volume needed against volume credited; exactly full passes. */
export const boxOverfull = defineRule({
  id: "box-overfull",
  status: "stable",
  scope: "box",
  severity: "violation",
  summary: "A box must have room for every conductor, clamp, support and device that it holds.",
  why: "Conductors pressed into a box that is too small are nicked by screws and edges, joints are pulled apart when the device is pushed home, and heat has nowhere to go. Clamps count while they are present, used or not; pigtails and links that stay inside count nothing; a ring adds volume only when it is marked.",
  messages,
  sections: withCanada(everyEdition("314.16(B)", "sourced"), "12-3034"),
  values: [
    "conductorAllowance",
    "loopLengthIn",
    "loopAllowances",
    "clampAllowances",
    "supportAllowances",
    "deviceAllowancesPerGang",
    "groundsInFirstAllowance",
    "quartersPerFurtherGround",
    "isolatedSetAllowances",
    "terminalBlockAllowances",
    "conductorMl",
    "tableBoxes",
    "connectorsPerAllowance",
    "groundAllowances",
    "deepDeviceFromIn",
    "deepDeviceMlPerCm",
  ],
  check({ enclosure, installation, edition, state, report, cannotTell }) {
    if (enclosure.kind !== "box") return;
    const volume = roomIn(enclosure, edition);
    const counted = countFill(boxContents(installation, enclosure, edition), edition);
    if (!counted.applies || counted.lines.length === 0) return;
    const subjects = [subject("enclosure", enclosure)];
    if (volume === undefined) {
      const why = whyNotInTable(enclosure, edition);
      cannotTell({
        subjects,
        message: fillIn(why === undefined ? messages.volumeUnknown : messages.notInTable, {
          box: enclosure.name,
          fill: formatVolume(counted.total),
          why: why ?? "",
          sizes: sizesWords(enclosure, counted.total, edition.values),
        }),
        missing: wording.volumeOf(enclosure.name),
      });
      return;
    }
    if (!exceedsVolume(counted.total, volume)) return;
    const shown = { box: enclosure.name, fill: formatVolume(counted.total), volume: formatVolume(volume) };
    const without = countFill(boxContents(installation, enclosure, edition, false), edition);
    const withoutClamps = without.applies ? without.total : counted.total;
    if (enclosure.internalClamps === "unknown" && !exceedsVolume(withoutClamps, volume)) {
      cannotTell({
        subjects,
        message: fillIn(messages.clampsUnknown, { ...shown, fillWithout: formatVolume(withoutClamps) }),
        missing: wording.whetherClamps(enclosure.name),
      });
      return;
    }
    const over = subtractVolume(counted.total, volume);
    const parts = PARTS.flatMap((item) => {
      const volumeOfPart = partOf(counted.lines, item);
      return volumeOfPart === 0 ? [] : [wording.part(PART_WORDS[item], formatVolume(volumeOfPart, 2))];
    });
    report({
      subjects,
      message: fillIn(messages.overfull, {
        ...shown,
        over: formatVolume(over),
        parts: asSentence(parts.join(", ")),
        clamps:
          enclosure.internalClamps === "present" && !exceedsVolume(withoutClamps, volume)
            ? wording.clampsOut(formatVolume(subtractVolume(counted.total, withoutClamps), 2))
            : "",
      }),
      data: { neededIn3: toDecimal(counted.total), volumeIn3: toDecimal(volume), overIn3: toDecimal(over) },
      ...basisOf(marks(installation, enclosure)),
      // The sizes of the stock are credited as NFPA 70 has them.
      offers:
        edition.countsBy === "nfpa-70" ? roomOffers(enclosure, state, { asItIs: counted.total, withoutClamps }) : [],
    });
  },
});

const asSentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

const PARTS: readonly FillItem[] = [
  "conductors",
  "clamps",
  "supports",
  "devices",
  "grounds",
  "terminal-blocks",
  "connectors",
  "deep-devices",
];

const PART_WORDS: Readonly<Record<FillItem, string>> = catalogue({
  clamps: "clamps",
  conductors: "conductors",
  connectors: "connectors",
  "deep-devices": "deep devices",
  devices: "devices",
  grounds: "grounds",
  supports: "supports",
  "terminal-blocks": "terminal blocks",
});

const partOf = (lines: readonly FillLine[], item: FillItem) =>
  addVolumes(...lines.filter((line) => line.item === item).map((line) => line.volume));

/** The facts that the count rests on. */
function marks(installation: Installation, box: Box): readonly EvidenceMark[] {
  return [
    ...marksOn(box, "volume", "internalClamps", "supports", "terminalBlocks", "gangs"),
    ...Object.values(box.rings).flatMap((ring) => marksOn(ring, "volume")),
    ...Object.values(box.devices).flatMap((device) => marksOn(device, "type")),
    ...Object.values(box.passThroughs).flatMap((pass) => marksOn(pass, "loopLengthIn", "conductors")),
    ...cablesInto(installation.cables, box.id).flatMap(({ cable }) => marksOn(cable, "item", "conductors")),
  ];
}
