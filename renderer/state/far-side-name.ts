import { findCableItem } from "../../shared-model/catalog/cable-items.ts";
import type { Cable } from "../../shared-model/model/cable.ts";
import { otherSide, type Side } from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";

/** Size of a cable and where it goes, seen from one side: "12/2 to B4". */
export function farSideName(installation: Installation, cable: Cable, side: Side): string {
  const far = cable.sides[otherSide(side)];
  const size = findCableItem(cable.item)?.sizeText ?? cable.item;
  return `${size} to ${"outside" in far ? far.outside : (installation.enclosures[far.enclosure]?.name ?? "")}`;
}
