import { findDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { DeviceId, EnclosureId, EndKey, OutletKey, TerminalName } from "../model/ids.ts";
import { jumperEnd, otherSide, parseEnd, parseOutlet } from "../model/ids.ts";
import type { At, Place } from "../model/place.ts";
import type { Installation, Project, StateName } from "../model/project.ts";
import { nameOfEnd } from "../queries/end-facts.ts";
import { findDevice } from "../queries/find-item.ts";
import { findInstallation } from "../queries/installation-of.ts";
import { outletsOf } from "../queries/outlets-of.ts";
import { findTerminal, nameOfTerminal } from "../queries/terminals-of.ts";
import { type Refusal, refusal } from "./define-command.ts";
import { gone, grammar } from "./item-words.ts";

const wording = catalogue({
  bond: (panel: Part) => `the bond of ${panel}`,
  cap: "a cap",
  groundScrew: (box: Part) => `the ground screw of ${box}`,
  noBond: (box: Part) =>
    `${box} is nonmetallic and has no ground screw. Join the ground in a splice, or correct its material.`,
  noDevice: (box: Part) => `${box} has no such device. Land the end on a device of its own box.`,
  noEnd: (box: Part) => `${box} has no such conductor end. Pick one of the ends inside it.`,
  noHole: (terminal: Part, holes: Part) =>
    `${terminal} has ${holes === 1 ? "one hole" : `${holes} holes`}. Use a number from 1 to ${holes}.`,
  noOutlet: (device: Part, outlets: Part) => `${device} has no such outlet. Pick ${outlets}.`,
  noOutlets: (device: Part) => `${device} has no such outlet. It has none: pick another device.`,
  noProposed: "There is no proposed state yet. Start it first, or work in as found.",
  noSplice: (box: Part) => `${box} has no such splice. Pick one inside it, or make a new one.`,
  noTerminal: (device: Part, terminal: Part, terminals: Part) =>
    `${device} has no terminal ${terminal}. It has ${terminals}.`,
  noTerminals: (device: Part, terminal: Part) => `${device} has no terminal ${terminal}. It has none.`,
  nothing: "nothing",
  otherEnd: (jumper: Part) =>
    `Jumper ${jumper} already has its other end there. Land it somewhere else, or remove the jumper.`,
  splice: (name: Part) => `splice ${name}`,
});

/** Either what was looked for, or why the command cannot go on without it. */
export type FoundOr<T> =
  | { readonly found: T; readonly no?: undefined }
  | { readonly found?: undefined; readonly no: Refusal };

const unknown = (message: string): { readonly no: Refusal } => ({ no: refusal("unknown-item", message) });

export function installationOr(project: Project, state: StateName): FoundOr<Installation> {
  const found = findInstallation(project, state);
  if (found !== undefined) return { found };
  return { no: refusal("no-proposed-state", wording.noProposed) };
}

export interface InBox {
  readonly installation: Installation;
  readonly enclosure: Enclosure;
}

export function enclosureOr(project: Project, state: StateName, id: EnclosureId): FoundOr<InBox> {
  const { found: installation, no } = installationOr(project, state);
  if (no !== undefined) return { no };
  const enclosure = installation.enclosures[id];
  return enclosure === undefined ? unknown(gone.enclosure) : { found: { installation, enclosure } };
}

export interface AtEnd extends InBox {
  readonly place: Place;
}

export function endOr(project: Project, state: StateName, id: EnclosureId, end: EndKey): FoundOr<AtEnd> {
  const { found, no } = enclosureOr(project, state, id);
  if (no !== undefined) return { no };
  const place = found.enclosure.places[end];
  if (place !== undefined) return { found: { ...found, place } };
  return {
    no: refusal("unknown-end", wording.noEnd(found.enclosure.name)),
  };
}

export interface OfDevice extends InBox {
  readonly device: Device;
}

export function deviceOr(project: Project, state: StateName, id: DeviceId): FoundOr<OfDevice> {
  const { found: installation, no } = installationOr(project, state);
  if (no !== undefined) return { no };
  const found = findDevice(installation, id);
  return found === undefined ? unknown(gone.device) : { found: { installation, ...found } };
}

/** The outlet of a device as it is now: halves only where a tab is off. */
export function outletOr(project: Project, state: StateName, key: OutletKey): FoundOr<OfDevice> {
  const { found, no } = deviceOr(project, state, parseOutlet(key).device);
  if (no !== undefined) return { no };
  const outlets = outletsOf(found.device);
  if (outlets.some((outlet) => outlet.key === key)) return { found };
  const { name } = found.device;
  const [first, ...others] = outlets.map((outlet) => outlet.name);
  const message =
    first === undefined
      ? wording.noOutlets(name)
      : wording.noOutlet(
          name,
          others.reduce((all, one) => grammar.and(all, one), first),
        );
  return { no: refusal("unknown-outlet", message) };
}

/** Why an end may not go to a place of its enclosure; `at` may share a hole with others, which the rules judge. */
export function noSuchPlace({ enclosure }: InBox, at: At): Refusal | undefined {
  if (at.kind === "splice" && enclosure.splices[at.splice] === undefined)
    return refusal("unknown-splice", wording.noSplice(enclosure.name));
  if (at.kind === "bond" && enclosure.kind === "box" && enclosure.material === "nonmetallic")
    return refusal("no-metal-to-bond", wording.noBond(enclosure.name));
  if (at.kind !== "terminal") return undefined;
  const device = enclosure.devices[at.device];
  if (device === undefined) return refusal("unknown-device", wording.noDevice(enclosure.name));
  const terminal = findTerminal(device, at.terminal);
  if (terminal === undefined) {
    const names = (findDeviceType(device.type)?.terminals ?? []).map((one) => one.name).join(", ");
    const { name } = device;
    const message =
      names === "" ? wording.noTerminals(name, at.terminal) : wording.noTerminal(name, at.terminal, names);
    return refusal("unknown-terminal", message);
  }
  if (at.hole <= terminal.holes) return undefined;
  return refusal("unknown-hole", wording.noHole(nameOfTerminal(device, terminal.name), terminal.holes));
}

/** The same node of the wiring: both holes of a clamp plate are one point; capped and loose ends never meet. */
export function samePoint(a: At, b: At): boolean {
  if (a.kind === "splice" && b.kind === "splice") return a.splice === b.splice;
  if (a.kind === "terminal" && b.kind === "terminal") return a.device === b.device && a.terminal === b.terminal;
  return a.kind === "bond" && b.kind === "bond";
}

/** As `noSuchPlace`, and a jumper may not come back to where its other end is. */
export function cannotLand({ installation, enclosure }: InBox, end: EndKey, at: At): Refusal | undefined {
  const missing = noSuchPlace({ installation, enclosure }, at);
  if (missing !== undefined) return missing;
  const parsed = parseEnd(end);
  if (parsed?.of !== "jumper") return undefined;
  const other = enclosure.places[jumperEnd(parsed.jumper, otherSide(parsed.side))];
  if (other === undefined || !samePoint(other.at, at)) return undefined;
  return refusal("jumper-to-itself", wording.otherEnd(nameOfEnd(installation, enclosure, end)));
}

/** "R1 H", "splice X", "the ground screw of B1", "a cap", "loose", for names of steps. */
export function nameOfPlace(enclosure: Enclosure, at: At): string {
  switch (at.kind) {
    case "terminal": {
      const device = enclosure.devices[at.device];
      return device === undefined ? at.terminal : nameOfTerminal(device, at.terminal as TerminalName);
    }
    case "splice":
      return wording.splice(enclosure.splices[at.splice]?.name ?? at.splice);
    case "bond":
      return enclosure.kind === "panel" ? wording.bond(enclosure.name) : wording.groundScrew(enclosure.name);
    case "capped":
      return wording.cap;
    case "loose":
      return wording.nothing;
  }
}
