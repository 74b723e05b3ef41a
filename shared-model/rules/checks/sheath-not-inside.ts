import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Cable } from "../../model/cable.ts";
import type { Box, Entry } from "../../model/enclosure.ts";
import { cablesAtEntry } from "../../queries/cables-at-entry.ts";
import { inOrder } from "../../queries/in-order.ts";
import { inchWords } from "../../units/inch-words.ts";
import type { EditionData } from "../editions/edition-data.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  short:
    "The sheath of {cables} {reaches} into {box}: {least} inside is the least in a nonmetallic box. Feed more cable in, or strip less where it is made up anew.",
  materialUnknown:
    "Cannot tell whether the sheath of {cables} reaches far enough into {box}: it {reaches}, and a nonmetallic box needs {least}. Whether {box} is nonmetallic is not recorded.",
});

const wording = catalogue({
  doesNotReach: "does not reach",
  reachesOnly: (length: Part) => `reaches only ${length}`,
  whetherNonmetallic: (box: Part) => `whether ${box} is nonmetallic`,
});

/** Only where somebody measured the sheath inside. */
export const sheathNotInside = defineRule({
  id: "sheath-not-inside",
  status: "stable",
  scope: "box",
  severity: "violation",
  summary: "The sheath of a nonmetallic cable must reach into a nonmetallic box.",
  why: "Where the sheath ends in front of the box, bare insulation lies over the edge of the opening and in the wall, where nothing guards it; and a retainer that should hold the sheath bites into single conductors. It comes of stripping a cable before it is pulled in. Without the length inside nothing is said: look at each cable with the cover off.",
  messages,
  sections: everyEdition("314.17", "from-memory", { 2023: { section: "314.17", confidence: "doubtful" } }),
  values: ["sheathInsideIn"],
  check({ enclosure, installation, edition, report, cannotTell }) {
    if (enclosure.kind !== "box" || enclosure.material === "metal") return;
    const least = edition.values.sheathInsideIn.value;
    if (!Object.values(enclosure.entries).some(({ sheathInsideIn }) => sheathInsideIn !== undefined)) return;
    for (const entry of inOrder(enclosure.entries)) {
      const { sheathInsideIn: inside } = entry;
      if (inside === undefined || inside >= least) continue;
      const cables = cablesAtEntry(installation, enclosure, entry.id).filter(isSheathed);
      if (cables.length === 0) continue;
      const shown = {
        cables: listed(cables.map(({ name }) => name)),
        reaches: inside === 0 ? wording.doesNotReach : wording.reachesOnly(inchWords(inside)),
        box: enclosure.name,
        least: inchWords(least),
      };
      const subjects = [...cables.map((cable) => subject("cable", cable)), subject("enclosure", enclosure)];
      if (enclosure.material === "unknown") {
        const missing = wording.whetherNonmetallic(enclosure.name);
        const enterAt = subject("enclosure", enclosure);
        cannotTell({ subjects, message: fillIn(messages.materialUnknown, shown), missing, enterAt });
        continue;
      }
      report({
        subjects,
        message: fillIn(messages.short, shown),
        data: { insideIn: inside, leastIn: least },
        ...basisOf(marksOn(entry, "sheathInsideIn"), marksOn(enclosure, "material")),
        ...(onlyTheSheath(enclosure, entry, edition) && {
          hides: [{ rule: "cable-entry-unsecured", subjects: cables.slice(0, 1).map(({ id }) => id) }],
        }),
      });
    }
  },
});

const isSheathed = ({ construction }: Cable): boolean => construction === "nonmetallic-sheathed";

/** A box that may do without a clamp lacks one here for its sheath alone: one fault. */
const onlyTheSheath = ({ gangs, shape }: Box, entry: Entry, { values }: EditionData): boolean =>
  entry.means === "none" &&
  gangs === 1 &&
  shape === "device" &&
  (entry.securedWithinIn ?? 0) <= values.unclampedFastenedWithinIn.value;
