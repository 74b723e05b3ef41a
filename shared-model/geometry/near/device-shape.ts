import type { DeviceType } from "../../catalog/device-type.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import type { Device } from "../../model/device.ts";
import type { EndKey } from "../../model/ids.ts";
import { type PlacedTerminal, terminalsOf } from "../../queries/terminals-of.ts";
import { DEVICE, PITCH } from "../metrics.ts";

export type Edge = "left" | "right" | "bottom";

export interface HoleShape {
  readonly hole: number;
  /** Ends in it; one to a hole is right, more are drawn all the same. */
  readonly ends: readonly EndKey[];
  /** Row of the hole, and rows on which its ends arrive. */
  readonly row: number;
  readonly rows: readonly number[];
}

export interface TerminalShape {
  readonly terminal: PlacedTerminal;
  readonly edge: Edge;
  readonly holes: readonly HoleShape[];
  readonly first: number;
  readonly last: number;
}

/** A device as a body with rows; row 0 is its first hole row. */
export interface DeviceShape {
  readonly device: Device;
  readonly type: DeviceType;
  readonly terminals: readonly TerminalShape[];
  readonly lastRow: number;
  /** Top and height of the body in drawing units, from row 0. */
  readonly top: number;
  readonly height: number;
}

/** From the first hole row to the last: two blocks of two holes, and eleven rows between their first ones. */
const YOKE_ROWS = 12;
const SMALL_ROWS = 6;

/** Terminals whose side is not told by their metal: seen from the front, ground down. */
const EDGES: Readonly<Record<string, Readonly<Record<string, Edge>>>> = {
  "switch-3way": { T1: "left", T2: "right", C: "right" },
  "switch-4way": { A1: "left", B1: "left", A2: "right", B2: "right" },
  "switch-double-pole": { L1: "left", T1: "left", L2: "right", T2: "right" },
  "switch-two": { C1: "right", C2: "right", L1: "left", L2: "left" },
  "switch-receptacle": { SW: "left", N: "left", H: "right", HS: "right" },
  "appliance-240": { L1: "right", L2: "left" },
  "disconnect-fused": { IN: "left", OUT: "right" },
};

/** Silver on the left, brass and black on the right, green below, as a device is seen from the front. */
export function edgeOf(type: DeviceType, terminal: PlacedTerminal): Edge {
  if (terminal.purpose === "ground") return "bottom";
  return EDGES[type.id]?.[terminal.name] ?? (terminal.purpose === "neutral" ? "left" : "right");
}

/** Rows of a device's terminals. `endsAt` gives the ends in a hole. */
export function shapeDevice(
  device: Device,
  endsAt: (terminal: PlacedTerminal, hole: number) => readonly EndKey[],
): DeviceShape {
  const type = getDeviceType(device.type);
  const terminals = terminalsOf(device);
  const holesOf = (terminal: PlacedTerminal): readonly (readonly EndKey[])[] =>
    Array.from({ length: terminal.holes }, (_, index) => endsAt(terminal, index + 1));
  const sides = (["left", "right"] as const).map((edge) =>
    terminals
      .filter((terminal) => edgeOf(type, terminal) === edge)
      .map((terminal) => ({ terminal, holes: holesOf(terminal) })),
  );
  const least = type.yokes > 0 ? YOKE_ROWS : SMALL_ROWS;
  const lastRow = Math.max(least, ...sides.map((side) => rowsNeeded(side.map(({ holes }) => span(holes)))));
  const shapes = sides.flatMap((side, index) => {
    const starts = spread(
      side.map(({ holes }) => span(holes)),
      lastRow,
      type.yokes > 0,
    );
    return side.map(({ terminal, holes }, nth) =>
      shapeTerminal(terminal, index === 0 ? "left" : "right", holes, starts[nth] ?? 0),
    );
  });
  const below = terminals
    .filter((terminal) => edgeOf(type, terminal) === "bottom")
    .map((terminal) => shapeTerminal(terminal, "bottom", holesOf(terminal), lastRow));
  return {
    device,
    type,
    terminals: [...shapes, ...below],
    lastRow,
    top: -DEVICE.aboveFirstRow,
    height: DEVICE.aboveFirstRow + lastRow * PITCH + DEVICE.belowLastRow,
  };
}

const span = (holes: readonly (readonly EndKey[])[]): number =>
  holes.reduce((sum, ends) => sum + Math.max(1, ends.length), 0);

/** Last row when blocks of these spans stand with two rows between them. */
const rowsNeeded = (spans: readonly number[]): number =>
  spans.reduce((sum, rows) => sum + rows, 0) + Math.max(0, spans.length - 1) * 2 - 1;

/** First row of each block: the first at the top, the last at the bottom; one alone at the top, or in the middle of a small body. */
function spread(spans: readonly number[], lastRow: number, yoke: boolean): number[] {
  const total = spans.reduce((sum, rows) => sum + rows, 0);
  if (spans.length === 1) return [yoke ? 0 : Math.floor((lastRow + 1 - total) / 2)];
  const free = lastRow + 1 - total;
  let used = 0;
  return spans.map((rows, index) => {
    const start = used + Math.round((free * index) / (spans.length - 1));
    used += rows;
    return start;
  });
}

function shapeTerminal(
  terminal: PlacedTerminal,
  edge: Edge,
  holes: readonly (readonly EndKey[])[],
  start: number,
): TerminalShape {
  let row = start;
  const shapes = holes.map((ends, index) => {
    const count = edge === "bottom" ? 1 : Math.max(1, ends.length);
    const rows = Array.from({ length: count }, (_, nth) => row + nth);
    const shape = { hole: index + 1, ends, row: row + Math.floor((count - 1) / 2), rows };
    row += count;
    return shape;
  });
  return { terminal, edge, holes: shapes, first: start, last: row - 1 };
}
