import { getDeviceType } from "../catalog/device-types.ts";
import { findLoadItem } from "../catalog/load-items.ts";
import type { EvidenceMark } from "../model/evidence.ts";
import type { DeviceId, TerminalName } from "../model/ids.ts";
import type { Load } from "../model/load.ts";
import type { Installation } from "../model/project.ts";
import { isUser, usesOf } from "../solver/circuit/device-uses.ts";
import { loadsOn } from "../solver/circuit/loads-on.ts";
import { RATED_V } from "../solver/circuit/modelling-values.ts";
import type { OutletStanding, PathStep, Section, Spot } from "../solver/section.ts";
import { marksOn } from "./rule-parts.ts";
import { hotOf, needsNeutral, neutralOf } from "./section-parts.ts";

/** Something that draws current at an outlet with a supply, and what that current runs through. */
export interface CircuitUse {
  readonly name: string;
  readonly outlet: OutletStanding;
  readonly kind: "plugged" | "lighting" | "fastened";
  readonly watts: number;
  readonly amps: number;
  readonly continuous: boolean;
  readonly isMotor: boolean;
  readonly isLed: boolean;
  /** Devices on the ways of its hots, from the panel on, each with the terminal by which they are left. */
  readonly through: readonly { readonly device: DeviceId; readonly terminal: TerminalName }[];
  readonly marks: readonly EvidenceMark[];
}

const LED_TYPES: ReadonlySet<string> = new Set(["luminaire-led-9"]);

interface Kept {
  readonly loads: Installation["loads"];
  readonly uses: readonly CircuitUse[];
}
const kept = new WeakMap<readonly OutletStanding[], Kept>();

/**
 * Everything in a section that draws current, at 120 V, or 240 V between two hots; rated figures, nothing of how long it
 * runs. What has no known watts is left out. Kept with the outlets of the section and the loads.
 */
export function circuitUses(section: Section, { loads }: Installation): readonly CircuitUse[] {
  const standings = section.outlets();
  const known = kept.get(standings);
  if (known?.loads === loads) return known.uses;
  const uses = standings.flatMap((standing) => usesAt(section, loads, standing));
  kept.set(standings, { loads, uses });
  return uses;
}

function usesAt(section: Section, loads: Installation["loads"], standing: OutletStanding): readonly CircuitUse[] {
  const { outlet, live } = standing;
  if (!live) return [];
  const plugged = (loadsOn(loads).get(outlet.device.id) ?? []).filter(({ plug }) => plug === outlet.key);
  const wired = wiredAt(standing);
  if (plugged.length === 0 && wired === undefined) return [];
  const through = throughOf(section, standing);
  const volts = voltsAt(standing);
  const own = wired === undefined ? [] : [{ ...wired, amps: wired.watts / volts, outlet: standing, through }];
  return [...own, ...plugged.flatMap((load) => pluggedUse(load, standing, through, volts) ?? [])];
}

/** A luminaire, or the light of a fan. */
export function isLightOutlet({ outlet }: OutletStanding): boolean {
  return getDeviceType(outlet.device.type).family === "luminaire" || outlet.hot === "H_LIGHT";
}

const voltsAt = (standing: OutletStanding): number => (needsNeutral(standing) ? RATED_V : 2 * RATED_V);

function wiredAt(standing: OutletStanding): Omit<CircuitUse, "amps" | "outlet" | "through"> | undefined {
  const { device, name } = standing.outlet;
  if (!isUser(device)) return undefined;
  const watts = wiredWatts(standing);
  if (watts === undefined || watts <= 0) return undefined;
  const { family, id } = getDeviceType(device.type);
  const isLight = isLightOutlet(standing);
  return {
    name,
    kind: isLight ? "lighting" : "fastened",
    watts,
    continuous: device.continuous === true,
    isMotor: family === "fan" && !isLight,
    isLed: LED_TYPES.has(id),
    marks: marksOn(device, "type", "loadW", "loadOhm", "continuous"),
  };
}

/** The watts that are stated; of a device with several paths the share that its catalogue type gives this one. */
function wiredWatts(standing: OutletStanding): number | undefined {
  const { device, hot } = standing.outlet;
  const { uses, assumption } = usesOf(device);
  if (assumption !== undefined) return undefined;
  const paths = uses.filter(({ kind }) => kind === "load");
  const own = paths.find(({ a }) => a === hot);
  if (paths.length < 2 && device.loadW !== undefined) return device.loadW;
  return own === undefined ? undefined : voltsAt(standing) ** 2 / own.ohm;
}

function pluggedUse(
  load: Load,
  outlet: OutletStanding,
  through: CircuitUse["through"],
  volts: number,
): CircuitUse | undefined {
  const item = findLoadItem(load.item);
  const watts = load.loadW ?? (load.loadOhm === undefined ? item?.loadW : volts ** 2 / load.loadOhm);
  if (watts === undefined || watts <= 0) return undefined;
  return {
    name: load.name,
    outlet,
    kind: "plugged",
    watts,
    amps: watts / volts,
    continuous: load.continuous ?? item?.continuous ?? false,
    isMotor: item?.glyph === "motor",
    isLed: false,
    through,
    marks: marksOn(load, "item", "loadW", "loadOhm", "continuous"),
  };
}

function throughOf(section: Section, standing: OutletStanding): CircuitUse["through"] {
  const ends: readonly Spot[] = needsNeutral(standing) ? [hotOf(standing)] : [hotOf(standing), neutralOf(standing)];
  return ends
    .flatMap((end) => section.wayFrom("ungrounded", end) ?? [])
    .filter((step): step is Extract<PathStep, { readonly kind: "device" }> => step.kind === "device")
    .map(({ device, to }) => ({ device, terminal: to as TerminalName }));
}

/** More than a limit by more than the rounding of a computer. */
export const exceeds = (value: number, limit: number): boolean => value > limit + 1e-9;

/** "12", "7.5", "4.17". */
export const figure = (value: number): string => String(Math.round(value * 100) / 100);

export const sumOf = (uses: readonly CircuitUse[], field: "amps" | "watts"): number =>
  uses.reduce((sum, use) => sum + use[field], 0);

/** What a pole of a breaker feeds: two legs of one two-pole breaker are two. */
export const onPole = (uses: readonly CircuitUse[], breaker: DeviceId, terminal: TerminalName): readonly CircuitUse[] =>
  uses.filter(({ through }) => through.some((one) => one.device === breaker && one.terminal === terminal));

/** What draws its current through a device, a switch for instance. */
export const throughDevice = (uses: readonly CircuitUse[], id: DeviceId): readonly CircuitUse[] =>
  uses.filter(({ through }) => through.some(({ device }) => device === id));
