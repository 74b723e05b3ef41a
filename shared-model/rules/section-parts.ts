import type { SensingType } from "../catalog/device-type.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Cable } from "../model/cable.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { EvidenceMark } from "../model/evidence.ts";
import { type ConductorKey, cableEnd, type EnclosureId, type EndKey, type TerminalName } from "../model/ids.ts";
import { nameOfEnd } from "../queries/end-facts.ts";
import { findTerminal } from "../queries/terminals-of.ts";
import type { OutletStanding, PathStep, Reach, Section, Spot } from "../solver/section.ts";
import type { SectionContext, SharedQuestion } from "./rule.ts";
import { fillIn, listed, marksOn, subject } from "./rule-parts.ts";

const wording = catalogue({
  jumper: (name: Part) => `jumper ${name}`,
  otherEnd: (cable: Part) => `what is at the other end of ${cable}`,
  drawIt: (cable: Part) => `Draw it: the details of ${cable} have “draw it to”.`,
});

/** Rules that say of an outlet that nothing protects it: consequences of whatever spoils its device. */
export const NOT_PROTECTED: readonly string[] = [
  "outlet-not-protected",
  "wish-not-protected",
  "replace-needs-gfci",
  "grounding-type-unprotected",
];

/** A ground-fault device that opens both conductors between its LINE and LOAD terminals, and what its open state shows. */
export interface LineLoadDevice {
  readonly device: Device;
  readonly enclosure: Enclosure;
  readonly lineHot: Spot;
  readonly loadHot: Spot;
  /** Sources reach these terminals with its own contacts open. */
  readonly lineLive: boolean;
  readonly lineGrounded: boolean;
  readonly loadLive: boolean;
  readonly loadGrounded: boolean;
  /** Everything with its own contacts open. */
  readonly open: Reach;
}

/** Devices of a section with LINE and LOAD terminals in a box; breakers are not among them. */
export function lineLoadDevices(section: Section): readonly LineLoadDevice[] {
  return section.sensingDevices().flatMap(({ device, enclosure }) => {
    const { sensing } = getDeviceType(device.type);
    if (enclosure.kind === "panel" || sensing === undefined) return [];
    return standingOf(section, device, enclosure, sensing) ?? [];
  });
}

function standingOf(
  section: Section,
  device: Device,
  enclosure: Enclosure,
  { line, load }: SensingType,
): LineLoadDevice | undefined {
  const [lineHotNode] = line.hot;
  const [loadHotNode] = load.hot;
  if (lineHotNode === undefined || loadHotNode === undefined) return undefined;
  if (line.neutral === undefined || load.neutral === undefined) return undefined;
  const open = section.contactsOpen(device.id);
  const lineHot: Spot = { device: device.id, node: lineHotNode };
  const loadHot: Spot = { device: device.id, node: loadHotNode };
  return {
    device,
    enclosure,
    lineHot,
    loadHot,
    lineLive: open.isLive(lineHot),
    lineGrounded: open.isGrounded({ device: device.id, node: line.neutral }),
    loadLive: open.isLive(loadHot),
    loadGrounded: open.isGrounded({ device: device.id, node: load.neutral }),
    open,
  };
}

export const hotOf = ({ outlet }: OutletStanding): Spot => ({ device: outlet.device.id, node: outlet.hot });
export const neutralOf = ({ outlet }: OutletStanding): Spot => ({ device: outlet.device.id, node: outlet.neutral });

/** The breakers that feed an outlet in some switch position. */
export const breakersFeeding = (section: Section, { outlet }: OutletStanding): ReturnType<Section["breakers"]> =>
  section.breakers().filter(({ device }) => section.circuitOf(device.id).outlets.includes(outlet.key));

/** A 240 V appliance has two hots and no neutral. */
export function needsNeutral({ outlet }: OutletStanding): boolean {
  const terminal = findTerminal(outlet.device, outlet.neutral as TerminalName);
  return terminal === undefined || terminal.purpose !== "hot";
}

/** Its hot is on the neutral and its neutral on a hot. Where the two meet by metal it is shorted, which is another fault. */
export function isPolaritySwapped(section: Section, standing: OutletStanding): boolean {
  const reach = section.reach();
  const hot = hotOf(standing);
  const neutral = neutralOf(standing);
  if (!reach.isGrounded(hot) || !reach.isLive(neutral)) return false;
  return !reach.isAlwaysLive(hot) && !reach.isAlwaysGrounded(neutral) && !reach.areJoined(hot, neutral);
}

/** Neither pole is fed on LOAD alone. A device that is has a fault of its own, and what its LOAD says means nothing. */
export const isFedRightWay = ({ lineLive, lineGrounded, loadLive, loadGrounded }: LineLoadDevice): boolean =>
  (lineLive || !loadLive) && (lineGrounded || !loadGrounded);

