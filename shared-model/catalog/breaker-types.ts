import { amps } from "../units/quantity.ts";
import type { DevicePath, DeviceType, SensingType } from "./device-type.ts";
import { DEVICE_CAPTIONS, DEVICE_TITLES } from "./device-words.ts";
import { ground, hot, neutral } from "./terminal-types.ts";

const TYPICAL_SOURCE = "typical of the trade; the marking of the panel says which breakers are listed for it";

const lug = { entryKind: "lug", thinnest: "14", thickest: "8" } as const;
const on = (a: string, b: string, sensed = false): DevicePath => ({
  a,
  b,
  when: "breaker-on",
  ...(sensed && { sensed: true as const }),
});

function onePole(
  id: keyof typeof DEVICE_TITLES,
  fn: "none" | "gfci" | "afci" | "dual",
  sensing?: SensingType,
): DeviceType {
  return {
    id,
    title: DEVICE_TITLES[id],
    caption: DEVICE_CAPTIONS[id],
    family: "breaker",
    glyph: "breaker",
    where: "panel",
    yokes: 0,
    gangs: 1,
    terminals: [hot("OUT", lug), ...(sensing ? [neutral("LOAD_N", lug)] : [])],
    // The neutral tail of a sensing breaker is part of it: its contacts never open the neutral.
    paths: [
      on("@leg0", "OUT", sensing !== undefined),
      ...(sensing ? [{ a: "@neutral", b: "LOAD_N", when: "always", sensed: true } as const] : []),
    ],
    outlets: [],
    positions: ["on", "off"],
    ...(sensing && { sensing }),
    defaults: { breakerRatingA: amps(20), legs: ["A"], function: fn },
    source: TYPICAL_SOURCE,
  };
}

function twoPole(
  id: keyof typeof DEVICE_TITLES,
  fn: "none" | "gfci" | "afci" | "dual",
  sensing?: SensingType,
): DeviceType {
  return {
    id,
    title: DEVICE_TITLES[id],
    caption: DEVICE_CAPTIONS[id],
    family: "breaker",
    glyph: "breaker",
    where: "panel",
    yokes: 0,
    gangs: 2,
    terminals: [
      hot("OUT1", { ...lug, label: "H1" }),
      hot("OUT2", { ...lug, label: "H2" }),
      ...(sensing ? [neutral("LOAD_N", lug)] : []),
    ],
    paths: [
      on("@leg0", "OUT1", sensing !== undefined),
      on("@leg1", "OUT2", sensing !== undefined),
      ...(sensing ? [{ a: "@neutral", b: "LOAD_N", when: "always", sensed: true } as const] : []),
    ],
    outlets: [],
    positions: ["on", "off"],
    ...(sensing && { sensing }),
    defaults: { breakerRatingA: amps(20), legs: ["A", "B"], function: fn },
    source: TYPICAL_SOURCE,
  };
}

const sensing = (poles: 1 | 2, kind: SensingType["class"], arcFault: boolean): SensingType => ({
  class: kind,
  arcFault,
  opens: ["hot"],
  line: { hot: poles === 1 ? ["@leg0"] : ["@leg0", "@leg1"], neutral: "@neutral" },
  load: { hot: poles === 1 ? ["OUT"] : ["OUT1", "OUT2"], neutral: "LOAD_N" },
});

const bar = (id: keyof typeof DEVICE_TITLES, node: "@neutral" | "@ground"): DeviceType => ({
  id,
  title: DEVICE_TITLES[id],
  caption: DEVICE_CAPTIONS[id],
  family: node === "@neutral" ? "neutral-bar" : "ground-bar",
  glyph: "bond",
  where: "panel",
  yokes: 0,
  gangs: 1,
  terminals: [
    node === "@neutral"
      ? { ...neutral("BAR", { holes: 42, thickest: "4" }), entryKind: "neutral-bar" }
      : { ...ground, name: "BAR" as typeof ground.name, entryKind: "ground-bar", holes: 42, thickest: "4" },
  ],
  paths: [{ a: "BAR", b: node, when: "always" }],
  outlets: [],
  positions: [],
  defaults: {},
  source: TYPICAL_SOURCE,
});

/** What sits in a panel: breakers, fuses, bars, lugs. */
export const breakerTypes: readonly DeviceType[] = [
  onePole("breaker-1", "none"),
  twoPole("breaker-2", "none"),
  onePole("breaker-gfci-1", "gfci", sensing(1, "personnel", false)),
  twoPole("breaker-gfci-2", "gfci", sensing(2, "personnel", false)),
  onePole("breaker-afci-1", "afci", sensing(1, "arc-fault", true)),
  onePole("breaker-dual-1", "dual", sensing(1, "personnel", true)),
  twoPole("breaker-dual-2", "dual", sensing(2, "personnel", true)),
  {
    ...onePole("fuse-1", "none"),
    family: "fuse",
    glyph: "fuse",
    defaults: { breakerRatingA: amps(15), legs: ["A"], function: "none" },
  },
  bar("neutral-bar", "@neutral"),
  bar("ground-bar", "@ground"),
  {
    id: "main-lugs",
    title: DEVICE_TITLES["main-lugs"],
    caption: DEVICE_CAPTIONS["main-lugs"],
    family: "lugs",
    glyph: "panel",
    where: "panel",
    yokes: 0,
    gangs: 2,
    terminals: [
      hot("L1", { ...lug, thickest: "4/0", label: "L1" }),
      hot("L2", { ...lug, thickest: "4/0", label: "L2" }),
      neutral("N", { ...lug, thickest: "4/0" }),
    ],
    paths: [
      { a: "L1", b: "@busA", when: "always" },
      { a: "L2", b: "@busB", when: "always" },
      { a: "N", b: "@neutral", when: "always" },
    ],
    outlets: [],
    positions: [],
    defaults: {},
    source: TYPICAL_SOURCE,
  },
];
