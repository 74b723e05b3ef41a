import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { exceedsVolume, formatVolume, subtractVolume, toDecimal } from "../../units/volume.ts";
import { thickestOf } from "../../units/wire-size.ts";
import { roomIn } from "../fill/box-room.ts";
import { countFill } from "../fill/count-fill.ts";
import { boxContents } from "../fill/fill-ledger.ts";
import { OWN_CHECK } from "../own-check.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject, withCanada } from "../rule-parts.ts";

const messages = templates({
  full: "{box} has {spare} in³ left of {volume}: one more conductor of {awg} AWG, which takes {allowance} in³, would overfill it. Before anything is added here, plan a larger box, a marked ring or an extension.",
  exactlyFull:
    "{box} is exactly full ({volume} in³): one more conductor of {awg} AWG, which takes {allowance} in³, would overfill it. Before anything is added here, plan a larger box, a marked ring or an extension.",
  clampsUnknown:
    "Cannot tell whether {box} has room for one more conductor: it has {spare} in³ left of {volume} with internal clamps, {spareWithout} without. Record whether internal clamps are present, used or not.",
});

const wording = catalogue({
  whetherClamps: (box: Part) => `whether ${box} has internal clamps`,
});

/** Exactly full is nearly full; a box that is overfull or has no volume is the business of other rules. */
export const fillNearlyFull = defineRule({
  id: "fill-nearly-full",
  status: "stable",
  scope: "box",
  severity: "advice",
  summary: "A box that has no room for one more conductor of its largest size is named before someone adds to it.",
  why: "A box that passes today fails with the next cable, and that is found out when the wall is closed. Pigtails and links add nothing, so grounds and feeds can still be made up; a cable, a larger device or a thicker conductor cannot be added.",
  messages,
  sections: withCanada(everyEdition(OWN_CHECK, "own-rule"), OWN_CHECK, "own-rule"),
  values: ["conductorAllowance"],
  check({ enclosure, installation, edition, report, cannotTell }) {
    if (enclosure.kind !== "box") return;
    const volume = roomIn(enclosure, edition);
    const contents = boxContents(installation, enclosure, edition);
    const counted = countFill(contents, edition);
    if (volume === undefined || !counted.applies || exceedsVolume(counted.total, volume)) return;
    const grounds = edition.values.groundAllowances?.value === 0 ? [] : contents.grounds;
    const awg = thickestOf([...contents.conductors, ...grounds].map((one) => one.awg));
    const allowance = awg === undefined ? undefined : edition.values.conductorAllowance.value[awg];
    const spare = subtractVolume(volume, counted.total);
    if (awg === undefined || allowance === undefined || spare >= allowance) return;
    const subjects = [subject("enclosure", enclosure)];
    const shown = { box: enclosure.name, spare: formatVolume(spare), volume: formatVolume(volume) };
    const without = countFill(boxContents(installation, enclosure, edition, false), edition);
    if (enclosure.internalClamps === "unknown" && without.applies && without.total < counted.total) {
      const spareWithout = formatVolume(subtractVolume(volume, without.total));
      cannotTell({
        subjects,
        message: fillIn(messages.clampsUnknown, { ...shown, spareWithout }),
        missing: wording.whetherClamps(enclosure.name),
      });
      return;
    }
    report({
      subjects,
      message: fillIn(spare === 0 ? messages.exactlyFull : messages.full, {
        ...shown,
        awg,
        allowance: formatVolume(allowance),
      }),
      data: { spareIn3: toDecimal(spare), volumeIn3: toDecimal(volume), allowanceIn3: toDecimal(allowance) },
      ...basisOf(
        marksOn(enclosure, "volume", "internalClamps", "supports", "terminalBlocks"),
        cablesInto(installation.cables, enclosure.id).flatMap(({ cable }) => marksOn(cable, "item", "conductors")),
      ),
    });
  },
});
