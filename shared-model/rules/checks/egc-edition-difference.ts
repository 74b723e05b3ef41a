import { templates } from "../../lib/catalogue.ts";
import type { Box } from "../../model/enclosure.ts";
import type { Installation } from "../../model/project.ts";
import { creditedVolume } from "../../queries/box-volume.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { exceedsVolume, formatVolume, subtractVolume, toDecimal } from "../../units/volume.ts";
import { GROUNDS_BEFORE_2020 } from "../editions/box-fill-values.ts";
import type { EditionData } from "../editions/edition-data.ts";
import { countFill } from "../fill/count-fill.ts";
import { boxContents } from "../fill/fill-ledger.ts";
import { defineRule } from "../rule.ts";
import { everyEdition, fillIn, subject } from "../rule-parts.ts";

const messages = templates({
  more: "{grounds} grounds enter {box}: by this edition the first {first} share one allowance and each further one adds a quarter, {more} in³ in all. Before 2020 all of them shared one. Compare counts of this box only within one edition.",
  tips: "{grounds} grounds enter {box}: by this edition the first {first} share one allowance and each further one adds a quarter, {more} in³ in all. Before 2020 all of them shared one, and {box} was large enough; by this edition it is not.",
});

/** Says where the count differs from what an older worksheet or an older inspection gave. */
export const egcEditionDifference = defineRule({
  id: "egc-edition-difference",
  status: "stable",
  scope: "box",
  severity: "advice",
  summary: "With more than four equipment grounds in a box, the count of box fill depends on the edition.",
  why: "Through the 2017 edition all equipment grounds of a box shared one allowance, however many there were. From 2020 on one allowance covers four, and each further ground adds a quarter of it. A box that passed an older inspection can be overfull by the edition in force when it is opened again, and an old worksheet gives another sum than this one. Nothing is wrong by itself: it explains the figure.",
  messages,
  sections: everyEdition("314.16(B)(5)", "sourced"),
  values: ["groundsInFirstAllowance", "quartersPerFurtherGround"],
  check({ enclosure, installation, edition, report }) {
    if (enclosure.kind !== "box" || edition.values.quartersPerFurtherGround.value === 0) return;
    if (!mayHaveMore(installation, enclosure, edition)) return;
    const contents = boxContents(installation, enclosure, edition);
    const first = edition.values.groundsInFirstAllowance.value;
    const grounds = contents.grounds.reduce((sum, { count }) => sum + count, 0);
    if (grounds <= first) return;
    const now = countFill(contents, edition);
    const before = countFill(contents, countingAsBefore(edition));
    if (!now.applies || !before.applies || now.total <= before.total) return;
    const more = subtractVolume(now.total, before.total);
    const volume = creditedVolume(enclosure);
    const tips = volume !== undefined && exceedsVolume(now.total, volume) && !exceedsVolume(before.total, volume);
    report({
      subjects: [subject("enclosure", enclosure)],
      message: fillIn(tips ? messages.tips : messages.more, {
        grounds,
        box: enclosure.name,
        first,
        more: formatVolume(more),
      }),
      data: { grounds, moreIn3: toDecimal(more) },
    });
  },
});

const countingAsBefore = (edition: EditionData): EditionData => ({
  ...edition,
  values: { ...edition.values, ...GROUNDS_BEFORE_2020 },
});

/** At least as many grounds as are counted: tells of nearly every box, and cheaply, that there are few. */
function mayHaveMore({ cables }: Installation, box: Box, { values }: EditionData): boolean {
  let most = 0;
  for (const { cable } of cablesInto(cables, box.id))
    for (const { grounding } of Object.values(cable.conductors)) if (grounding) most += 1;
  for (const { conductors } of Object.values(box.passThroughs)) most += conductors.length;
  return most > values.groundsInFirstAllowance.value;
}
