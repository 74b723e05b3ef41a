import type { Fix } from "../answers/finding.ts";
import { findDeviceType, getDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { parseEnd, type TerminalName } from "../model/ids.ts";
import type { Project, StateName } from "../model/project.ts";
import type { RoomKind } from "../model/room.ts";
import { landedAt } from "../queries/landings.ts";
import { roomKindsOf } from "../queries/outlets-of.ts";
import { nameOfReplacement } from "../queries/replacement-name.ts";
import { sectionProof } from "../solver/circuit/section-proof.ts";
import type { OutletStanding, Section } from "../solver/section.ts";
import type { EditionData } from "./editions/edition-data.ts";
import { fixTogether, makeFresh } from "./fix-parts.ts";
import { ungroundedReceptacles } from "./no-ground.ts";
import { replaceOffer } from "./replace-offers.ts";
import { breakersFeeding, hotOf, needsNeutral } from "./section-parts.ts";

const wording = catalogue({
  breakerIfListed: (panel: Part) => ` An arc-fault breaker does it too, if one is listed for ${panel}.`,
  breakerListed: (panel: Part) => ` An arc-fault breaker that is listed for ${panel} does it too.`,
  noBreakerListed: (panel: Part) => ` No arc-fault breaker is listed for ${panel}.`,
  dualFunction: "a dual-function receptacle",
  arcFault: "an arc-fault receptacle",
  noGroundComes:
    " No ground comes to it: a plain arc-fault receptacle would have a ground slot with neither a ground nor ground-fault protection.",
  inPlaceOf: (type: Part, device: Part) => `${type} in place of ${device}, with its neutral on it`,
});

/** A breaker says what it does by its function, which a person may have changed. */
export function detectsArcs(device: Device): boolean {
  const { family, sensing } = getDeviceType(device.type);
  if (family === "breaker" && device.function !== undefined)
    return device.function === "afci" || device.function === "dual";
  return sensing?.arcFault === true;
}

/** A breaker that detects arcs feeds it, or a receptacle that does stands before it or is it. */
export function hasArcFault(section: Section, { outlet, live }: OutletStanding): boolean {
  if (detectsArcs(outlet.device)) return true;
  const breakers = section.breakers().filter(({ device }) => detectsArcs(device));
  if (breakers.some(({ device }) => section.circuitOf(device.id).outlets.includes(outlet.key))) return true;
  const hot = { device: outlet.device.id, node: outlet.hot };
  return section
    .sensingDevices()
    .some(
      ({ device, enclosure }) =>
        enclosure.kind === "box" && live && detectsArcs(device) && !section.contactsOpen(device.id).isLive(hot),
    );
}

/** Kinds of place of a device that are on the arc-fault list; none where the edition has no list. */
export function arcFaultPlacesOf(
  project: Project,
  enclosure: Enclosure,
  device: Device,
  { values }: EditionData,
): readonly RoomKind[] {
  const kinds = roomKindsOf(project, enclosure, device);
  return (values.arcFaultPlaces?.value ?? []).filter((place) => kinds.has(place));
}

/** Outlets of 240 V and receptacles of more amperes are not on the list; a breaker that is too large makes no other circuit. */
export function isOnListedCircuit(standing: OutletStanding, { values }: EditionData): boolean {
  const { device, receptacle } = standing.outlet;
  const isGreater = receptacle && device.ratingA !== undefined && device.ratingA > (values.arcFaultToA?.value ?? 0);
  return needsNeutral(standing) && !isGreater;
}

/** Where the hot of an outlet comes from nothing that is drawn. */
export const isFed = (section: Section, standing: OutletStanding): boolean => section.reach().isLive(hotOf(standing));

const ARC_BREAKERS = ["breaker-afci-1", "breaker-dual-1"];

/** Whether the marking of the panel that feeds an outlet lists a breaker that detects arcs, as a sentence about it. */
export function breakerWords(section: Section, standing: OutletStanding): string {
  const [feeding] = breakersFeeding(section, standing);
  if (feeding?.panel.kind !== "panel") return "";
  const { name, listedBreakers } = feeding.panel;
  if (listedBreakers === undefined) return wording.breakerIfListed(name);
  return listedBreakers.some((type) => findDeviceType(type)?.sensing?.arcFault === true)
    ? wording.breakerListed(name)
    : wording.noBreakerListed(name);
}

/**
 * Words for what goes to the place of a receptacle, and the type: both kinds of protection where the old one gave one, and
 * where no ground ever came, since all of these have a ground slot; `why` says so as a sentence.
 */
export function arcFaultFace(section: Section, standing: OutletStanding, isGroundFaultNeeded: boolean) {
  const { device } = standing.outlet;
  const asked = isGroundFaultNeeded || getDeviceType(device.type).sensing?.class === "personnel";
  const both = asked || lacksGround(section, standing);
  const kind = both ? "dual-function-receptacle" : "afci-receptacle";
  const words = both ? wording.dualFunction : wording.arcFault;
  const why = both && !asked ? wording.noGroundComes : "";
  return { type: `${kind}-${device.ratingA ?? 15}`, words, why };
}

/** No ground ever came to its box, and no ground-fault device stands in for it. */
const lacksGround = (section: Section, { outlet }: OutletStanding): boolean =>
  (sectionProof(section).of(outlet.key)?.protectedBy ?? []).length === 0 &&
  ungroundedReceptacles(section).some(({ device, neverHad }) => neverHad && device.id === outlet.device.id);

/** A receptacle that detects arcs in its place, and a breaker that does where the panel's marking lists one. */
export function arcFaultOffers(
  section: Section,
  standing: OutletStanding,
  type: string,
  state: StateName,
): readonly Fix[] {
  const { enclosure, outlet } = standing;
  const offers = [replaceOffer(section, enclosure, outlet.device, type, state), breakerOffer(section, standing, state)];
  return offers.flatMap((offer) => offer ?? []);
}

/** The circuit's neutral goes to the breaker, whose own tail goes to the bar; only where one cable makes the circuit. */
function breakerOffer(section: Section, standing: OutletStanding, state: StateName): Fix | undefined {
  const [feeding, ...others] = breakersFeeding(section, standing);
  if (feeding?.panel.kind !== "panel" || others.length > 0) return undefined;
  const { device, panel } = feeding;
  const type = ARC_BREAKERS.find((one) => panel.listedBreakers?.includes(one));
  const [landed, ...more] = landedAt(panel, device.id, "OUT" as TerminalName);
  const cable = landed === undefined ? undefined : parseEnd(landed.end);
  if (type === undefined || cable?.of !== "cable" || more.length > 0) return undefined;
  const neutrals = section.circuitOf(device.id).neutralEnds.filter((end) => {
    const parsed = parseEnd(end);
    return parsed?.of === "cable" && parsed.cable === cable.cable && end in panel.places;
  });
  const [neutral, ...rest] = neutrals;
  if (neutral === undefined || rest.length > 0) return undefined;
  const { id } = makeFresh(panel)("d");
  const name = nameOfReplacement(device.name, new Set(Object.values(panel.devices).map((one) => one.name)));
  const at = { kind: "terminal", device: id, terminal: "LOAD_N", hole: 1 };
  return fixTogether(wording.inPlaceOf(getDeviceType(type).title, device.name), [
    { command: "replace-device", args: { state, device: device.id, id, type, name } },
    { command: "land-end", args: { state, enclosure: panel.id, end: neutral, at } },
  ]);
}
