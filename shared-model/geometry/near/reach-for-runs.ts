import { SPLICE_ROWS_ABOVE, SPLICE_ROWS_BELOW } from "../metrics.ts";
import type { BoxPlan, Layer, Stack } from "./box-plan.ts";
import { channelOf } from "./net.ts";
import type { Rows } from "./rows.ts";

/** Rows that a capsule may be drawn out by. */
const REACH = 3;

/**
 * Draws the outermost rows of a splice out to the runs of their conductors, where that leaves room: the capsule grows by
 * a few rows and the conductor loses four bends.
 */
export function reachForRuns(plan: BoxPlan, rowsOf: ReadonlyMap<Layer, Rows>): void {
  for (const layer of plan.layers) {
    layer.stacks.forEach((stack, at) => {
      if (stack.bar) return;
      const next = layer.stacks[at + 1];
      const before = layer.stacks[at - 1];
      for (let index = stack.members.length - 1; index >= 0; index -= 1) {
        const { port, net } = stack.members[index] as (typeof stack.members)[number];
        if (channelOf(net.a) === channelOf(net.b) || net.run === port.row) break;
        const floor = (stack.members[index + 1]?.port.row ?? Number.POSITIVE_INFINITY) - 1;
        if (net.run < port.row || net.run - port.row > REACH || net.run > floor) break;
        if (rowsOf.get(layer)?.isCrossed(port.row + 1, net.run + SPLICE_ROWS_BELOW, net)) break;
        if (next && net.run + SPLICE_ROWS_ABOVE + SPLICE_ROWS_BELOW + 1 > next.top) break;
        port.row = net.run;
      }
      for (let index = 0; index < stack.members.length; index += 1) {
        const { port, net } = stack.members[index] as (typeof stack.members)[number];
        if (channelOf(net.a) === channelOf(net.b) || net.run === port.row) break;
        const ceiling = (stack.members[index - 1]?.port.row ?? Number.NEGATIVE_INFINITY) + 1;
        if (net.run > port.row || port.row - net.run > REACH || net.run < ceiling) break;
        if (rowsOf.get(layer)?.isCrossed(net.run - SPLICE_ROWS_ABOVE, port.row - 1, net)) break;
        if (before && net.run - SPLICE_ROWS_ABOVE - SPLICE_ROWS_BELOW - 1 < lastRowOf(before)) break;
        port.row = net.run;
      }
      const rows = stack.members.map(({ port }) => port.row);
      if (rows.length === 0) return;
      stack.top = Math.min(...rows);
      stack.rows = Math.max(...rows) - stack.top + 1;
    });
  }
}

const lastRowOf = (stack: Stack): number => stack.top + stack.rows - 1;
