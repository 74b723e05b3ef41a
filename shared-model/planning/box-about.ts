import type { CableHereAnswer, DeviceHereAnswer } from "../answers/make-up.ts";
import type { MakeUpIntent } from "../answers/make-up-intent.ts";
import { findDeviceType, getDeviceType } from "../catalog/device-types.ts";
import { COLOUR_WORDS } from "../catalog/wire-words.ts";
import type { Device } from "../model/device.ts";
import type { Box } from "../model/enclosure.ts";
import type { CableId, ConductorKey } from "../model/ids.ts";
import type { Project, StateName } from "../model/project.ts";
import { cablesInto } from "../queries/cables-into.ts";
import { inOrder } from "../queries/in-order.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { nameOfHalf } from "../queries/outlets-of.ts";
import { getEdition } from "../rules/editions/editions.ts";
import { requirementOf } from "../rules/required-protection.ts";
import { PRIORITY_WORDS, prioritiesAt } from "../rules/shared-trip.ts";
import { sectionProof } from "../solver/circuit/section-proof.ts";
import type { Section } from "../solver/section.ts";
import { sectionOf } from "../solver/sections.ts";
import { beyondCable } from "./beyond-cable.ts";
import { guardPorts, switchPorts } from "./device-ports.ts";
import { typesFor } from "./fit-types.ts";
import { halfPorts } from "./half-ports.ts";
import { hotKeysOf } from "./joint-group.ts";
import { SIDE_WORDS } from "./side-words.ts";
import { type Here, usualIntent } from "./usual-intent.ts";

/** What the drawing knows of a box before anybody says what it is to do. */
export interface BoxAbout {
  readonly cables: readonly CableHereAnswer[];
  readonly devices: readonly DeviceHereAnswer[];
  /** What it does now, as far as can be told, and what is stored of what it is meant to do. */
  readonly intent: MakeUpIntent;
  /** The cable taken for the supply although nothing drawn or said tells so. */
  readonly supplyGuess?: CableId;
}

/** Reads a box: its cables with what they lead to, its devices, and the make-up that follows from both. */
export function aboutBox(project: Project, state: StateName, box: Box): BoxAbout {
  const installation = getInstallation(project, state);
  const section = sectionOf(installation, box.id);
  if (section === undefined) throw new Error("A box is in a section.");
  const here = cablesInto(installation.cables, box.id).map((one) => ({
    ...one,
    beyond: beyondCable(installation, one),
  }));
  const told = supplyOf(section, box, here);
  const supply = told ?? here[0];
  const guard = inOrder(box.devices).find((device) => guardPorts(device) !== undefined);
  const cables = here.map((one) => cableHere(project, section, box, one, supply, guard));
  const devices = inOrder(box.devices).map((device) => deviceHere(project, box, device));
  return {
    cables,
    devices,
    intent: usualIntent({
      box,
      here,
      supply,
      guard,
      protects: new Map(cables.map(({ id, protect }) => [id, protect])),
    }),
    ...(told === undefined && supply !== undefined && here.length > 1 && { supplyGuess: supply.cable.id }),
  };
}

/** The cable that feeds the box: as somebody said, as the wiring shows, or as the way to a panel tells; undefined where nothing tells. */
function supplyOf(section: Section, box: Box, here: readonly Here[]): Here | undefined {
  const said = section.installation.intent.boxes[box.id]?.supply;
  const bySaid = here.find(({ cable }) => cable.id === said);
  if (bySaid !== undefined) return bySaid;
  for (const { outlet, live } of section.outlets()) {
    const way = live ? section.wayFrom("ungrounded", { device: outlet.device.id, node: outlet.hot }) : undefined;
    const step = way?.find((one) => one.kind === "cable" && one.toEnclosure === box.id);
    const found = step?.kind === "cable" ? here.find(({ cable }) => cable.id === step.cable) : undefined;
    if (found !== undefined) return found;
  }
  return here.find(({ beyond }) => beyond.panel !== undefined);
}

