import type { ScopeBox, ScopeChange } from "../../answers/scope.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { EndKey, SpliceId } from "../../model/ids.ts";
import type { At } from "../../model/place.ts";
import type { Installation } from "../../model/project.ts";
import { findEndFacts } from "../../queries/end-facts.ts";
import { membersOf } from "../../queries/landings.ts";
import { findTerminal } from "../../queries/terminals-of.ts";

/** In the order in which a box is made up: grounds first and at the back, then neutrals, then hots. */
export const WIRE_CLASSES = ["ground", "neutral", "hot"] as const;
export type WireClass = (typeof WIRE_CLASSES)[number];

/** What an end is by its make and by the mark on it. A white that is marked otherwise is no neutral. */
export function classOfEnd(installation: Installation, enclosure: Enclosure, end: EndKey): WireClass {
  const facts = findEndFacts(installation, enclosure, end);
  const colour = enclosure.places[end]?.markedAs ?? facts?.colour;
  if (facts?.grounding === true || colour === "green") return "ground";
  return colour === "white" || colour === "grey" ? "neutral" : "hot";
}

/** A joint is what most of its members are; a ground among them makes it one of grounds, since that is looked at first. */
export function classOfSplice(installation: Installation, enclosure: Enclosure, splice: SpliceId): WireClass {
  const classes = membersOf(enclosure, splice).map((end) => classOfEnd(installation, enclosure, end));
  if (classes.includes("ground")) return "ground";
  return classes.filter((one) => one === "neutral").length * 2 > classes.length ? "neutral" : "hot";
}

/** What an end is landed for: by its joint, its terminal, else by its make. */
export function classOfPlace(installation: Installation, enclosure: Enclosure, end: EndKey, at: At): WireClass {
  switch (at.kind) {
    case "splice":
      return classOfSplice(installation, enclosure, at.splice);
    case "bond":
      return "ground";
    case "terminal": {
      const device = enclosure.devices[at.device];
      const purpose = device && findTerminal(device, at.terminal)?.purpose;
      if (purpose === "ground" || purpose === "neutral") return purpose;
      return purpose === undefined ? classOfEnd(installation, enclosure, end) : "hot";
    }
    default:
      return classOfEnd(installation, enclosure, end);
  }
}

/** Ends of a box that are taken off, put on, or capped. */
export const endsOf = ({ changes }: ScopeBox): readonly ScopeChange[] =>
  changes.filter(({ item }) => item.kind === "end");
