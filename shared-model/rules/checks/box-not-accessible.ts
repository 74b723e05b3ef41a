import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Box } from "../../model/enclosure.ts";
import { defineRule } from "../rule.ts";
import { basisOf, counted, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  buried:
    "{box} cannot be reached without damage to the building, and {holds} in it. Open the finish and set a cover flush with it, or take the joints out of there and run the cable through whole.",
});

const wording = catalogue({
  ends: (count: number) => `${counted(count, "conductor end")} ${count === 1 ? "is" : "are"}`,
  isInIt: (item: Part) => `${item} is`,
  areInIt: (items: Part) => `${items} are`,
  splices: (count: number) => counted(count, "splice"),
});

/** Boxes with something made up in them; a cable that only passes is no reason to open a wall. */
export const boxNotAccessible = defineRule({
  id: "box-not-accessible",
  status: "stable",
  scope: "box",
  severity: "violation",
  summary: "A box with joints or a device in it must stay within reach without breaking the finish.",
  why: "Joints fail, and the one that nobody can find is the one behind the new plaster. A box under a floor that is nailed down, behind a tiled wall or over a ceiling without a hatch counts as buried, whatever cover it has. A blank plate that shows is the cure, not a hidden one. The check speaks where the box is recorded as not accessible.",
  messages,
  sections: everyEdition("314.29", "from-memory"),
  check({ enclosure, report }) {
    if (enclosure.kind !== "box" || enclosure.accessible !== false) return;
    const holds = whatItHolds(enclosure);
    if (holds === undefined) return;
    report({
      subjects: [subject("enclosure", enclosure)],
      message: fillIn(messages.buried, { box: enclosure.name, holds }),
      ...basisOf(marksOn(enclosure, "accessible")),
    });
  },
});

/** "2 splices and R1 are"; undefined where no conductor ends. */
function whatItHolds({ splices, devices, places }: Box): string | undefined {
  const joints = Object.keys(splices).length;
  const named = Object.values(devices)
    .map(({ name }) => name)
    .sort();
  const ends = Object.keys(places).length;
  if (joints + named.length + ends === 0) return undefined;
  const parts = [...(joints > 0 ? [wording.splices(joints)] : []), ...named];
  if (parts.length === 0) return wording.ends(ends);
  return (parts.length === 1 && joints < 2 ? wording.isInIt : wording.areInIt)(listed(parts));
}
