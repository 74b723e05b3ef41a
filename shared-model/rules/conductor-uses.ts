import type { Role } from "../answers/circuit.ts";
import type { Subject } from "../answers/finding.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import type { Cable } from "../model/cable.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { type ConductorKey, cableEnd, type EndKey, type JumperId, jumperEnd } from "../model/ids.ts";
import { findTerminal } from "../queries/terminals-of.ts";
import type { Section } from "../solver/section.ts";
import { keptWithWiring, modelOf } from "../solver/sections.ts";
import type { Colour } from "../units/colour.ts";
import type { WireSize } from "../units/wire-size.ts";
import { keysOf } from "./ground-leads.ts";
import { subject } from "./rule-parts.ts";

/** An end with the enclosure that it lies in. */
export interface PlacedEnd {
  readonly end: EndKey;
  readonly enclosure: Enclosure;
}

/** A conductor of a cable, or a jumper, and what it is used for. */
export interface ConductorUse {
  readonly subject: Subject;
  readonly cable?: Cable;
  readonly key?: ConductorKey;
  readonly colour: Colour;
  readonly awg: WireSize;
  /** Made to be an equipment ground. */
  readonly grounding: boolean;
  /** Role of its net: that of an end that is neither capped nor loose, where it has one. */
  readonly role: Role;
  /** Ends that are drawn, in boxes and panels. */
  readonly ends: readonly PlacedEnd[];
  readonly leadsTo: LeadsTo;
}

/** What metal joins a conductor to in every switch position, in boxes. */
interface LeadsTo {
  /** Terminals and slots made for the neutral. */
  readonly neutral: boolean;
  /** Ground screws and slots, the metal of enclosures, ground bars. */
  readonly ground: boolean;
  /** A terminal of a device that is made for neither. */
  readonly hot: boolean;
  /** The screw of a switch for what it switches, or the common of one of several. */
  readonly fromSwitch: boolean;
  /** The screw of a switch for its feed. */
  readonly toSwitch: boolean;
}

/** Every conductor of the cables of a section, and the jumpers in its boxes. Kept as long as the wiring is the same. */
export const conductorUses: (section: Section) => readonly ConductorUse[] = keptWithWiring(findUses);

function findUses(section: Section): readonly ConductorUse[] {
  const leads = leadsByNet(section);
  const model = modelOf(section);
  const { net } = model.sourceReach();
  const uses: ConductorUse[] = [];
  const add = (use: Omit<ConductorUse, "role" | "leadsTo">): void => {
    const first = endThatTells(use.ends);
    const node = first === undefined ? undefined : model.graph.ends.get(first.end);
    if (node === undefined) return;
    uses.push({ ...use, role: model.roles.of(node), leadsTo: leads.get(net[node] as number) ?? NOWHERE });
  };
  const { enclosures } = section.installation;
  for (const cable of section.cables) {
    const [a, b] = [cable.sides.a, cable.sides.b].map((side) =>
      "enclosure" in side ? enclosures[side.enclosure] : undefined,
    );
    for (const key of keysOf(cable)) {
      const conductor = cable.conductors[key];
      if (conductor === undefined) continue;
      const ends: PlacedEnd[] = [];
      addPlaced(ends, a, cableEnd(cable.id, key, "a"));
      addPlaced(ends, b, cableEnd(cable.id, key, "b"));
      const { colour, awg, grounding } = conductor;
      add({ subject: subject("cable", cable), cable, key, colour, awg, grounding, ends });
    }
  }
  for (const enclosure of section.enclosures) {
    for (const id of (Object.keys(enclosure.jumpers) as JumperId[]).sort()) {
      const jumper = enclosure.jumpers[id];
      if (jumper === undefined) continue;
      const ends = (["a", "b"] as const).map((side) => ({ end: jumperEnd(id, side), enclosure }));
      const { colour, awg } = jumper;
      const grounding = colour === "bare" || colour === "green";
      add({ subject: subject("jumper", jumper), colour, awg, grounding, ends });
    }
  }
  return uses;
}

function addPlaced(ends: PlacedEnd[], enclosure: Enclosure | undefined, end: EndKey): void {
  if (enclosure?.places[end] !== undefined) ends.push({ end, enclosure });
}

