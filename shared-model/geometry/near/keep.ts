/** Room that something on one side of a channel takes: lanes on these rows keep this far away. */
export interface Keep {
  readonly channel: number;
  readonly side: "l" | "r";
  readonly low: number;
  readonly high: number;
  readonly pad: number;
  /** Room that is needed for a time only: of a cap that waits, or at a place that is still to be taken. Never both at once. */
  readonly while?: "waiting" | "joined";
}

/** What a row needs from side to side: while ends wait under their caps, and when they are where they are expected. */
export function roomAcross(keeps: readonly Keep[], row: number): number {
  let room = 0;
  for (const other of ["waiting", "joined"] as const) {
    const pads = { l: 0, r: 0 };
    for (const keep of keeps)
      if (keep.while !== other && keep.low <= row && row <= keep.high)
        pads[keep.side] = Math.max(pads[keep.side], keep.pad);
    room = Math.max(room, pads.l + pads.r);
  }
  return room;
}
