import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { formatVolume, toDecimal } from "../../units/volume.ts";
import { roomIn, whyNotInTable } from "../fill/box-room.ts";
import { countFill } from "../fill/count-fill.ts";
import { boxContents } from "../fill/fill-ledger.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject, withCanada } from "../rule-parts.ts";
import { sizesWords } from "../standard-sizes.ts";

const messages = templates({
  unknown:
    "No volume is recorded for {box}: it must be at least {fill} in³ for what it holds. Read the marking inside the box, or measure it and choose its standard size. {sizes}",
  notInTable: "{box} must have at least {fill} in³ for what it holds. {why} {sizes}",
  clampsUnknown:
    "Cannot tell how much volume {box} needs: {fill} in³ with internal clamps, {fillWithout} without. Record whether internal clamps are present, used or not.",
});

const wording = catalogue({
  whetherClamps: (box: Part) => `whether ${box} has internal clamps`,
});

/** A box that holds something must have a volume to judge it by; an empty one need not. */
export const boxVolumeUnknown = defineRule({
  id: "box-volume-unknown",
  status: "stable",
  scope: "box",
  severity: "caution",
  summary: "The volume of a box that holds conductors must be known, by its marking or by its standard size.",
  why: "Without the volume nobody can say whether the box is overfull. Depth is what is most often missing: two boxes with the same opening differ by half in volume. Nonmetallic boxes carry their volume as a marking inside.",
  messages,
  sections: withCanada(everyEdition("314.16(A)", "sourced"), "12-3034"),
  values: ["conductorAllowance"],
  check({ enclosure, installation, edition, report, cannotTell }) {
    if (enclosure.kind !== "box" || roomIn(enclosure, edition) !== undefined) return;
    const counted = countFill(boxContents(installation, enclosure, edition), edition);
    if (!counted.applies || counted.lines.length === 0) return;
    const subjects = [subject("enclosure", enclosure)];
    const shown = { box: enclosure.name, fill: formatVolume(counted.total) };
    const why = whyNotInTable(enclosure, edition);
    report({
      subjects,
      message: fillIn(why === undefined ? messages.unknown : messages.notInTable, {
        ...shown,
        why: why ?? "",
        sizes: sizesWords(enclosure, counted.total, edition.values),
      }),
      data: { neededIn3: toDecimal(counted.total) },
      asks: [{ rule: "box-overfull", subjects: [enclosure.id] }],
      ...basisOf(
        marksOn(enclosure, "internalClamps", "supports", "terminalBlocks"),
        cablesInto(installation.cables, enclosure.id).flatMap(({ cable }) => marksOn(cable, "item", "conductors")),
      ),
    });
    if (enclosure.internalClamps !== "unknown") return;
    const without = countFill(boxContents(installation, enclosure, edition, false), edition);
    if (!without.applies || without.total === counted.total) return;
    cannotTell({
      subjects,
      message: fillIn(messages.clampsUnknown, { ...shown, fillWithout: formatVolume(without.total) }),
      missing: wording.whetherClamps(enclosure.name),
    });
  },
});
