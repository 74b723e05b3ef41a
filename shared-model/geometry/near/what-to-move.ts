import type { BoxPlan } from "./box-plan.ts";
import { channelOf, type Net, type Port } from "./net.ts";
import type { Piece } from "./order-lanes.ts";

/**
 * Two conductors meet one row from opposite sides, in a channel where the one that should turn off first cannot: what
 * has to stand on another row. A run moves before a splice, a splice before the sheaths of a wall.
 */
export function whatToMove(plan: BoxPlan, [left, right]: readonly [Piece, Piece]): string {
  const rows = [left.from, left.to].filter((meeting) => meeting.side === "r").map((meeting) => meeting.row);
  const row = [right.from, right.to].find((meeting) => meeting.side === "l" && rows.includes(meeting.row))?.row ?? 0;
  for (const piece of [left, right]) {
    const port = portAt(piece, row);
    if (port === undefined || port.what === "screw") return `${piece.net.key}~${row}`;
  }
  for (const piece of [left, right]) {
    const port = portAt(piece, row);
    for (const layer of plan.layers)
      for (const stack of layer.stacks)
        if (stack.members.some((member) => member.port === port)) return `${stack.id}@${stack.top}`;
  }
  const walls = plan.layers.length - 1;
  for (const piece of [left, right]) {
    const port = portAt(piece, row);
    if (port?.what !== "wall") continue;
    const wall = port.layer === 0 ? "left" : "right";
    const first = plan.entries.find((entry) => entry.flank === wall);
    return `wall${port.layer === walls ? 1 : 0}@${first?.block ?? 0}`;
  }
  return `${left.net.key}~${row}`;
}

/** The port of a piece on this row of its channel; nothing where its run meets it. */
function portAt(piece: Piece, row: number): Port | undefined {
  const { a, b }: Net = piece.net;
  return [a, b].find((port) => channelOf(port) === piece.channel && port.row === row);
}
