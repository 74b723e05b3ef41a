import type { Colour } from "../units/colour.ts";

/**
 * A thin mark along the middle of a conductor, so that its colour can be told when colours cannot be seen: by a person
 * who does not see them, on a grey printer, on a poor projector. In drawing units along the conductor; `dash` as SVG has
 * it, without one the mark is a line throughout.
 */
export interface ConductorMark {
  readonly width: number;
  readonly dash?: readonly number[];
  /** Across the whole core, or only along its middle. */
  readonly across?: true;
  /** Ends of the dashes. */
  readonly round?: true;
}

/**
 * Own marks: black and white have none, being told from all others and from each other by light and dark, grey none
 * either, being between them; bare copper has rungs. No standard is followed here; the letters of IEC 60757 stand beside
 * every end as well.
 */
export const CONDUCTOR_MARKS: Readonly<Record<Colour, ConductorMark | undefined>> = {
  black: undefined,
  white: undefined,
  grey: undefined,
  bare: { width: 4.6, dash: [0.9, 5.1], across: true },
  red: { width: 1.4, dash: [7, 5] },
  green: { width: 1.4, dash: [3, 3] },
  blue: { width: 1.8, dash: [0, 5], round: true },
  yellow: { width: 1.1 },
  orange: { width: 1.4, dash: [8, 3, 1.5, 3] },
  brown: { width: 1.4, dash: [14, 4] },
  violet: { width: 2 },
  pink: { width: 1.8, dash: [0, 11], round: true },
};