/** In a panel it may lie on a bar, which says nothing of what else it leads to. */
function endThatTells(ends: readonly PlacedEnd[]): PlacedEnd | undefined {
  const landed = ends.filter(isLanded);
  return landed.find(({ enclosure }) => enclosure.kind === "box") ?? landed[0] ?? ends[0];
}

export const isLanded = ({ end, enclosure }: PlacedEnd): boolean => {
  const kind = enclosure.places[end]?.at.kind;
  return kind !== undefined && kind !== "capped" && kind !== "loose";
};

const NOWHERE: LeadsTo = { neutral: false, ground: false, hot: false, fromSwitch: false, toSwitch: false };

function leadsByNet(section: Section): ReadonlyMap<number, LeadsTo> {
  const { graph } = modelOf(section);
  const { net } = modelOf(section).sourceReach();
  const found = new Map<number, { -readonly [K in keyof LeadsTo]: boolean }>();
  graph.nodes.forEach(({ point, enclosure }, node) => {
    const at = net[node] as number;
    const lead = found.get(at) ?? { ...NOWHERE };
    if (point.kind === "bond" || (point.kind === "panel" && point.node === "@ground")) lead.ground = true;
    else if (point.kind === "device" && enclosure.kind === "box") {
      const { terminals, outlets, positions } = getDeviceType(point.device.type);
      const purpose = terminals.find(({ name }) => name === point.node)?.purpose;
      if (purpose === "neutral" || outlets.some(({ neutral }) => neutral === point.node && purpose === undefined))
        lead.neutral = true;
      else if (purpose === "ground" || outlets.some(({ ground }) => ground === point.node)) lead.ground = true;
      else if (purpose !== undefined && purpose !== "signal") lead.hot = true;
      if (purpose === "switched" || purpose === "common") lead.fromSwitch = true;
      if (purpose === "hot" && positions.length > 0) lead.toSwitch = true;
    } else return;
    found.set(at, lead);
  });
  return found;
}

/** A ground by make that carries current: it leads to a terminal of its role, and metal joins it to no ground. */
export function isBareCarrying({ grounding, role, leadsTo, ends }: ConductorUse): boolean {
  if (!grounding || leadsTo.ground || !ends.some(isLanded)) return false;
  return (isLiveRole(role) && leadsTo.hot) || (role === "grounded" && leadsTo.neutral);
}

/**
 * On a terminal that is not for a ground, while no source reaches it: colours alone tell that it is wrong there. Where the
 * grounds are in the joint too, only what lies on the terminal itself is meant.
 */
export function isBareOnCircuitUnfed(section: Section, { grounding, leadsTo, ends }: ConductorUse): boolean {
  if (!grounding || !(leadsTo.hot || leadsTo.neutral)) return false;
  const landed = ends.filter(isLanded);
  const reach = section.reach();
  if (landed.some(({ end }) => reach.isLive({ end }) || reach.isGrounded({ end }) || reach.isOnGround({ end })))
    return false;
  return leadsTo.ground ? landed.some(isOnCircuitTerminal) : landed.length > 0;
}

function isOnCircuitTerminal({ end, enclosure }: PlacedEnd): boolean {
  const at = enclosure.places[end]?.at;
  const device = at?.kind === "terminal" ? enclosure.devices[at.device] : undefined;
  const purpose = at?.kind === "terminal" && device !== undefined && findTerminal(device, at.terminal)?.purpose;
  return enclosure.kind === "box" && purpose !== "ground" && purpose !== undefined && purpose !== false;
}

export const isLiveRole = (role: Role): boolean => role === "ungrounded" || role === "switched" || role === "traveller";

/** White or grey by make, used as a hot alone. Where metal joins it to a neutral terminal it is on the wrong conductor. */
export const isWhiteHot = ({ colour, grounding, role, leadsTo }: ConductorUse): boolean =>
  isWhite(colour) && !grounding && isLiveRole(role) && !leadsTo.neutral;

/** Colours that are for the neutral. NFPA 70 200.6(A), from memory. */
export const isWhite = (colour: Colour): boolean => colour === "white" || colour === "grey";

/** What a person sees at an end: the mark, where there is one. */
export const shownColour = ({ colour }: ConductorUse, { end, enclosure }: PlacedEnd): Colour =>
  enclosure.places[end]?.markedAs ?? colour;
