import { amps } from "../units/quantity.ts";
import type { DeviceOutlet, DevicePath, DeviceType, SensingType } from "./device-type.ts";
import { DEVICE_CAPTIONS, DEVICE_TITLES } from "./device-words.ts";
import { ground, hot, lead, neutral } from "./terminal-types.ts";

// What device types of one kind have in common.

export const TYPICAL_SOURCE = "typical of the trade; the marking of the actual device governs";

export const path = (a: string, b: string, when: DevicePath["when"]): DevicePath => ({ a, b, when });
const sensed = (a: string, b: string): DevicePath => ({ a, b, when: "reset", sensed: true });

const HALVES: readonly DeviceOutlet[] = [
  { half: "upper", hot: "UH", neutral: "UN", ground: "UG" },
  { half: "lower", hot: "LH", neutral: "LN", ground: "LG" },
];

const DUPLEX_PATHS: readonly DevicePath[] = [
  path("H1", "UH", "always"),
  path("H2", "LH", "always"),
  path("H1", "H2", "hot-tab"),
  path("N1", "UN", "always"),
  path("N2", "LN", "always"),
  path("N1", "N2", "neutral-tab"),
];
const GROUNDED_FACE: readonly DevicePath[] = [path("G", "UG", "always"), path("G", "LG", "always")];

export function duplex(
  id: keyof typeof DEVICE_TITLES,
  defaults: DeviceType["defaults"],
  glyph = "receptacle",
): DeviceType {
  const grounded = glyph !== "receptacle-two-slot";
  const outlets = grounded ? HALVES : HALVES.map(({ ground: _none, ...rest }) => rest);
  return {
    id,
    title: DEVICE_TITLES[id],
    caption: DEVICE_CAPTIONS[id],
    family: "receptacle",
    glyph,
    where: "box",
    yokes: 1,
    gangs: 1,
    terminals: [hot("H1"), hot("H2"), neutral("N1"), neutral("N2"), ...(grounded ? [ground] : [])],
    paths: grounded ? [...DUPLEX_PATHS, ...GROUNDED_FACE] : DUPLEX_PATHS,
    outlets,
    positions: [],
    defaults,
    source: TYPICAL_SOURCE,
  };
}

const BOTH_POLES: Pick<SensingType, "opens" | "line" | "load"> = {
  opens: ["hot", "neutral"],
  line: { hot: ["LINE_H"], neutral: "LINE_N" },
  load: { hot: ["LOAD_H"], neutral: "LOAD_N" },
};
export const PERSONNEL: SensingType = { class: "personnel", arcFault: false, ...BOTH_POLES };

const LINE_LOAD = [
  hot("LINE_H", { group: "LINE", entryKind: "clamp-plate" }),
  neutral("LINE_N", { group: "LINE", entryKind: "clamp-plate" }),
  hot("LOAD_H", { group: "LOAD", entryKind: "clamp-plate" }),
  neutral("LOAD_N", { group: "LOAD", entryKind: "clamp-plate" }),
  ground,
];
const CONTACTS: readonly DevicePath[] = [sensed("LINE_H", "LOAD_H"), sensed("LINE_N", "LOAD_N")];
const FACE: readonly DevicePath[] = [
  path("LOAD_H", "UH", "face"),
  path("LOAD_N", "UN", "face"),
  path("G", "UG", "always"),
];
export const ONE_FACE: readonly DeviceOutlet[] = [{ hot: "UH", neutral: "UN", ground: "UG" }];

export function lineLoad(
  id: keyof typeof DEVICE_TITLES,
  glyph: string,
  sensing: SensingType,
  defaults: DeviceType["defaults"],
  face = true,
): DeviceType {
  return {
    id,
    title: DEVICE_TITLES[id],
    caption: DEVICE_CAPTIONS[id],
    family: face ? "ground-fault-receptacle" : "ground-fault-blank",
    glyph,
    where: "box",
    yokes: 1,
    gangs: 1,
    terminals: LINE_LOAD,
    paths: face ? [...CONTACTS, ...FACE] : CONTACTS,
    outlets: face ? ONE_FACE : [],
    positions: [],
    sensing,
    defaults: { reversal: "deny", faceContact: "separate", ...defaults },
    source: TYPICAL_SOURCE,
  };
}

export function switchType(
  id: keyof typeof DEVICE_TITLES,
  glyph: string,
  rest: Pick<DeviceType, "terminals" | "paths" | "positions"> & Partial<DeviceType>,
): DeviceType {
  return {
    id,
    title: DEVICE_TITLES[id],
    caption: DEVICE_CAPTIONS[id],
    family: "switch",
    glyph,
    where: "box",
    yokes: 1,
    gangs: 1,
    outlets: [],
    defaults: { ratingA: amps(15) },
    source: TYPICAL_SOURCE,
    ...rest,
  };
}

const LOAD_OUTLET: readonly DeviceOutlet[] = [{ hot: "H", neutral: "N", ground: "G" }];
export function user(
  id: keyof typeof DEVICE_TITLES,
  family: DeviceType["family"],
  glyph: string,
  rest: Partial<DeviceType>,
): DeviceType {
  return {
    id,
    title: DEVICE_TITLES[id],
    caption: DEVICE_CAPTIONS[id],
    family,
    glyph,
    where: "box",
    yokes: 0,
    gangs: 1,
    terminals: [hot("H", lead), neutral("N", lead), ground],
    paths: [path("H", "N", "load")],
    outlets: LOAD_OUTLET,
    positions: [],
    defaults: {},
    source: TYPICAL_SOURCE,
    ...rest,
  };
}

export const TR15 = { ratingA: amps(15), tamperResistant: true };
export const TR20 = { ratingA: amps(20), tamperResistant: true };
