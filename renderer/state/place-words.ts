import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EndKey } from "../../shared-model/model/ids.ts";
import { findTerminal, nameOfTerminal } from "../../shared-model/queries/terminals-of.ts";
import { wording } from "./words.ts";

/** Where an end is, in few words: "R1 LINE H, hole 2", "splice E1", "box ground screw", "capped, spare". */
export function placeWords(enclosure: Enclosure, end: EndKey): string {
  const place = enclosure.places[end];
  if (place === undefined) return "";
  const { at } = place;
  switch (at.kind) {
    case "terminal": {
      const device = enclosure.devices[at.device];
      if (device === undefined) return "";
      const holes = findTerminal(device, at.terminal)?.holes ?? 1;
      return `${nameOfTerminal(device, at.terminal)}${holes > 1 ? wording.hole(at.hole) : ""}`;
    }
    case "splice":
      return `splice ${enclosure.splices[at.splice]?.name ?? ""}`;
    case "bond":
      return enclosure.kind === "panel" ? wording.panelBond2 : wording.boxGroundScrew2;
    case "capped":
      return place.spare === true ? wording.cappedSpare : "capped";
    case "loose":
      return "loose";
  }
}
