import type { Fix } from "../answers/finding.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { type EndKey, otherSide, parseEnd, type SpliceId, type TerminalName } from "../model/ids.ts";
import type { Installation, StateName } from "../model/project.ts";
import { cableOfEnd, findEndFacts } from "../queries/end-facts.ts";
import { landedAt, membersOf } from "../queries/landings.ts";
import { findTerminal } from "../queries/terminals-of.ts";
import { sectionProof } from "../solver/circuit/section-proof.ts";
import type { OutletStanding, Section } from "../solver/section.ts";
import { faceOffers } from "./face-offers.ts";
import { isCure } from "./fix-trial.ts";
import { bring, titled } from "./line-load-fixes.ts";
import { MakeUpPlan } from "./make-up-plan.ts";
import { withLabels } from "./no-ground-labels.ts";
import type { ProjectContext } from "./rule.ts";
import { hotOf, lastCableStep, lineLoadDevices, neutralOf } from "./section-parts.ts";
import { outletsBehindAfter, protectedBy, sharedTripWords } from "./shared-trip.ts";

const wording = catalogue({
  intoHot: (device: Part, cable: Part) => `Put ${device} into the hot of ${cable} and splice the neutral`,
  bring: (cable: Part, device: Part) => `Bring ${cable} from the LOAD side of ${device}`,
});

/**
 * Ways to bring an outlet behind a ground-fault device, each of which is a proof by the same test that found it open:
 * its own receptacle replaced, face only or with what it feeds on from its LOAD; or the cable that feeds it brought to
 * the LOAD side of a device that it passes.
 */
export function protectionOffers(
  section: Section,
  { project, installation }: Pick<ProjectContext, "project" | "installation">,
  standing: OutletStanding,
  state: StateName,
): readonly Fix[] {
  return [
    ...faceOffers(section, project, installation, standing, state),
    ...loadOffers(section, installation, standing, state),
  ];
}

/** For each personnel device whose box its cable leaves unsensed: both conductors brought to LOAD. */
function loadOffers(
  section: Section,
  installation: Installation,
  standing: OutletStanding,
  state: StateName,
): readonly Fix[] {
  return lineLoadDevices(section).flatMap((found) => {
    const { device, enclosure } = found;
    const proof = sectionProof(section)
      .of(standing.outlet.key)
      ?.devices.find((one) => one.device === device.id);
    if (proof?.personnelClass !== true || standing.outlet.device.id === device.id) return [];
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
    const before = new Set(protectedBy([section], device.id).map(({ key }) => key));
    const untitled = plan.fix(() => "");
    if (untitled === undefined || !isCure(section, untitled)) return [];
    const behind = outletsBehindAfter(section, untitled, device.id);
    const gained = new Set(behind.filter(({ key }) => !before.has(key)).map(({ key }) => key));
    const shared = sharedTripWords(installation, behind, gained);
    const fix = plan.fix((words) => titled(`${wording.bring(cable, device.name)}${shared}`, words));
    return fix === undefined ? [] : [withLabels(section, installation, fix, behind, { device: device.id, state })];
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
  return plan.fix((words) => titled(wording.intoHot(device.name, facts.owner), words));
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
