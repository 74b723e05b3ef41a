import type { SectionPointer } from "../answers/finding.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import type { Project } from "../model/project.ts";
import type { RoomKind } from "../model/room.ts";
import { roomKindsOf } from "../queries/outlets-of.ts";
import type { OutletStanding } from "../solver/section.ts";
import type { EditionData, Sourced, ValueName } from "./editions/edition-data.ts";

/** Whether an edition's table asks for ground-fault protection of an outlet, and by which of its places. */
export type Requirement =
  | { readonly required: true; readonly places: readonly RoomKind[]; readonly section: SectionPointer }
  | { readonly required: false }
  /** Its box is in no room and the device names no zone, so the table cannot be read. */
  | { readonly required: "room-unknown" };

/** The edition values that it reads: rules that ask it name them as their own. */
export const REQUIREMENT_VALUES: readonly ValueName[] = [
  "protectedPlaces",
  "placesAtOrBelowGrade",
  "protectedUpToA",
  "protectedLightingPlaces",
  "protectedHardWiredPlaces",
];

/**
 * Reads the table of required protection for one outlet. A place that counts only at or below grade counts unless its
 * room is recorded as above grade. An outlet in one listed place is required whatever its other places are.
 */
export function requirementOf(
  project: Project,
  { outlet, enclosure }: Pick<OutletStanding, "outlet" | "enclosure">,
  edition: EditionData,
): Requirement {
  const table = tableFor(outlet, edition);
  if (table === undefined) return { required: false };
  const kinds = roomKindsOf(project, enclosure, outlet.device);
  const room = enclosure.roomId === undefined ? undefined : project.rooms[enclosure.roomId];
  const above = room?.grade === "above" ? (edition.values.placesAtOrBelowGrade?.value ?? []) : [];
  const places = table.value.filter((place) => kinds.has(place) && !above.includes(place));
  if (places.length > 0) {
    return { required: true, places, section: pointerOf(table, edition) };
  }
  return kinds.size === 0 ? { required: "room-unknown" } : { required: false };
}

/** No number of an edition that is not verified is asserted: it points at the text that stands in for it. */
const pointerOf = ({ section, confidence }: Sourced<unknown>, { verified, textOf }: EditionData): SectionPointer =>
  verified ? { section, confidence } : { section: `${section} (${textOf})`, confidence: "doubtful" };

function tableFor(outlet: OutletStanding["outlet"], edition: EditionData): Sourced<readonly RoomKind[]> | undefined {
  const { values } = edition;
  if (outlet.receptacle) {
    const limit = values.protectedUpToA?.value;
    const rating = outlet.device.ratingA;
    return limit !== undefined && rating !== undefined && rating > limit ? undefined : values.protectedPlaces;
  }
  const { family } = getDeviceType(outlet.device.type);
  if (family === "luminaire") return values.protectedLightingPlaces;
  return family === "appliance" ? values.protectedHardWiredPlaces : undefined;
}
