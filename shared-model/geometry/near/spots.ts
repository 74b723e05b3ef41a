import type { EndKey } from "../../model/ids.ts";
import { PLATE } from "../metrics.ts";
import { type BoxPlan, type Layer, type LooseBody, placeOf, type Stack } from "./box-plan.ts";
import type { Facing, Net, Port } from "./net.ts";

/** Where an end may land, before the way it faces is known. */
export interface Spot {
  readonly layer: Layer;
  readonly make: (end: EndKey, facing: Facing, plate: number, net: "cable" | "jumper") => Port;
  /** Set where the place itself decides. */
  readonly facing?: Facing;
  readonly take?: (end: EndKey, port: Port, net: Net) => void;
}

/** From the edge of a capsule: gap, plate, and a little conductor before the first lane. */
const padFor = (plate: number): number => PLATE.gap + plate + 8;

export function stackSpot(plan: BoxPlan, stack: Stack, layer: Layer): Spot {
  const landing = (end: EndKey): number | undefined => {
    const at = placeOf(plan.enclosure, end);
    return stack.bar && at.kind === "terminal" ? at.hole : undefined;
  };
  return {
    layer,
    make: (_end, facing, plate) => ({
      what: "splice",
      layer: layer.index,
      facing,
      row: 0,
      depth: stack.bar ? 5 : layer.width > 22 ? (layer.width - 22) / 2 + 1 : 1,
      pad: padFor(plate),
    }),
    take: (end, port, net) => {
      const hole = landing(end);
      stack.members.push({ end, port, net, ...(hole !== undefined && { hole }) });
    },
  };
}

export function bondSpot(plan: BoxPlan, other: Layer | undefined): Spot {
  const layer = centreNear(plan, other);
  const existing = plan.bodies.find((body) => body.what === "bond");
  const body: LooseBody = existing ?? { what: "bond", layer, ports: [], x: 0, row: 0 };
  if (existing === undefined) plan.bodies.push(body);
  return looseSpot(body);
}

export function capSpot(plan: BoxPlan, other: Layer | undefined): Spot {
  const body: LooseBody = { what: "cap", layer: centreNear(plan, other), ports: [], x: 0, row: 0 };
  plan.bodies.push(body);
  return looseSpot(body);
}

function looseSpot(body: LooseBody): Spot {
  return {
    layer: body.layer,
    make: (_end, facing, plate) => ({
      what: body.what,
      layer: body.layer.index,
      facing,
      row: 0,
      depth: 0,
      pad: body.what === "cap" ? 16 : Math.max(16, plate - 30),
    }),
    take: (end, port, net) => {
      body.ports.push({ end, port, net });
    },
  };
}

/** The device layer nearest to where a conductor comes from: what stands loose stands under a device. */
function centreNear(plan: BoxPlan, other: Layer | undefined): Layer {
  const { centre } = plan;
  const first = centre[0];
  if (first === undefined) return plan.leftColumn;
  if (other === undefined) return first;
  return centre.reduce((best, layer) =>
    Math.abs(layer.index - other.index) < Math.abs(best.index - other.index) ? layer : best,
  );
}

/** Spots of all ends on terminals: of devices, breakers and bars. */
export function terminalSpots(plan: BoxPlan): Map<EndKey, Spot> {
  const spots = new Map<EndKey, Spot>();
  for (const layer of plan.centre) {
    if (layer.device === undefined) continue;
    for (const shape of layer.device.terminals) {
      for (const hole of shape.holes) {
        hole.ends.forEach((end, nth) => {
          if (shape.edge === "bottom") spots.set(end, screwSpot(layer, nth));
          else
            spots.set(
              end,
              holeSpot(
                layer,
                shape.edge === "left" ? -1 : 1,
                hole.rows[nth] ?? hole.row,
                hole.row,
                depthOf(shape.terminal.entryKind),
              ),
            );
        });
      }
    }
  }
  const breakerLayer = plan.centre[0];
  for (const breaker of plan.slots?.breakers ?? []) {
    breaker.shape.terminals.forEach((shape, index) => {
      let row = breaker.terminalRows[index] ?? breaker.row;
      for (const hole of shape.holes) {
        const holeRow = row + Math.floor(Math.max(0, hole.ends.length - 1) / 2);
        for (const end of hole.ends) {
          if (breakerLayer) spots.set(end, holeSpot(breakerLayer, breaker.facing, row, holeRow, 9));
          row += 1;
        }
        if (hole.ends.length === 0) row += 1;
      }
    });
  }
  for (const layer of [plan.leftColumn, plan.rightColumn]) {
    for (const stack of layer.stacks) {
      if (stack.bar === undefined) continue;
      for (const [end, place] of Object.entries(plan.enclosure.places) as [
        EndKey,
        { at: ReturnType<typeof placeOf> },
      ][])
        if (place.at.kind === "terminal" && place.at.device === stack.bar.id)
          spots.set(end, stackSpot(plan, stack, layer));
    }
  }
  return spots;
}

/** From the outer edge of its layer: a hole of a block, a screw on the body's edge, the end of a lead. */
export const depthOf = (entryKind: string): number => (entryKind === "side-screw" ? 20 : entryKind === "lead" ? 5 : 8);

function holeSpot(layer: Layer, facing: Facing, row: number, holeRow: number, depth: number): Spot {
  return {
    layer,
    facing,
    make: (_end, _facing, plate, of) => ({
      what: "hole",
      layer: layer.index,
      facing,
      row,
      depth,
      pad: of === "jumper" ? 16 : padFor(plate),
      ...(row !== holeRow && { holeRow }),
    }),
  };
}

/** x of the green screw from the left edge of its layer. */
export const SCREW_X = 122;

/** Ends that wrongly share the screw come up beside one another, clear of the bond on the left. */
const SCREW_SPREAD = [0, 16, 32, -16, -32, 48, 8, -8, 24, -24, 40, -40] as const;

function screwSpot(layer: Layer, nth: number): Spot {
  return {
    layer,
    make: (_end, facing, plate) => ({
      what: "screw",
      layer: layer.index,
      facing,
      row: 0,
      depth: 0,
      pad: Math.max(16, plate - 40),
      screw: { x: SCREW_X + (SCREW_SPREAD[nth % SCREW_SPREAD.length] ?? 0) + (nth < SCREW_SPREAD.length ? 0 : 4), nth },
    }),
  };
}
