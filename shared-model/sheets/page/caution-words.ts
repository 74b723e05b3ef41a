/** Printed on every sheet. */
export const GENERAL_CAUTIONS = [
  "This is a planning and teaching aid. It checks a drawing, not a building. It cannot see the wires in your wall.",
  "Only the adopted code, its local amendments and the authority having jurisdiction decide. Section numbers are pointers for looking up; read the text.",
  "Work on wiring may be restricted to licensed people and need a permit. If you are not qualified, stop and hire someone who is.",
  "No finding shown does not mean safe or compliant. Some rules need facts this drawing does not hold.",
] as const;

export const notReviewed = (edition: string): string => `Rule set ${edition}: not reviewed by a licensed person.`;

export const reviewed = (edition: string, by: string): string => `Rule set ${edition}, reviewed by ${by}.`;

/** On every print of a project of this edition. */
export const EDITION_2026 = "Edition 2026: 2023 text, not verified.";