function cableHere(
  project: Project,
  section: Section,
  box: Box,
  { cable, beyond }: Here,
  supply: Here | undefined,
  guard: Device | undefined,
): CableHereAnswer {
  const { installation } = section;
  const proof = sectionProof(section);
  const edition = getEdition(project.edition);
  const boxes = new Set(beyond.boxes.map(({ id }) => id));
  const isSupply = cable.id === supply?.cable.id;
  const order = new Map(beyond.boxes.map(({ id }, index) => [id, index]));
  const outlets = isSupply
    ? []
    : section
        .outlets()
        .filter(({ enclosure }) => boxes.has(enclosure.id))
        .sort((a, b) => (order.get(a.enclosure.id) ?? 0) - (order.get(b.enclosure.id) ?? 0));
  const isGuarded =
    guard !== undefined && outlets.some(({ outlet }) => proof.of(outlet.key)?.protectedBy.includes(guard.id));
  const wanting = outlets.flatMap((standing) => {
    const { key, name } = standing.outlet;
    if ((proof.of(key)?.protectedBy.length ?? 0) > 0) return [];
    const wish = installation.intent.outlets[key]?.wish;
    if (wish === "decided-not") return [];
    const need = requirementOf(project, standing, edition);
    if (need.required === true) return [SIDE_WORDS.by(name, need.section.section)];
    return wish === "protect" ? [SIDE_WORDS.by(name, SIDE_WORDS.wish)] : [];
  });
  const said = installation.intent.boxes[box.id]?.protect?.[cable.id];
  const priority = outlets.flatMap(({ outlet }) =>
    prioritiesAt(installation, outlet.key).map((one) => SIDE_WORDS.priority(PRIORITY_WORDS[one], outlet.name)),
  )[0];
  const [protect, why] = ((): readonly [boolean, string] => {
    if (isSupply) return [false, SIDE_WORDS.supply];
    if (said !== undefined) return [said, SIDE_WORDS.asDecided];
    if (isGuarded) return [true, SIDE_WORDS.behindNow(guard.name)];
    if (wanting.length === 0) return [false, outlets.length === 0 ? SIDE_WORDS.unknownBeyond : SIDE_WORDS.noWish];
    if (priority !== undefined) return [false, SIDE_WORDS.goesOff(priority)];
    return [true, SIDE_WORDS.feeds(wanting.join(", "))];
  })();
  return {
    id: cable.id,
    name: cable.name,
    leadsTo: beyond.leadsTo,
    feeds: isSupply ? [] : outlets.map(({ outlet }) => outlet.name),
    hots: (hotKeysOf(cable) as readonly ConductorKey[]).map((id) => {
      const colour = cable.conductors[id]?.colour;
      return { id, name: colour === undefined ? id : COLOUR_WORDS[colour] };
    }),
    protect,
    why,
    wanting,
  };
}

function deviceHere(project: Project, box: Box, device: Device): DeviceHereAnswer {
  const type = getDeviceType(device.type);
  const isGuard = guardPorts(device) !== undefined && type.sensing?.class === "personnel";
  const kind = isGuard
    ? "ground-fault"
    : type.family === "receptacle" || type.family === "ground-fault-receptacle"
      ? "receptacle"
      : switchPorts(device) !== undefined && type.outlets.length === 0
        ? "switch"
        : "user";
  const isWhole = device.hotTab !== "removed" && device.neutralTab !== "removed";
  const types = kind === "receptacle" && isWhole ? guardTypes(project, box, device) : [];
  const halves = halfPorts(device)?.map(({ half }) => ({ id: half, name: nameOfHalf(device, half) }));
  return {
    id: device.id,
    name: device.name,
    title: type.title,
    kind,
    mayBecome: types,
    ...(halves !== undefined && { halves }),
  };
}

/** Ground-fault devices that may take the place of a receptacle: those of its rating, and a blank face without one. */
export const guardTypes = (project: Project, box: Box, device: Device): DeviceHereAnswer["mayBecome"] =>
  [...typesFor(project, box, device), "gfci-blank"].flatMap((id) => {
    const type = findDeviceType(id);
    return type === undefined ? [] : { id, name: type.title };
  });
