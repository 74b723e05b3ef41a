import { DEVICE_ROWS_BELOW, SPLICE_ROWS_ABOVE, SPLICE_ROWS_BELOW } from "../metrics.ts";
import type { BoxPlan, Layer } from "./box-plan.ts";
import { channelOf, type Net, type Port } from "./net.ts";
import { placeBody } from "./place-loose.ts";
import { blockedRows, type Rows } from "./rows.ts";
import { isUpright } from "./upright-entries.ts";
import { bandOf, passes } from "./wishes.ts";

const BEND_PAIR = 2;
/** A conductor that crosses the others of its sheath, for each of them. */
const PASSED = 1;
const PER_ROW = 0.16;
const OFF_SPLICE = 1;
/** Grounds lie at the back and under the devices. */
const GROUND_OVER = 4;
/** Two conductors on one row from opposite sides of a channel bind the order of their lanes. */
const SAME_ROW = 1.2;

/**
 * Rows of everything that stands loose under the devices, and the row on which each conductor passes the layers between
 * two channels: straight from one of its ports if that row is free, else where it costs least. No row of a layer is
 * given twice, so nothing passes through a body or along another conductor.
 */
export function chooseRuns(plan: BoxPlan, avoid: ReadonlySet<string> = new Set()): ReadonlyMap<Layer, Rows> {
  const band = bandOf(plan);
  const rows = new Map<Layer, Rows>(plan.layers.map((layer) => [layer, blockedRows(plan, layer)]));
  for (const body of plan.bodies) placeBody(plan, body, rows, band.under);
  const used = new Map<string, number>();
  const sideKey = (channel: number, side: "l" | "r", row: number): string => `${channel}${side}${row}`;
  const note = (port: Port): void => {
    const key = sideKey(channelOf(port), port.facing > 0 ? "l" : "r", port.row);
    used.set(key, (used.get(key) ?? 0) + 1);
  };
  for (const net of plan.nets) for (const port of [net.a, net.b]) if (port.what !== "screw" && !net.alone) note(port);
  const passed = rowsPassed(plan);
  const [low, high] = rowSpan(plan);
  const open = plan.nets.filter((net) => needsRun(plan, net));
  open.sort((p, q) => urgency(p) - urgency(q) || p.kind - q.kind || (p.key < q.key ? -1 : 1));
  for (const net of open) {
    const layers = plan.layers.filter((layer) => passes(net, layer) || stands(net, layer));
    let best = { cost: Number.POSITIVE_INFINITY, row: high + 1 };
    for (let row = low; row <= high; row += 1) {
      if (!layers.every((layer) => rows.get(layer)?.isFree(row))) continue;
      if (!underItsScrew(plan, net, row) || avoid.has(`${net.key}~${row}`)) continue;
      const over = net.kind === 2 && row < band.under && layers.some((layer) => layer.device) ? GROUND_OVER : 0;
      const cost =
        runCost(net, row) + passed(net.a, row) + passed(net.b, row) + over + sameRow(net, row, used, sideKey);
      if (cost < best.cost - 1e-9) best = { cost, row };
    }
    net.run = best.row;
    for (const layer of layers) rows.get(layer)?.run(best.row, net);
    for (const port of [net.a, net.b]) {
      if (port.what === "screw") {
        port.row = best.row;
        note(port);
      }
    }
    const [from, to] = [channelOf(net.a), channelOf(net.b)].sort((p, q) => p - q) as [number, number];
    for (let channel = from; channel <= to; channel += 1) {
      // The run enters a channel from the layer between it and its other end.
      if (channel > from) used.set(sideKey(channel, "l", best.row), 1);
      if (channel < to) used.set(sideKey(channel, "r", best.row), 1);
    }
  }
  return rows;
}

const urgency = (net: Net): number =>
  net.a.row === net.b.row && net.a.what !== "screw" && net.b.what !== "screw" ? 0 : 1;

function needsRun(plan: BoxPlan, net: Net): boolean {
  if (net.alone) return false;
  return channelOf(net.a) !== channelOf(net.b) || plan.layers.some((layer) => stands(net, layer));
}

/** A screw under a device is reached along a row of its own layer. */
const stands = (net: Net, layer: Layer): boolean =>
  (net.a.what === "screw" && net.a.layer === layer.index) || (net.b.what === "screw" && net.b.layer === layer.index);

function underItsScrew(plan: BoxPlan, net: Net, row: number): boolean {
  for (const port of [net.a, net.b]) {
    if (port.what !== "screw") continue;
    const last = plan.layers[port.layer]?.device?.lastRow ?? 0;
    if (row < last + DEVICE_ROWS_BELOW + 1) return false;
  }
  return true;
}

/**
 * A conductor that turns up or down from the row of a sheath in the upper or lower wall crosses the others of that sheath
 * that lie there; those of a side wall nest.
 */
function rowsPassed(plan: BoxPlan): (port: Port, row: number) => number {
  const beside = new Map<Port, readonly [above: number, below: number]>();
  for (const [entry, ports] of plan.wallPorts)
    if (isUpright(entry))
      for (const { port, index } of ports) beside.set(port, [index, entry.conductors.length - 1 - index]);
  return (port, row) => {
    const [above, below] = beside.get(port) ?? [0, 0];
    return PASSED * (row < port.row ? above : row > port.row ? below : 0);
  };
}

function runCost(net: Net, row: number): number {
  let cost = 0;
  for (const port of [net.a, net.b]) {
    if (port.what === "screw") cost += 0.05 * row;
    else if (port.row !== row) {
      // Straight from the splice, so that the lane lies by the wall and not among the jumpers.
      cost += BEND_PAIR + PER_ROW * Math.abs(port.row - row) + (port.what === "splice" ? OFF_SPLICE : 0);
    }
  }
  return cost;
}

function sameRow(
  net: Net,
  row: number,
  used: ReadonlyMap<string, number>,
  key: (channel: number, side: "l" | "r", row: number) => string,
): number {
  let cost = 0;
  const a = channelOf(net.a);
  const b = channelOf(net.b);
  const low = Math.min(a, b);
  const high = Math.max(a, b);
  if (net.a.row !== row || net.b.row !== row) {
    if (used.has(key(low, "l", row)) && (a <= b ? net.a.row !== row : net.b.row !== row)) cost += SAME_ROW;
    if (used.has(key(high, "r", row)) && (a <= b ? net.b.row !== row : net.a.row !== row)) cost += SAME_ROW;
  }
  for (let channel = low; channel <= high; channel += 1) {
    if (channel > low && channel < high && (used.has(key(channel, "l", row)) || used.has(key(channel, "r", row))))
      cost += 1000;
  }
  return cost;
}

/** Rows worth looking at: those of all ports, and as many beyond as there are conductors. */
function rowSpan(plan: BoxPlan): [number, number] {
  const band = bandOf(plan);
  let low = band.over;
  let high = band.under;
  for (const net of plan.nets) {
    for (const port of [net.a, net.b]) {
      low = Math.min(low, port.row);
      high = Math.max(high, port.row);
    }
  }
  for (const layer of plan.layers) {
    for (const stack of layer.stacks) {
      low = Math.min(low, stack.top - SPLICE_ROWS_ABOVE);
      high = Math.max(high, stack.top + stack.rows + SPLICE_ROWS_BELOW);
    }
  }
  for (const body of plan.bodies) high = Math.max(high, body.row + body.ports.length + 2);
  return [low - plan.nets.length - 1, high + plan.nets.length + 1];
}
