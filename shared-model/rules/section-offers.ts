import type { Fix } from "../answers/finding.ts";
import { findDeviceType, getDeviceType } from "../catalog/device-types.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { type DeviceId, type EndKey, otherSide, parseEnd, type SpliceId, type TerminalName } from "../model/ids.ts";
import type { Project, StateName } from "../model/project.ts";
import { cableOfEnd, findEndFacts } from "../queries/end-facts.ts";
import { landedAt, membersOf } from "../queries/landings.ts";
import { roomKindsOf } from "../queries/outlets-of.ts";
import { findTerminal } from "../queries/terminals-of.ts";
import type { OutletStanding, Section } from "../solver/section.ts";
import { fixTogether, makeFresh } from "./fix-parts.ts";
import { isCure } from "./fix-trial.ts";
import { bring, titled } from "./line-load-fixes.ts";
import { MakeUpPlan } from "./make-up-plan.ts";
import { hotOf, lastCableStep, lineLoadDevices, neutralOf } from "./section-parts.ts";

/**
 * Ways to bring an outlet behind a ground-fault device, each of which is a proof by the same test that found it open:
 * its own receptacle replaced, face only or with what it feeds on from its LOAD; or the cable that feeds it brought to
 * the LOAD side of a device that it passes.
 */
export function protectionOffers(
  section: Section,
  project: Project,
  standing: OutletStanding,
  state: StateName,
): readonly Fix[] {
  return [...faceOffers(section, project, standing, state), ...loadOffers(section, standing, state)];
}

function faceOffers(
  section: Section,
  project: Project,
  { outlet: { device }, enclosure }: OutletStanding,
  state: StateName,
): readonly Fix[] {
  const type = faceFor(project, enclosure, device);
  if (type === undefined) return [];
  const { id } = makeFresh(enclosure)("d");
  const next: Replacing = { device, enclosure, id: id as DeviceId, type, state };
  const hots = landedOn(enclosure, device, "hot");
  const neutrals = landedOn(enclosure, device, "neutral");
  const title = getDeviceType(type).title;
  const offers: (Fix | undefined)[] = [];
  if (hots.length <= 2 && neutrals.length <= 2)
    offers.push(
      replaceFix(section, next, `Replace ${device.name} with ${title}, all on LINE: its face alone`, [
        ...landings(hots, "LINE_H"),
        ...landings(neutrals, "LINE_N"),
      ]),
    );
  const hotIn = endsFromSource(section, enclosure, "ungrounded", device, hots);
  const neutralIn = endsFromSource(section, enclosure, "grounded", device, neutrals);
  const hotOn = hots.filter((end) => end !== hotIn);
  const neutralOn = neutrals.filter((end) => end !== neutralIn);
  if (hotIn !== undefined && neutralIn !== undefined && hotOn.length > 0 && hotOn.length <= 2 && neutralOn.length <= 2)
    offers.push(
      replaceFix(section, next, `Replace ${device.name} with ${title}, what it feeds on LOAD`, [
        ...landings([hotIn], "LINE_H"),
        ...landings([neutralIn], "LINE_N"),
        ...landings(hotOn, "LOAD_H"),
        ...landings(neutralOn, "LOAD_N"),
      ]),
    );
  return offers.flatMap((fix) => fix ?? []);
}

/** The ground-fault receptacle of the same rating, weather-resistant where the old one was or the place is outdoors. */
function faceFor(project: Project, enclosure: Enclosure, device: Device): string | undefined {
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
  const id = `gfci-receptacle-${outdoors ? "wr-" : ""}${rating}`;
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
  readonly state: StateName;
}

type Landed = readonly [end: EndKey, terminal: string, hole: number];

const landings = (ends: readonly EndKey[], terminal: string): readonly Landed[] =>
  ends.map((end, index) => [end, terminal, index + 1]);

function replaceFix(
  section: Section,
  { device, enclosure, id, type, state }: Replacing,
  title: string,
  ends: readonly Landed[],
): Fix | undefined {
  const replace = { command: "replace-device", args: { state, device: device.id, id, type, name: device.name } };
  const land = ends.map(([end, terminal, hole]) => ({
    command: "land-end",
    args: { state, enclosure: enclosure.id, end, at: { kind: "terminal", device: id, terminal, hole } },
  }));
  if (
    new Set(ends.map(([end]) => parseEnd(end)).map((end) => (end?.of === "jumper" ? end.jumper : end))).size <
    ends.length
  )
    return undefined;
  const fix = fixTogether(title, [replace, ...land]);
  return isCure(section, fix, { old: device.id, id }) ? fix : undefined;
}

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

