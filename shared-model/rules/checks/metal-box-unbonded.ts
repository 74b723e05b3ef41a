import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Box } from "../../model/enclosure.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import { bondFix } from "../ground-fixes.ts";
import { groundsOf, isParted } from "../grounds.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  unbonded:
    "{box} is metal and is not joined to the grounds in it ({grounds}): a fault to the box would leave it live. Bring a pigtail from them to its ground screw or clip; box fill stays the same.",
  materialUnknown:
    "Cannot tell whether {box} must be joined to the grounds in it ({grounds}): whether it is metal is not recorded. Look, and record its material.",
});

const wording = catalogue({
  materialOf: (box: Part) => `the material of ${box}`,
});

/**
 * Whether a ground of a box leads to ground is decided at its far end, so the whole section is looked at. A yoke is no
 * bond: with the device taken out the box would be on its own.
 */
export const metalBoxUnbonded = defineRule({
  id: "metal-box-unbonded",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "A metal box with an equipment ground in it must be joined to that ground by a screw or clip of its own.",
  why: "A hot that touches the metal of an unbonded box makes the box and its cover screws live, and no breaker opens. It happens when the pigtail to the box is forgotten, or when the box was grounded only through the strap of a device that was then exchanged. A box without a ground in it, as on an old two-wire circuit, is another matter; a nonmetallic box needs no bond; armour with a bonding strip bonds a metal box by its connector.",
  messages,
  sections: everyEdition("314.4, 250.148(C)", "from-memory"),
  check({ section, state, report, cannotTell }) {
    const { installation } = section;
    for (const box of section.enclosures) {
      if (box.kind !== "box" || box.material === "nonmetallic") continue;
      const grounds = groundsOf(section, box);
      if (!grounds.present || isParted(box, grounds)) continue;
      if (grounds.groupAtBond()?.reachesGround === true) continue;
      const leading = grounds.groups.filter((group) => group.reachesGround);
      const ends = leading.flatMap((group) => group.ends);
      const shown = { box: box.name, grounds: listed(ends.map((end) => nameOfEnd(installation, box, end))) };
      const subjects = [subject("enclosure", box)];
      if (box.material === "unknown") {
        cannotTell({
          subjects,
          message: fillIn(messages.materialUnknown, shown),
          missing: wording.materialOf(box.name),
        });
        continue;
      }
      const fix = bondFix(installation, box, state, leading, grounds.bondIsClean);
      report({
        subjects,
        message: fillIn(messages.unbonded, shown),
        ...basisOf(marksOn(box, "material"), placeMarks(box)),
        ...(fix !== undefined && { fix }),
      });
    }
  },
});

/** That nothing is on its bond rests on every end of a ground that somebody placed elsewhere; the marks of the bonded ones say most. */
const placeMarks = (box: Box) =>
  Object.values(box.places)
    .filter(({ at }) => at.kind === "bond")
    .flatMap((place) => marksOn(place, "at"));
