import { amps, milliamps, ohms, watts } from "../units/quantity.ts";
import { breakerTypes } from "./breaker-types.ts";
import {
  duplex,
  lineLoad,
  ONE_FACE,
  PERSONNEL,
  path,
  switchType,
  TR15,
  TR20,
  TYPICAL_SOURCE,
  user,
} from "./device-makers.ts";
import type { DeviceType } from "./device-type.ts";
import { DEVICE_CAPTIONS, DEVICE_TITLES, TERMINAL_LABELS } from "./device-words.ts";
import { common, ground, hot, lead, neutral, signal, switched, traveller } from "./terminal-types.ts";

/** What is put in today stands first, what is only found in old work last. */
const RECEPTACLES: readonly DeviceType[] = [
  duplex("receptacle-tr-15", TR15),
  duplex("receptacle-tr-20", {
    ...TR20,
    entryKind: "clamp-plate",
  }),
  duplex("receptacle-15", { ratingA: amps(15), tamperResistant: false }),
  duplex("receptacle-20", {
    ratingA: amps(20),
    tamperResistant: false,
    entryKind: "clamp-plate",
  }),
  duplex("receptacle-tr-wr-15", {
    ...TR15,
    weatherResistant: true,
  }),
  duplex("receptacle-tr-wr-20", {
    ...TR20,
    weatherResistant: true,
  }),
  {
    id: "receptacle-single-20",
    title: DEVICE_TITLES["receptacle-single-20"],
    caption: DEVICE_CAPTIONS["receptacle-single-20"],
    family: "receptacle",
    glyph: "receptacle-single",
    where: "box",
    yokes: 1,
    gangs: 1,
    terminals: [hot("H"), neutral("N"), ground],
    paths: [path("H", "UH", "always"), path("N", "UN", "always"), path("G", "UG", "always")],
    outlets: ONE_FACE,
    positions: [],
    defaults: TR20,
    source: TYPICAL_SOURCE,
  },
  duplex("receptacle-two-slot", { ratingA: amps(15), tamperResistant: false }, "receptacle-two-slot"),
];

const GROUND_FAULT: readonly DeviceType[] = [
  lineLoad("gfci-receptacle-15", "gfci", PERSONNEL, TR15),
  lineLoad("gfci-receptacle-20", "gfci", PERSONNEL, TR20),
  lineLoad("gfci-receptacle-wr-15", "gfci", PERSONNEL, { ...TR15, weatherResistant: true }),
  lineLoad("gfci-receptacle-wr-20", "gfci", PERSONNEL, { ...TR20, weatherResistant: true }),
  lineLoad("dual-function-receptacle-15", "dual-function", { ...PERSONNEL, arcFault: true }, TR15),
  lineLoad("dual-function-receptacle-20", "dual-function", { ...PERSONNEL, arcFault: true }, TR20),
  lineLoad("afci-receptacle-15", "gfci", { ...PERSONNEL, class: "arc-fault", arcFault: true }, TR15),
  lineLoad("gfci-blank", "gfci-blank", PERSONNEL, { ratingA: amps(20) }, false),
];

const SWITCHES: readonly DeviceType[] = [
  switchType("switch-single-pole", "switch", {
    terminals: [hot("C", { label: "1" }), switched("L", { label: "2" }), ground],
    paths: [path("C", "L", "on")],
    positions: ["on", "off"],
  }),
  switchType("switch-3way", "switch-3way", {
    terminals: [common("C"), traveller("T1", { label: "T1" }), traveller("T2", { label: "T2" }), ground],
    paths: [path("C", "T1", "up"), path("C", "T2", "down")],
    positions: ["up", "down"],
  }),
  switchType("switch-4way", "switch-4way", {
    terminals: [
      traveller("A1", { label: "A1" }),
      traveller("A2", { label: "A2" }),
      traveller("B1", { label: "B1" }),
      traveller("B2", { label: "B2" }),
      ground,
    ],
    paths: [
      path("A1", "B1", "straight"),
      path("A2", "B2", "straight"),
      path("A1", "B2", "crossed"),
      path("A2", "B1", "crossed"),
    ],
    positions: ["straight", "crossed"],
  }),
  switchType("switch-double-pole", "switch", {
    terminals: [
      hot("L1", { label: "L1" }),
      switched("T1", { label: "T1" }),
      hot("L2", { label: "L2" }),
      switched("T2", { label: "T2" }),
      ground,
    ],
    paths: [path("L1", "T1", "on"), path("L2", "T2", "on")],
    positions: ["on", "off"],
    defaults: { ratingA: amps(20) },
  }),
  switchType("switch-pilot", "switch-pilot", {
    terminals: [hot("C", { label: "1" }), switched("L", { label: "2" }), neutral("N"), ground],
    paths: [path("C", "L", "on"), path("L", "N", "load")],
    positions: ["on", "off"],
  }),
  switchType("switch-two", "switch", {
    terminals: [
      hot("C1", { label: "C1" }),
      hot("C2", { label: "C2" }),
      switched("L1", { label: "L1" }),
      switched("L2", { label: "L2" }),
      ground,
    ],
    paths: [path("C1", "C2", "hot-tab"), path("C1", "L1", "on"), path("C2", "L2", "on")],
    positions: ["on", "off"],
    family: "combination",
  }),
  switchType("switch-receptacle", "receptacle", {
    terminals: [hot("H"), hot("HS", { label: "H2" }), switched("SW"), neutral("N"), ground],
    paths: [
      path("H", "HS", "hot-tab"),
      path("HS", "SW", "on"),
      path("H", "UH", "always"),
      path("N", "UN", "always"),
      path("G", "UG", "always"),
    ],
    outlets: ONE_FACE,
    positions: ["on", "off"],
    family: "combination",
  }),
  switchType("dimmer", "dimmer", {
    terminals: [hot("C", { ...lead, label: "1" }), switched("L", { ...lead, label: "2" }), ground],
    paths: [path("C", "L", "on")],
    positions: ["on", "off"],
    family: "dimmer",
    defaults: { ratingA: amps(5), ledRatingW: watts(150) },
  }),
  switchType("timer-neutral", "timer", {
    terminals: [hot("H", lead), switched("L", { ...lead, label: "SW" }), neutral("N", lead), ground],
    paths: [path("H", "L", "on"), path("H", "N", "load")],
    positions: ["on", "off"],
    family: "timer",
  }),
  switchType("timer-no-neutral", "timer", {
    terminals: [hot("H", lead), switched("L", { ...lead, label: "SW" }), ground],
    paths: [path("H", "L", "on")],
    positions: ["on", "off"],
    family: "timer",
  }),
];

