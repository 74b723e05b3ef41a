import type { BoxDrawing, DeviceDrawing, HoleDrawing, Rect, TerminalDrawing, Wall } from "../box-drawing.ts";
import { DEVICE, PITCH } from "../metrics.ts";
import { fitText } from "../text-width.ts";
import { BAR_FOOT, type BoxPlan, type Stack } from "./box-plan.ts";
import type { DeviceShape, TerminalShape } from "./device-shape.ts";
import type { Frame } from "./frame.ts";
import { depthOf, SCREW_X } from "./spots.ts";
import { barOffset } from "./stack-cost.ts";
import { FINISH_WORDS } from "./words.ts";
import { yOf } from "./write-conductors.ts";

const BLOCKS: ReadonlySet<string> = new Set(["clamp-plate", "push-in", "lug"]);

export function writeDevices(plan: BoxPlan, frame: Frame): DeviceDrawing[] {
  const drawings: DeviceDrawing[] = [];
  for (const layer of plan.centre) if (layer.device) drawings.push(yokeDrawing(frame, layer.index, layer.device));
  for (const breaker of plan.slots?.breakers ?? []) {
    const { shape, facing, row, rows, terminalRows } = breaker;
    const body = slotRect(plan, frame, facing, row, rows);
    const { x, width } = body;
    const edge = facing < 0 ? x : x + width;
    const terminals = shape.terminals.map((terminal, index): TerminalDrawing => {
      let at = terminalRows[index] ?? row;
      const holes = terminal.holes.map((hole): HoleDrawing => {
        const count = Math.max(1, hole.ends.length);
        const y = yOf(frame, at + Math.floor((count - 1) / 2));
        at += count;
        const holeX = edge + facing * 11;
        return {
          hole: hole.hole,
          at: { x: holeX, y },
          from: facing < 0 ? "left" : "right",
          taken: hole.ends.length > 0,
        };
      });
      const screw = { x: edge - facing * 7, y: holes[0]?.at.y ?? 0 };
      const blockX = facing < 0 ? edge - 20 : edge - 18;
      return {
        ...words(terminal),
        // A slot has no room for it; the letter says the same.
        word: "",
        block: { x: blockX, y: screw.y - 8, width: 38, height: 16 },
        screw,
        holes,
        labelAt: { x: edge - facing * 23, y: screw.y + 4 },
        labelAnchor: facing < 0 ? "start" : "end",
      };
    });
    const inSlot = shape.type.family === "breaker" || shape.type.family === "fuse";
    drawings.push({
      ...common(shape),
      ...(inSlot && { name: fitText(shape.device.name, SLOT_NAME_WIDTH, 12, 700) }),
      body,
      face: { x: facing < 0 ? x + 44 : x + 6, y: body.y + 3, width: 38, height: body.height - 6 },
      labelAt: { x: facing < 0 ? x + width - 20 : x + 20, y: body.y + body.height / 2 + 4 },
      terminals,
    });
  }
  for (const layer of [plan.leftColumn, plan.rightColumn])
    for (const stack of layer.stacks)
      if (stack.bar) drawings.push(barDrawing(plan, frame, stack, frame.left[layer.index] ?? 0, layer.width));
  return drawings;
}

const SLOT_WIDTH = 88;

/** Body of a breaker that takes some rows, or a free space. */
function slotRect(plan: BoxPlan, frame: Frame, facing: -1 | 1, row: number, rows: number): Rect {
  const layer = plan.centre[0];
  const left = frame.left[layer?.index ?? 0] ?? 0;
  const x = facing < 0 ? left + 20 : left + (layer?.width ?? 0) - 20 - SLOT_WIDTH;
  return { x, y: yOf(frame, row) - 13, width: SLOT_WIDTH, height: (rows - 1) * PITCH + 26 };
}

export const writeFreeSlots = (plan: BoxPlan, frame: Frame): NonNullable<BoxDrawing["freeSlots"]> =>
  (plan.slots?.free ?? []).map(({ slot, facing, row }) => ({
    slot,
    at: slotRect(plan, frame, facing, row, (plan.slots?.slotRows ?? 2) - 1),
  }));

/** Words over a device stay clear of the lanes beside it; a slot of a panel has room for a short name. */
const WORDS_WIDTH = 196;
const SLOT_NAME_WIDTH = 40;

const common = (shape: DeviceShape) => ({
  device: shape.device.id,
  name: fitText(shape.device.name, WORDS_WIDTH, 15, 700),
  caption: fitText(shape.type.caption, WORDS_WIDTH, 12),
  type: shape.type.id,
  family: shape.type.family,
  glyph: shape.type.glyph,
});

