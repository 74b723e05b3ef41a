import { findCableItem } from "../../shared-model/catalog/cable-items.ts";
import type { Cable } from "../../shared-model/model/cable.ts";
import { otherSide, type Side } from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { saysWhere } from "../../shared-model/queries/far-side.ts";
import { wording } from "./words.ts";

/** Size of a cable and where it goes, seen from one side: "12/2 to B4", "12/2 to panel, not drawn", "12/2, far end not drawn". */
export function farSideName(installation: Installation, cable: Cable, side: Side): string {
  const far = cable.sides[otherSide(side)];
  const size = findCableItem(cable.item)?.sizeText ?? cable.item;
  if (!("outside" in far)) return wording.to2(size, installation.enclosures[far.enclosure]?.name ?? "");
  return saysWhere(far.outside)
    ? wording.toNotDrawn(size, far.outside.replace(/^to /, ""))
    : wording.farEndNotDrawn(size);
}