const USERS: readonly DeviceType[] = [
  user("luminaire-60", "luminaire", "luminaire", {
    defaults: { loadW: watts(60), loadOhm: ohms(240), leakMa: milliamps(0.1) },
  }),
  user("luminaire-led-9", "luminaire", "luminaire", {
    defaults: { loadW: watts(9), leakMa: milliamps(0.1) },
  }),
  user("fan-light", "fan", "fan-light", {
    terminals: [
      hot("H_FAN", { ...lead, label: TERMINAL_LABELS.fan }),
      hot("H_LIGHT", { ...lead, label: TERMINAL_LABELS.light }),
      neutral("N", lead),
      ground,
    ],
    paths: [
      { ...path("H_FAN", "N", "load"), watts: 75 },
      { ...path("H_LIGHT", "N", "load"), watts: 60 },
    ],
    outlets: [
      { half: "upper", hot: "H_LIGHT", neutral: "N", ground: "G" },
      { half: "lower", hot: "H_FAN", neutral: "N", ground: "G" },
    ],
    defaults: { loadW: watts(135) },
  }),
  user("fan-exhaust", "fan", "fan", { defaults: { loadW: watts(75) } }),
  user("smoke-alarm", "alarm", "alarm", {
    terminals: [hot("H", lead), neutral("N", lead), signal("SIG", lead)],
    outlets: [{ hot: "H", neutral: "N" }],
    defaults: { loadW: watts(2), priority: "alarm" },
  }),
  user("appliance-120", "appliance", "appliance", {
    defaults: { loadW: watts(1200) },
  }),
  user("appliance-240", "appliance", "appliance", {
    terminals: [hot("L1", { ...lead, label: "L1" }), hot("L2", { ...lead, label: "L2" }), ground],
    paths: [path("L1", "L2", "load")],
    outlets: [{ hot: "L1", neutral: "L2", ground: "G" }],
    defaults: { loadW: watts(3600) },
  }),
  {
    id: "disconnect-fused",
    title: DEVICE_TITLES["disconnect-fused"],
    caption: DEVICE_CAPTIONS["disconnect-fused"],
    family: "disconnect",
    glyph: "fuse",
    where: "box",
    yokes: 1,
    gangs: 1,
    terminals: [hot("IN", { label: "IN" }), hot("OUT", { label: "OUT" }), ground],
    paths: [path("IN", "OUT", "on")],
    outlets: [],
    positions: ["on", "off"],
    defaults: {},
    source: TYPICAL_SOURCE,
  },
];

export const deviceTypes: readonly DeviceType[] = [
  ...RECEPTACLES,
  ...GROUND_FAULT,
  ...SWITCHES,
  ...USERS,
  ...breakerTypes,
];

const BY_ID = new Map(deviceTypes.map((type) => [type.id, type]));

export const findDeviceType = (id: string): DeviceType | undefined => BY_ID.get(id);

/** The type of a device of a valid document. Throws on an unknown one: that is a bug past the border. */
export function getDeviceType(id: string): DeviceType {
  const type = BY_ID.get(id);
  if (type === undefined) throw new Error(`Unknown device type: ${id}`);
  return type;
}
