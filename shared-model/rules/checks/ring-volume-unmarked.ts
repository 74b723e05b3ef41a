import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Box, Ring } from "../../model/enclosure.ts";
import { creditedVolume, volumeOf } from "../../queries/box-volume.ts";
import { inOrder } from "../../queries/in-order.ts";
import { type CubicInches, exceedsVolume, formatVolume, subtractVolume, toDecimal } from "../../units/volume.ts";
import { countFill } from "../fill/count-fill.ts";
import { boxContents } from "../fill/fill-ledger.ts";
import { fixBy } from "../fix-parts.ts";
import { type BoxContext, defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  fromTable:
    "The {ring} on {box} is credited with {volume} in³ from the table of boxes, which lists no rings. Only what is marked on it counts; without a marking it counts 0{without}.",
  assumed:
    "The {ring} on {box} is credited with {volume} in³, and that it is marked so is assumed. Look for the marking; without one it counts 0{without}.",
});

const wording = catalogue({
  count: (ring: Part, box: Part) => `Count the ${ring} on ${box} as 0`,
  overfull: (box: Part) => `, and ${box} would be overfull`,
});

/** Volume that somebody gave a ring which nobody has read off it. */
export const ringVolumeUnmarked = defineRule({
  id: "ring-volume-unmarked",
  status: "stable",
  scope: "box",
  severity: "caution",
  summary: "A ring or raised cover adds only the volume that is marked on it.",
  why: "A ring looks as if it held half a box more, but what it holds counts only where its maker has marked it. Extensions that are themselves boxes of a listed size may take theirs from the table of boxes; rings and raised covers are not in it. A guess here lets an overfull box pass.",
  messages,
  sections: everyEdition("314.16(A)", "sourced"),
  check(context) {
    const { enclosure, state, report } = context;
    if (enclosure.kind !== "box") return;
    for (const ring of inOrder(enclosure.rings)) {
      const volume = volumeOf(ring.volume);
      const wrong = whatIsWrong(ring);
      if (volume === undefined || wrong === undefined) continue;
      report({
        subjects: [subject("enclosure", enclosure)],
        message: fillIn(messages[wrong], {
          ring: WORDS[ring.kind],
          box: enclosure.name,
          volume: formatVolume(volume),
          without: withoutIt(context, enclosure, volume) ? wording.overfull(enclosure.name) : "",
        }),
        data: { volumeIn3: toDecimal(volume) },
        ...basisOf(marksOn(ring, "volume")),
        fix: fixBy(wording.count(WORDS[ring.kind], enclosure.name), "set-property", {
          state,
          target: { kind: "ring", enclosure: enclosure.id, id: ring.id },
          field: "volume",
          value: { kind: "unknown" },
        }),
      });
    }
  },
});

const WORDS: Readonly<Record<Ring["kind"], string>> = catalogue({
  "plaster-ring": "ring",
  "raised-cover": "raised cover",
  extension: "extension",
});

function whatIsWrong({ kind, volume, evidence }: Ring): keyof typeof messages | undefined {
  if (volume.kind === "table") return kind === "extension" ? undefined : "fromTable";
  return volume.kind === "marked" && evidence?.volume === "assumed" ? "assumed" : undefined;
}

/** Whether the box holds what is in it by this ring alone. */
function withoutIt({ installation, edition }: BoxContext, box: Box, ring: CubicInches): boolean {
  const has = creditedVolume(box);
  const counted = countFill(boxContents(installation, box, edition), edition);
  if (has === undefined || !counted.applies || exceedsVolume(counted.total, has)) return false;
  return exceedsVolume(counted.total, subtractVolume(has, ring));
}