/**
 * The pole that is fed on LOAD alone while the other is not. Nothing is said of a device that no hot reaches, nor where a pole is fed on both sides: that is another fault.
 */
export function swappedPole({
  lineLive,
  lineGrounded,
  loadLive,
  loadGrounded,
}: LineLoadDevice): "hot" | "neutral" | undefined {
  if ((lineLive && loadLive) || (lineGrounded && loadGrounded)) return undefined;
  if (loadLive && !loadGrounded) return "hot";
  return loadGrounded && lineLive ? "neutral" : undefined;
}

/** Both poles are fed on LOAD alone. */
export const isSwapped = ({ lineLive, lineGrounded, loadLive, loadGrounded }: LineLoadDevice): boolean =>
  loadLive && loadGrounded && !lineLive && !lineGrounded;

/** The outlets that are what a device protects or should protect: its own face and what loses its hot with its contacts. */
export const outletsBehind = (section: Section, { device, open }: LineLoadDevice): readonly OutletStanding[] =>
  section
    .outlets()
    .filter((standing) => standing.outlet.device.id === device.id || (standing.live && !open.isLive(hotOf(standing))));

/** The cable step by which a way last enters or leaves an enclosure. */
export function lastCableStep(
  way: readonly PathStep[] | undefined,
  side: "fromEnclosure" | "toEnclosure",
  enclosure: EnclosureId,
): Extract<PathStep, { readonly kind: "cable" }> | undefined {
  return way?.findLast(
    (step): step is Extract<PathStep, { readonly kind: "cable" }> => step.kind === "cable" && step[side] === enclosure,
  );
}

/** Marks on the places of the ends that a way runs over: a finding about it rests on who says that they are there. */
export function marksOnWay(section: Section, way: readonly PathStep[] | undefined): readonly EvidenceMark[] {
  const { enclosures } = section.installation;
  const at = (enclosure: EnclosureId, end: EndKey): readonly EvidenceMark[] => {
    const place = enclosures[enclosure]?.places[end];
    return place === undefined ? [] : marksOn(place, "at");
  };
  return (way ?? []).flatMap((step) => {
    if (step.kind === "device") return [];
    if (step.kind === "jumper") return [...at(step.enclosure, step.from), ...at(step.enclosure, step.to)];
    return [...at(step.fromEnclosure, step.from), ...at(step.toEnclosure, step.to)];
  });
}

/** What a person calls a piece of a way: "C2 WH", "jumper c", "S1". */
export function nameOfStep(section: Section, step: PathStep): string {
  const { enclosures, cables } = section.installation;
  if (step.kind === "cable") {
    const enclosure = enclosures[step.fromEnclosure];
    return enclosure === undefined
      ? (cables[step.cable]?.name ?? step.cable)
      : nameOfEnd(section.installation, enclosure, step.from);
  }
  const enclosure = enclosures[step.enclosure];
  if (step.kind === "jumper") return wording.jumper(enclosure?.jumpers[step.jumper]?.name ?? step.jumper);
  return enclosure?.devices[step.device]?.name ?? step.device;
}

/** A cable by which a spot is joined to country that is not drawn; undefined when all of it is drawn. */
export function cableLeadingOutside(section: Section, spot: Spot): Cable | undefined {
  const reach = section.reach();
  return section.cables.find((cable) => {
    const outside = "outside" in cable.sides.a ? "a" : "outside" in cable.sides.b ? "b" : undefined;
    if (outside === undefined) return false;
    const inside = outside === "a" ? "b" : "a";
    if ("outside" in cable.sides[inside]) return false;
    return Object.keys(cable.conductors).some((key) =>
      reach.areJoined(spot, { end: cableEnd(cable.id, key as ConductorKey, inside) }),
    );
  });
}

/** Names gathered under the cable that leads out of the drawing, so that one unknown far end is one question. */
export class LeadingOutside {
  private readonly byCable = new Map<Cable, string[]>();

  add(cable: Cable, name: string): void {
    const names = this.byCable.get(cable);
    if (names === undefined) this.byCable.set(cable, [name]);
    else names.push(name);
  }

  /**
   * Asks one question a cable; `message` has {cable} and {outlets} to fill. With `shared`, what keeps the rule from telling
   * may be a fact that others wait for too.
   */
  ask(
    message: string,
    cannotTell: SectionContext["cannotTell"],
    shared?: (outlets: string) => SharedQuestion | undefined,
  ): void {
    for (const [cable, names] of this.byCable) {
      const question = shared?.(listed(names));
      cannotTell({
        subjects: [subject("cable", cable)],
        message: fillIn(message, { cable: cable.name, outlets: listed(names) }),
        missing: wording.otherEnd(cable.name),
        toDo: wording.drawIt(cable.name),
        ...(question !== undefined && { shared: question }),
      });
    }
  }
}
