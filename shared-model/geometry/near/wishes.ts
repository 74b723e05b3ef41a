import { DEVICE_ROWS_ABOVE, DEVICE_ROWS_BELOW } from "../metrics.ts";
import type { BoxPlan, Layer } from "./box-plan.ts";
import { channelOf, type Net, type Port } from "./net.ts";

/** What row a conductor would like at its place. */
export interface Wish {
  readonly row: number;
  readonly kind: "exact" | "near" | "over" | "under";
  readonly weight?: number;
  /** Added to the row when members are put in order: links and those that pass another column stand last. */
  readonly rank?: number;
}

export interface Band {
  /** Last row over all devices, first row under them. */
  readonly over: number;
  readonly under: number;
}

export function bandOf(plan: BoxPlan): Band {
  let last = 0;
  for (const layer of plan.centre) if (layer.device) last = Math.max(last, layer.device.lastRow);
  if (plan.slots) last = Math.max(last, plan.slots.lastRow);
  return { over: -DEVICE_ROWS_ABOVE - 1, under: last + DEVICE_ROWS_BELOW + 1 };
}

export const otherPort = (net: Net, port: Port): Port => (net.a === port ? net.b : net.a);

/**
 * From top to bottom among what leaves a splice under the devices: to the green screw, so that its conductor crosses
 * none; across to the other wall; links; the bond and caps; last what must also pass under the other column.
 */
const RANK = { screw: 0, across: 20, link: 50, loose: 60, beyond: 100 } as const;

/** Row that a member of a stack would like: straight into what faces it, else over or under the devices. */
export function wishOf(plan: BoxPlan, net: Net, port: Port, band: Band): Wish {
  const other = otherPort(net, port);
  if (other.what === "screw") return { row: band.under, kind: "under", rank: RANK.screw };
  if (other.what === "bond") return { row: band.under, kind: "under", rank: RANK.loose };
  // An end that waits under a cap is no reason to take a joint from where it belongs.
  if (other.what === "cap") return { row: band.under, kind: "near", rank: RANK.loose };
  if (channelOf(other) === channelOf(port)) {
    if (other.facing === port.facing) return { row: other.row, kind: "near", rank: 0 };
    return { row: other.row, kind: "exact", weight: other.what === "hole" ? 2 : 1, rank: 0 };
  }
  const passesDevice = plan.centre.some((layer) => layer.kind !== "free" && passes(net, layer));
  if (!passesDevice) return { row: other.row, kind: "exact", weight: other.what === "hole" ? 2 : 0.8, rank: 0 };
  if (!goesUnder(plan, net, port, band)) return { row: band.over, kind: "over", rank: 0 };
  if (port.what === "splice" && other.what === "splice") {
    if (other.row >= band.under) return { row: other.row, kind: "exact", weight: 1, rank: RANK.link };
    return { row: band.under, kind: "under", rank: RANK.link };
  }
  // Joints of hots and neutrals stand level with the devices; it is the grounds of the other column that lie in the way.
  const column = plan.layers.some(
    (layer) => layer.kind === "column" && passes(net, layer) && layer.stacks.some(({ kind }) => kind === 2),
  );
  return { row: band.under, kind: "under", rank: column ? RANK.beyond : RANK.across };
}

/**
 * Grounds pass under the devices, hots over them; what goes to a hole goes the shorter way. Other neutrals pass under them
 * too, or beside the hole of their joint.
 */
function goesUnder(plan: BoxPlan, net: Net, port: Port, band: Band): boolean {
  if (net.kind === 2) return true;
  const middle = (band.over + band.under) / 2;
  for (const each of [net.a, net.b]) if (each.what === "hole") return each.row > middle;
  if (net.kind === 0) return false;
  if (plan.neutrals === "under") return true;
  for (const layer of plan.layers) {
    for (const stack of layer.stacks) {
      if (!stack.members.some((member) => member.port === port)) continue;
      for (const member of stack.members) {
        const other = otherPort(member.net, member.port);
        if (other.what === "hole") return other.row > middle;
      }
    }
  }
  return true;
}

export function passes(net: Net, layer: Layer): boolean {
  const low = Math.min(channelOf(net.a), channelOf(net.b));
  const high = Math.max(channelOf(net.a), channelOf(net.b));
  return layer.index > low && layer.index <= high;
}
