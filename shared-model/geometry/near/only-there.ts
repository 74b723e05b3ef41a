import type { EndKey } from "../../model/ids.ts";
import { type BoxPlan, type Layer, placeOf, type Stack } from "./box-plan.ts";
import type { DeviceShape } from "./device-shape.ts";
import { sizesOf } from "./words.ts";

/** Whether a conductor is only to be expected where the plan has it. */
export const isLikely = ({ enclosure, there }: BoxPlan, ends: readonly EndKey[]): boolean =>
  enclosure !== there && ends.some((end) => there.places[end]?.at !== enclosure.places[end]?.at);

/**
 * A plan of a box as it will probably be made up, with its rows and lanes chosen, reduced to what is there: everything
 * keeps its row, joints and pigtails that are still to come leave their room empty.
 */
export function onlyThere(plan: BoxPlan): BoxPlan {
  const stripped = new Map(plan.layers.map((layer) => [layer, stripLayer(plan, layer)]));
  const of = (layer: Layer): Layer => stripped.get(layer) ?? layer;
  return {
    ...plan,
    enclosure: plan.there,
    nets: plan.nets.filter(({ likely }) => !likely),
    layers: plan.layers.map(of),
    leftColumn: of(plan.leftColumn),
    rightColumn: of(plan.rightColumn),
    centre: plan.centre.map(of),
  };
}

/** The plan when all that is to be expected is there: what waits now is joined then. */
export const allLikely = (plan: BoxPlan): BoxPlan => ({
  ...plan,
  stubs: plan.stubs.filter(({ end, kind }) => placeOf(plan.enclosure, end).kind === kind),
});

function stripLayer(plan: BoxPlan, layer: Layer): Layer {
  const { there, installation } = plan;
  const stacks = layer.stacks.flatMap((stack): Stack[] => {
    if (stack.splice === undefined) return [stack];
    if (there.splices[stack.splice.id] === undefined) return [];
    const members = stack.members.filter(({ net }) => !net.likely);
    const rows = members.map(({ port }) => port.row);
    if (rows.length === 0) return [{ ...stack, members, rows: 1, sizes: "" }];
    const top = Math.min(...rows);
    const ends = members.map(({ end }) => end);
    return [{ ...stack, members, top, rows: Math.max(...rows) - top + 1, sizes: sizesOf(there, installation, ends) }];
  });
  return { ...layer, stacks, ...(layer.device && { device: stripDevice(plan, layer.device) }) };
}

/** Holes that are taken in the plan alone are free. */
function stripDevice(plan: BoxPlan, shape: DeviceShape): DeviceShape {
  const isThere = (end: EndKey): boolean => !isLikely(plan, [end]);
  const terminals = shape.terminals.map((terminal) => ({
    ...terminal,
    holes: terminal.holes.map((hole) => ({ ...hole, ends: hole.ends.filter(isThere) })),
  }));
  return { ...shape, terminals };
}