/** For each personnel device whose box its cable leaves unsensed: both conductors brought to LOAD. */
function loadOffers(section: Section, standing: OutletStanding, state: StateName): readonly Fix[] {
  return lineLoadDevices(section).flatMap((found) => {
    const { device, enclosure } = found;
    const test = standing.tests.find((one) => one.device === device.id);
    if (test?.personnelClass !== true || standing.outlet.device.id === device.id) return [];
    const hot = lastCableStep(section.wayFrom("ungrounded", hotOf(standing), device.id), "fromEnclosure", enclosure.id);
    const neutral = lastCableStep(
      section.wayFrom("grounded", neutralOf(standing), device.id),
      "fromEnclosure",
      enclosure.id,
    );
    if (hot === undefined || neutral?.cable !== hot.cable) return [];
    const plan = new MakeUpPlan(section.installation, enclosure, state);
    if (!bring(plan, enclosure, device, hot.from, "LOAD", "hot")) return [];
    if (!bring(plan, enclosure, device, neutral.from, "LOAD", "neutral")) return [];
    const cable = section.installation.cables[hot.cable]?.name ?? hot.cable;
    const fix = plan.fix((words) => titled(`Bring ${cable} from the LOAD side of ${device.name}`, words));
    return fix !== undefined && isCure(section, fix) ? [fix] : [];
  });
}

/**
 * A single-pole switch taken out of the neutral and put into the hot of the same cable: its two whites in a splice, the
 * hot of the load on the switch, fed from where that hot was.
 */
export function intoHotOffers(
  section: Section,
  enclosure: Enclosure,
  device: Device,
  state: StateName,
): readonly Fix[] {
  const { terminals, positions } = getDeviceType(device.type);
  const poles = terminals.filter(({ purpose }) => purpose === "hot" || purpose === "switched");
  const [feed, load] = poles;
  if (positions[0] !== "on" || poles.length !== 2 || feed === undefined || load === undefined) return [];
  const [one, ...moreOne] = landedAt(enclosure, device.id, feed.name);
  const [other, ...moreOther] = landedAt(enclosure, device.id, load.name);
  if (one === undefined || other === undefined || moreOne.length + moreOther.length > 0) return [];
  const isSupply = (end: EndKey): boolean => section.reach().isAlwaysGrounded({ end });
  if (isSupply(one.end) === isSupply(other.end)) return [];
  const ends = isSupply(one.end) ? ([one.end, other.end] as const) : ([other.end, one.end] as const);
  const fix = intoHot(section, enclosure, device, state, [feed.name, load.name], ends);
  return fix !== undefined && isCure(section, fix) ? [fix] : [];
}

function intoHot(
  section: Section,
  enclosure: Enclosure,
  device: Device,
  state: StateName,
  [feed, load]: readonly [TerminalName, TerminalName],
  [supply, toLoad]: readonly [EndKey, EndKey],
): Fix | undefined {
  const hot = partnerInSplice(section, enclosure, toLoad);
  if (hot === undefined) return undefined;
  const { end, splice } = hot;
  const at = (terminal: TerminalName) => ({ kind: "terminal", device: device.id, terminal, hole: 1 }) as const;
  const plan = new MakeUpPlan(section.installation, enclosure, state);
  const rest = membersOf(enclosure, splice).filter((member) => member !== end);
  const facts = findEndFacts(section.installation, enclosure, end);
  const [last, ...others] = rest;
  if (last === undefined || facts === undefined || findTerminal(device, feed) === undefined) return undefined;
  plan.splice([supply, toLoad]);
  plan.land(end, at(load));
  if (others.length === 0) plan.land(last, at(feed));
  else plan.jumper({ kind: "splice", splice }, at(feed), { awg: facts.awg, colour: "black" });
  return plan.fix((words) => titled(`Put ${device.name} into the hot of ${facts.owner} and splice the neutral`, words));
}

/** Another conductor of the same cable, live and in a splice. */
function partnerInSplice(
  section: Section,
  enclosure: Enclosure,
  neutral: EndKey,
): { readonly end: EndKey; readonly splice: SpliceId } | undefined {
  const cable = cableOfEnd(section.installation, neutral);
  const parsed = parseEnd(neutral);
  if (cable === undefined || parsed === undefined) return undefined;
  const found = (Object.keys(enclosure.places) as EndKey[]).sort().flatMap((end) => {
    const own = parseEnd(end);
    const at = enclosure.places[end]?.at;
    if (own?.of !== "cable" || own.cable !== cable.id || own.side === otherSide(parsed.side)) return [];
    if (end === neutral || at?.kind !== "splice" || !section.reach().isLive({ end })) return [];
    return { end, splice: at.splice };
  });
  return found.length === 1 ? found[0] : undefined;
}