const words = ({ terminal }: TerminalShape) => ({
  terminal: terminal.name,
  label: terminal.label,
  word: FINISH_WORDS[terminal.finish],
  finish: terminal.finish,
  entryKind: terminal.entryKind,
});

function yokeDrawing(frame: Frame, layerIndex: number, shape: DeviceShape): DeviceDrawing {
  const left = frame.left[layerIndex] ?? 0;
  const body: Rect = {
    x: left + DEVICE.blockOut,
    y: frame.zero + shape.top,
    width: DEVICE.width,
    height: shape.height,
  };
  // Between upper and lower blocks the face has the width of the body; beside single screws it has the height.
  const inEdges = shape.terminals.filter(({ edge }) => edge !== "bottom");
  const inCorners = inEdges.every(({ first, last }) => last <= 1 || first >= shape.lastRow - 1);
  const between = inCorners && inEdges.some(({ terminal }) => BLOCKS.has(terminal.entryKind));
  const top = body.y + (between ? 82 : 26);
  return {
    ...common(shape),
    body,
    face: between
      ? { x: body.x + 20, y: top, width: body.width - 40, height: body.height - 164 }
      : { x: body.x + 46, y: top, width: body.width - 92, height: body.height - 52 },
    labelAt: { x: body.x + body.width / 2, y: body.y - 28 },
    terminals: shape.terminals.map((terminal) => terminalDrawing(frame, left, body, terminal)),
  };
}

function terminalDrawing(frame: Frame, left: number, body: Rect, shape: TerminalShape): TerminalDrawing {
  const { terminal, edge } = shape;
  if (edge === "bottom") {
    const screw = { x: left + SCREW_X, y: body.y + body.height + 9 };
    return {
      ...words(shape),
      screw,
      holes: shape.holes.map(({ hole, ends }) => ({ hole, at: screw, from: "bottom" as Wall, taken: ends.length > 0 })),
      labelAt: { x: body.x + 40, y: body.y + body.height + 14 },
      labelAnchor: "start",
    };
  }
  const facing = edge === "left" ? -1 : 1;
  const bodyEdge = edge === "left" ? body.x : body.x + body.width;
  const blocked = BLOCKS.has(terminal.entryKind);
  const layerEdge = bodyEdge + facing * DEVICE.blockOut;
  const middle = yOf(frame, (shape.first + shape.last) / 2);
  const holes = shape.holes.map(
    ({ hole, row, ends }): HoleDrawing => ({
      hole,
      at: { x: layerEdge - facing * depthOf(terminal.entryKind), y: yOf(frame, row) },
      from: edge,
      taken: ends.length > 0,
    }),
  );
  const height = (shape.last - shape.first) * PITCH + 24;
  const block: Rect = {
    x: edge === "left" ? layerEdge : layerEdge - DEVICE.blockWidth,
    y: middle - height / 2,
    width: DEVICE.blockWidth,
    height,
  };
  const screwX = blocked ? layerEdge - facing * 26 : bodyEdge;
  return {
    ...words(shape),
    ...(blocked && { block }),
    screw: { x: screwX, y: blocked ? middle : (holes[0]?.at.y ?? middle) },
    holes,
    labelAt: { x: bodyEdge - facing * (blocked ? 24 : 12), y: middle - 1.5 },
    labelAnchor: edge === "left" ? "start" : "end",
  };
}

function barDrawing(plan: BoxPlan, frame: Frame, stack: Stack, left: number, width: number): DeviceDrawing {
  const shape = plan.barShapes.get(stack.id) as DeviceShape;
  const terminal = shape.terminals[0] as TerminalShape;
  const x = left + width / 2;
  const afterLast = stack.top + stack.rows - BAR_FOOT;
  const body: Rect = { x: left, y: yOf(frame, stack.top) - 13, width, height: (afterLast - stack.top) * PITCH + 28 };
  const holes: HoleDrawing[] = [];
  let row = stack.top;
  for (const hole of terminal.holes) {
    if (row >= afterLast) break;
    const member = stack.members.find((each) => each.hole === hole.hole);
    const at = { x, y: yOf(frame, member ? stack.top + barOffset(stack, member) : row) };
    const from = member && member.port.facing < 0 ? "left" : "right";
    holes.push({ hole: hole.hole, at, from, taken: hole.ends.length > 0 });
    row += Math.max(1, hole.ends.length);
  }
  return {
    ...common(shape),
    body,
    face: { x: body.x, y: body.y, width: 0, height: 0 },
    labelAt: { x, y: body.y - 18 },
    terminals: [
      {
        ...words(terminal),
        screw: { x, y: yOf(frame, afterLast) + 2 },
        holes,
        labelAt: { x, y: body.y + body.height + 14 },
        labelAnchor: "middle",
      },
    ],
  };
}
