import type { Fix } from "../answers/finding.ts";
import { findDeviceType, getDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { type DeviceId, type EndKey, parseEnd } from "../model/ids.ts";
import type { Installation, Project, StateName } from "../model/project.ts";
import { landedAt } from "../queries/landings.ts";
import { roomKindsOf } from "../queries/outlets-of.ts";
import { nameOfReplacement } from "../queries/replacement-name.ts";
import type { OutletStanding, Section } from "../solver/section.ts";
import { arcFaultPlacesOf, hasArcFault, isOnListedCircuit } from "./arc-fault.ts";
import { getEdition } from "./editions/editions.ts";
import { fixTogether, makeFresh } from "./fix-parts.ts";
import { isCure } from "./fix-trial.ts";
import { withLabels } from "./no-ground-labels.ts";
import { outletsBehindAfter, sharedTripWords } from "./shared-trip.ts";

const wording = catalogue({
  gfci: "GFCI receptacle",
  gfci20: "GFCI receptacle, 20 A,",
  dual: "Dual-function receptacle",
  dual20: "Dual-function receptacle, 20 A,",
  wr: "Weather-resistant GFCI receptacle",
  wr20: "Weather-resistant GFCI receptacle, 20 A,",
  empty: (type: Part, device: Part, outlets: Part) => `${type} at ${device}, LOAD left empty: protects ${outlets}`,
  emptyOne: (type: Part, device: Part, outlet: Part) =>
    `${type} at ${device}, LOAD left empty: protects ${outlet} only`,
  onward: (type: Part, device: Part, outlets: Part) => `${type} at ${device}, downstream on LOAD: protects ${outlets}`,
  onwardOne: (type: Part, device: Part, outlet: Part) =>
    `${type} at ${device}, downstream on LOAD: protects ${outlet} only`,
});

/** Its own receptacle replaced by a ground-fault one: with LOAD left empty, or with what it feeds on from LOAD. */
export function faceOffers(
  section: Section,
  project: Project,
  installation: Installation,
  standing: OutletStanding,
  state: StateName,
): readonly Fix[] {
  const { outlet, enclosure } = standing;
  const { device } = outlet;
  const type = faceFor(project, enclosure, device, isArcFaultNeeded(section, project, standing));
  if (type === undefined) return [];
  const { id } = makeFresh(enclosure)("d");
  const names = section.enclosures.flatMap(({ devices }) => Object.values(devices).map((one) => one.name));
  const name = nameOfReplacement(device.name, new Set(names));
  const next: Replacing = { device, enclosure, id: id as DeviceId, type, name, state };
  const hots = landedOn(enclosure, device, "hot");
  const neutrals = landedOn(enclosure, device, "neutral");
  const offers: (Fix | undefined)[] = [];
  if (hots.length <= 2 && neutrals.length <= 2)
    offers.push(
      replaceFix(section, installation, next, "empty", [...landings(hots, "LINE_H"), ...landings(neutrals, "LINE_N")]),
    );
  const hotIn = endsFromSource(section, enclosure, "ungrounded", device, hots);
  const neutralIn = endsFromSource(section, enclosure, "grounded", device, neutrals);
  const hotOn = hots.filter((end) => end !== hotIn);
  const neutralOn = neutrals.filter((end) => end !== neutralIn);
  if (hotIn !== undefined && neutralIn !== undefined && hotOn.length > 0 && hotOn.length <= 2 && neutralOn.length <= 2)
    offers.push(
      replaceFix(section, installation, next, "onward", [
        ...landings([hotIn], "LINE_H"),
        ...landings([neutralIn], "LINE_N"),
        ...landings(hotOn, "LOAD_H"),
        ...landings(neutralOn, "LOAD_N"),
      ]),
    );
  return offers.flatMap((fix) => fix ?? []);
}

/** A receptacle that comes for another in a room of the arc-fault list must bring that protection, where nothing gives it yet. */
const isArcFaultNeeded = (section: Section, project: Project, standing: OutletStanding): boolean =>
  arcFaultPlacesOf(project, standing.enclosure, standing.outlet.device, getEdition(project.edition)).length > 0 &&
  isOnListedCircuit(standing, getEdition(project.edition)) &&
  !hasArcFault(section, standing);

/**
 * The ground-fault receptacle of the same rating, weather-resistant where the old one was or the place is outdoors, of the
 * dual-function type where arc-fault protection is called for too.
 */
function faceFor(project: Project, enclosure: Enclosure, device: Device, isArcFaultToo: boolean): string | undefined {
  const { family, outlets, terminals } = getDeviceType(device.type);
  const whole = device.hotTab !== "removed" && device.neutralTab !== "removed";
  if (family !== "receptacle" || outlets.length === 0 || !whole) return undefined;
  if (
    !isGroundAlike(
      enclosure,
      device,
      terminals.some(({ purpose }) => purpose === "ground"),
    )
  )
    return undefined;
  const outdoors = device.weatherResistant === true || roomKindsOf(project, enclosure, device).has("outdoor");
  const rating = device.ratingA === 20 ? 20 : device.ratingA === 15 ? 15 : undefined;
  if (rating === undefined) return undefined;
  if (isArcFaultToo && outdoors) return undefined;
  const id = isArcFaultToo ? `dual-function-receptacle-${rating}` : `gfci-receptacle-${outdoors ? "wr-" : ""}${rating}`;
  return findDeviceType(id) === undefined ? undefined : id;
}

/** Its ground screw finds what the old one had; a new screw without a pigtail, in a box with grounds, would be a fault. */
function isGroundAlike({ places }: Enclosure, device: Device, hasScrew: boolean): boolean {
  const grounds = Object.values(places).filter(
    ({ at }) => at.kind === "terminal" && at.device === device.id && at.terminal === "G",
  ).length;
  if (hasScrew && grounds === 1) return true;
  const hasBond = Object.values(places).some(({ at }) => at.kind === "bond");
  return grounds === 0 && !hasBond;
}

interface Replacing {
  readonly device: Device;
  readonly enclosure: Enclosure;
  readonly id: DeviceId;
  readonly type: string;
  readonly name: string;
  readonly state: StateName;
}

type Landed = readonly [end: EndKey, terminal: string, hole: number];

const landings = (ends: readonly EndKey[], terminal: string): readonly Landed[] =>
  ends.map((end, index) => [end, terminal, index + 1]);

function replaceFix(
  section: Section,
  installation: Installation,
  { device, enclosure, id, type, name, state }: Replacing,
  load: "empty" | "onward",
  ends: readonly Landed[],
): Fix | undefined {
  const replace = { command: "replace-device", args: { state, device: device.id, id, type, name } };
  const land = ends.map(([end, terminal, hole]) => ({
    command: "land-end",
    args: { state, enclosure: enclosure.id, end, at: { kind: "terminal", device: id, terminal, hole } },
  }));
  if (
    new Set(ends.map(([end]) => parseEnd(end)).map((end) => (end?.of === "jumper" ? end.jumper : end))).size <
    ends.length
  )
    return undefined;
  const calls = [replace, ...land];
  const replaced = { old: device.id, id };
  const untitled = fixTogether("", calls);
  if (!isCure(section, untitled, replaced)) return undefined;
  const behind = outletsBehindAfter(section, untitled, id, replaced);
  const names = behind.map(({ name: one }) => one).join(", ");
  const isAlone = behind.length < 2;
  const words = load === "empty" ? (isAlone ? "emptyOne" : "empty") : isAlone ? "onwardOne" : "onward";
  const title = wording[words](WORDS_OF[type] ?? getDeviceType(type).title, device.name, names);
  const fix = fixTogether(`${title}${sharedTripWords(installation, behind)}`, calls);
  return withLabels(section, installation, fix, behind, { device: id, state, replaced });
}

/** What the trade calls them; the rating is named where it is not the usual one. */
const WORDS_OF: Readonly<Record<string, string>> = {
  "gfci-receptacle-15": wording.gfci,
  "gfci-receptacle-20": wording.gfci20,
  "dual-function-receptacle-15": wording.dual,
  "dual-function-receptacle-20": wording.dual20,
  "gfci-receptacle-wr-15": wording.wr,
  "gfci-receptacle-wr-20": wording.wr20,
};

const landedOn = (enclosure: Enclosure, device: Device, purpose: "hot" | "neutral"): readonly EndKey[] =>
  getDeviceType(device.type)
    .terminals.filter((terminal) => terminal.purpose === purpose)
    .flatMap(({ name }) => landedAt(enclosure, device.id, name).map(({ end }) => end))
    .sort();

/** The end by which a source comes to a device. */
function endsFromSource(
  section: Section,
  enclosure: Enclosure,
  source: "ungrounded" | "grounded",
  device: Device,
  ends: readonly EndKey[],
): EndKey | undefined {
  const [terminal] = getDeviceType(device.type).terminals.filter(
    ({ purpose }) => purpose === (source === "ungrounded" ? "hot" : "neutral"),
  );
  if (terminal === undefined) return undefined;
  const way = section.wayFrom(source, { device: device.id, node: terminal.name });
  const step = way?.findLast((one) => one.kind !== "device");
  if (step === undefined) return undefined;
  const at = step.kind === "cable" ? step.toEnclosure : step.enclosure;
  return at === enclosure.id && ends.includes(step.to) ? step.to : undefined;
}
