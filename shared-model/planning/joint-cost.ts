import type { Enclosure } from "../model/enclosure.ts";
import { type EndKey, type JumperId, jumperEnd, type Side } from "../model/ids.ts";
import type { SpliceMember } from "../queries/connector-takes.ts";
import type { WireSize } from "../units/wire-size.ts";
import { pointKey } from "./box-nets.ts";
import type { Port } from "./joint-group.ts";

/** A new splice counts as so many moves, an end in bad condition as so many more. Values of the model, not of the trade. */
export const COST_OF_SPLICE = 2;
const COST_OF_RISK = 3;

/** A jumper that exists in a slot; `flipped` says that its end b is at the first side. */
export interface Filled {
  readonly jumper: JumperId;
  readonly flipped: boolean;
}

/** What moving an end costs: taking it off what it is on, putting it there, and more where it may break. */
export function costOfMove({ places }: Enclosure, end: EndKey): number {
  const place = places[end];
  const isOn = place !== undefined && pointKey(place.at) !== undefined;
  const isRisky = place?.condition !== undefined && place.condition !== "good";
  return 1 + (isOn ? 1 : 0) + (isRisky ? COST_OF_RISK : 0);
}

/**
 * How many of the ends of a jumper are in splices, where both are on something. A pigtail is cut and bent for a terminal, a
 * link for two splices: each stays what it is, as common practice has it.
 */
export function splicesJoined({ places }: Enclosure, id: JumperId): number | undefined {
  const kinds = (["a", "b"] as const).map((side) => places[jumperEnd(id, side)]?.at.kind);
  if (kinds.some((kind) => kind === undefined || kind === "capped" || kind === "loose")) return undefined;
  return kinds.filter((kind) => kind === "splice").length;
}

/** What it costs to take an end off for good. */
export const costOfTakingOff = ({ places }: Enclosure, end: EndKey): number => {
  const at = places[end]?.at;
  return at !== undefined && pointKey(at) !== undefined ? 1 : 0;
};

export const endAt = ({ jumper, flipped }: Filled, side: number): EndKey =>
  jumperEnd(jumper, ((side === 0) !== flipped ? "a" : "b") satisfies Side);

export const newJumper = (awg: WireSize, grounding: boolean): SpliceMember => ({
  awg,
  material: "copper",
  stranded: false,
  grounding,
});

export function isAtPort(point: string | undefined, port: Port): boolean {
  if (point === undefined) return false;
  if (port.kind === "bond") return point === "b";
  return port.terminals.some((terminal) => point === `t ${port.device}.${terminal}`);
}
