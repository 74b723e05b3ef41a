import type { Role } from "../../shared-model/answers/circuit.ts";
import {
  asId,
  type ConductorKey,
  cableEnd,
  type DeviceId,
  type EnclosureId,
  type EndKey,
  jumperEnd,
  type OutletKey,
  type SpliceId,
} from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { sectionProof } from "../../shared-model/solver/circuit/section-proof.ts";
import type { OutletStanding, Section, Spot } from "../../shared-model/solver/section.ts";
import { allSections } from "../../shared-model/solver/sections.ts";
import type { Drawing } from "../rules/drawing.ts";
import { type Isolation, type IsolationTest, isolationIn } from "./isolation.ts";

export const boxId = (name: string): EnclosureId => asId<EnclosureId>(name);
export const deviceId = (name: string): DeviceId => asId<DeviceId>(name);
export const spliceId = (name: string): SpliceId => asId<SpliceId>(name);
export const outletKey = (name: string): OutletKey => name as OutletKey;

/** The section of a drawing that has only one. */
export function onlySection(drawing: Drawing): Section {
  const sections = allSections(drawing.installation());
  const [section] = sections;
  if (section === undefined || sections.length > 1) throw new Error(`The drawing has ${sections.length} sections.`);
  return section;
}

/** "C1.bk@B1" or "a.1" as the key of an end. */
export function endKey({ cables }: Installation, text: string): EndKey {
  const [what = "", box] = text.split("@");
  const [owner = "", part = ""] = what.split(".");
  if (box === undefined) return jumperEnd(asId(owner), part === "1" ? "a" : "b");
  const cable = cables[asId<keyof typeof cables>(owner)];
  const isAt = (side: "a" | "b"): boolean => {
    const where = cable?.sides[side];
    return where !== undefined && "enclosure" in where && where.enclosure === box;
  };
  return cableEnd(asId(owner), asId<ConductorKey>(part), isAt("a") ? "a" : "b");
}

/** "R1.UH" as a point of a device. */
export function node(text: string): Extract<Spot, { readonly device: DeviceId }> {
  const [device = "", at = ""] = text.split(".");
  return { device: deviceId(device), node: at };
}

/** Roles of some ends, "C1.bk@B1" or "a.1", by their texts. */
export function rolesAt(drawing: Drawing, ...ends: readonly string[]): Record<string, Role> {
  const section = onlySection(drawing);
  return Object.fromEntries(ends.map((end) => [end, section.roleOfEnd(endKey(section.installation, end))]));
}

export function standing(section: Section, outlet: string): OutletStanding {
  const found = section.outlets().find(({ outlet: { key } }) => key === outlet);
  if (found === undefined) throw new Error(`No outlet ${outlet}.`);
  return found;
}

export function isolationOf(section: Section, outlet: string): Isolation {
  const found = isolationIn(section).find(({ standing: { outlet: at } }) => at.key === outlet);
  if (found === undefined) throw new Error(`No outlet ${outlet}.`);
  return found;
}

/** What isolation finds failing for an outlet by a device, in words; empty when it protects. */
export function failing(section: Section, outlet: string, device: string): readonly string[] {
  const found = isolationOf(section, outlet);
  const test = found.tests.find((one) => one.device === device);
  if (test === undefined) throw new Error(`${outlet} was not tested by ${device}.`);
  const failed = FAILURES.filter(([, fails]) => fails(test)).map(([name]) => name);
  if (found.standing.live && test.protects !== (failed.length === 0))
    throw new Error("The verdict is not that of its parts.");
  return failed;
}

const FAILURES: readonly (readonly [string, (test: IsolationTest) => boolean])[] = [
  ["hot reached", (test) => test.hotReached],
  ["neutral reached", (test) => test.neutralReached],
  ["reached through a load", (test) => test.reachedThroughLoad],
  ["no power", (test) => !test.powered],
  ["class", (test) => !test.personnelClass],
  ["direction", (test) => !test.fedOnLine],
];

/** Names of all outlets with the devices that protect them, as proved by the circuit. */
export const protection = (section: Section): Record<string, readonly string[]> =>
  Object.fromEntries(
    sectionProof(section).outlets.map(({ standing: { outlet }, protectedBy }) => [outlet.key, protectedBy]),
  );

/** Outlets that stay live when the contacts of a device open, sorted. */
export function liveAfterTrip(section: Section, device: string): readonly string[] {
  const open = section.contactsOpen(deviceId(device));
  return section
    .outlets()
    .filter(({ outlet }) => open.isLive({ device: outlet.device.id, node: outlet.hot }))
    .map(({ outlet }) => outlet.key as string)
    .sort();
}

/** Makes a panel of a drawing one that a feeder supplies. */
export function asFeederPanel(drawing: Drawing, name: string): Drawing {
  const panel = drawing.at(name);
  if (panel.kind !== "panel") throw new Error(`${name} is no panel.`);
  panel.supply = "feeder";
  panel.mainBond = "elsewhere";
  return drawing;
}
