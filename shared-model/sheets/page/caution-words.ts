import { catalogue, type Part } from "../../lib/catalogue.ts";

const wording = catalogue({
  decide:
    "Only the adopted code, its local amendments and the authority having jurisdiction decide. Section numbers are pointers for looking up; read the text.",
  edition2026: "Edition 2026: 2023 text, not verified.",
  noFinding: "No finding shown does not mean safe or compliant. Some rules need facts this drawing does not hold.",
  notReviewed: (edition: Part) => `Rule set ${edition}: not reviewed by a licensed person.`,
  planningAid:
    "This is a planning and teaching aid. It checks a drawing, not a building. It cannot see the wires in your wall.",
  restricted:
    "Work on wiring may be restricted to licensed people and need a permit. If you are not qualified, stop and hire someone who is.",
  reviewed: (edition: Part, by: Part) => `Rule set ${edition}, reviewed by ${by}.`,
});

/** Printed on every sheet. */
export const GENERAL_CAUTIONS = [wording.planningAid, wording.decide, wording.restricted, wording.noFinding] as const;

export const { notReviewed, reviewed } = wording;

/** On every print of a project of this edition. */
export const EDITION_2026 = wording.edition2026;
