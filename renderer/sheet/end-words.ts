import { findCableItem } from "../../shared-model/catalog/cable-items.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EndKey } from "../../shared-model/model/ids.ts";
import type { At } from "../../shared-model/model/place.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { findEndFacts } from "../../shared-model/queries/end-facts.ts";
import { nameOfTerminal } from "../../shared-model/queries/terminals-of.ts";
import { wording } from "./words.ts";

/** Where something is, as it follows a comma: "on R1 LINE H", "in splice HL", "capped". */
export function placeWords(enclosure: Enclosure, at: At): string {
  switch (at.kind) {
    case "terminal": {
      const device = enclosure.devices[at.device];
      return device === undefined ? wording.onAMissingDevice : wording.on(nameOfTerminal(device, at.terminal));
    }
    case "splice":
      return wording.inSplice(enclosure.splices[at.splice]?.name ?? "").trimEnd();
    case "bond":
      return wording.onTheBoxGroundScrew;
    case "capped":
      return "capped";
    case "loose":
      return "loose";
  }
}

/** A conductor end in full, for people who hear the sheet: "12/2 C3 black end at B1, on R1 LINE H". */
export function endWords(installation: Installation, enclosure: Enclosure, end: EndKey): string {
  const facts = findEndFacts(installation, enclosure, end);
  const place = enclosure.places[end];
  if (facts === undefined || place === undefined) return end;
  const mark = place.markedAs === undefined ? "" : wording.marked(place.markedAs);
  const twin = facts.parsed.of === "cable" && /\d$/.test(facts.parsed.conductor) ? "second " : "";
  const owner =
    facts.parsed.of === "jumper"
      ? wording.jumper(facts.owner)
      : `${sizeOf(installation, facts.parsed.cable)} ${facts.owner}`;
  const spare = place.spare === true ? wording.asASpare : "";
  return wording.endAt(owner, twin, facts.colour, mark, enclosure.name, placeWords(enclosure, place.at), spare);
}

const sizeOf = (installation: Installation, id: keyof Installation["cables"]): string => {
  const cable = installation.cables[id];
  return (cable && (findCableItem(cable.item)?.sizeText ?? Object.values(cable.conductors)[0]?.awg)) ?? "";
};
