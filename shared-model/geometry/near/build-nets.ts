import type { Enclosure } from "../../model/enclosure.ts";
import { type EndKey, jumperEnd } from "../../model/ids.ts";
import type { At } from "../../model/place.ts";
import { inOrder } from "../../queries/in-order.ts";
import { FIRST_LANE } from "../metrics.ts";
import { type BoxPlan, kindOfEnd, type Layer, type Layers, placeOf, type Stack, type Stub } from "./box-plan.ts";
import type { EntryPlan } from "./entries.ts";
import { type Facing, kindOfConductor, type Net, type Port } from "./net.ts";
import { isLikely } from "./only-there.ts";
import { codeOf, plateName, plateWidth } from "./plate-text.ts";
import { bondSpot, capSpot, type Spot, stackSpot, terminalSpots } from "./spots.ts";

/**
 * Conductors of the box as nets between ports. Rows of splices, screws and loose bodies are still open. What waits in the
 * box as it is there, and is planned as joined, keeps the room of its cap as well.
 */
export function buildNets(layers: Layers, there: Enclosure): BoxPlan {
  const { enclosure, installation, entries } = layers;
  const plan: BoxPlan = {
    ...layers,
    there,
    nets: [],
    bodies: [],
    stubs: [],
    wallPorts: new Map(layers.entries.map((entry) => [entry, []])),
  };
  const spots = terminalSpots(plan);
  const stackById = new Map<string, { stack: Stack; layer: Layer }>();
  for (const layer of [plan.leftColumn, plan.rightColumn])
    for (const stack of layer.stacks) stackById.set(stack.id, { stack, layer });
  const spotOf = (end: EndKey, other: Layer | undefined): Spot => {
    const at = placeOf(enclosure, end);
    if (at.kind === "splice") {
      const found = stackById.get(at.splice);
      if (found) return stackSpot(plan, found.stack, found.layer);
    }
    if (at.kind === "terminal") {
      const spot = spots.get(end);
      if (spot) return spot;
    }
    if (at.kind === "bond") return bondSpot(plan, other);
    return capSpot(plan, other);
  };
  const passing = new Map<string, { readonly entry: EntryPlan; readonly port: Port }>();
  for (const entry of entries) {
    addEntryNets(plan, entry, spotOf, passing);
    addStubs(plan, entry);
  }
  for (const jumper of inOrder(enclosure.jumpers)) {
    const ends = [jumperEnd(jumper.id, "a"), jumperEnd(jumper.id, "b")] as const;
    const [aKind, bKind] = ends.map((end) => placeOf(enclosure, end).kind);
    // The firm place first, so that a cap or the bond knows from which side its conductor comes.
    const soft = (kind: string | undefined) => kind === "bond" || kind === "capped" || kind === "loose";
    const first = soft(aKind) && !soft(bKind) ? 1 : 0;
    const spotsOfEnds: Spot[] = [];
    spotsOfEnds[first] = spotOf(ends[first], undefined);
    // Alone, with both ends under caps, it lies level between them.
    const both = soft(aKind) && soft(bKind) && aKind !== "bond" && bKind !== "bond";
    spotsOfEnds[1 - first] = both
      ? (spotsOfEnds[first] as Spot)
      : spotOf(ends[1 - first] ?? ends[0], spotsOfEnds[first]?.layer);
    const [a, b] = spotsOfEnds as [Spot, Spot];
    const markedAs = ends.map((end) => enclosure.places[end]?.markedAs);
    const name = `${plateName(jumper.name)} ${codeOf(jumper.colour, markedAs[0] ?? markedAs[1])}`;
    const width = plateWidth(name);
    const pa = a.make(ends[0], both ? 1 : facingOf(plan, a, b), width, "jumper");
    const pb = b.make(ends[1], both ? -1 : facingOf(plan, b, a), width, "jumper");
    const net: Net = {
      key: `j.${jumper.id}`,
      kind: kindOfEnd(enclosure, installation, ends[0]),
      of: "jumper",
      jumper: jumper.id,
      ends,
      colour: jumper.colour,
      markedAs,
      grounding: jumper.colour === "bare" || jumper.colour === "green",
      code: name,
      name,
      a: pa,
      b: pb,
      run: 0,
      ...(isLikely(plan, ends) && { likely: true as const }),
      ...(both && { alone: true as const }),
    };
    a.take?.(ends[0], pa, net);
    b.take?.(ends[1], pb, net);
    plan.nets.push(net);
  }
  return plan;
}

/** The way a port faces: toward the other place; where both share a layer, toward the inside of the box. */
function facingOf(plan: BoxPlan, spot: Spot, other: Spot): Facing {
  if (spot.facing !== undefined) return spot.facing;
  if (other.layer.index !== spot.layer.index) return other.layer.index > spot.layer.index ? 1 : -1;
  return other.facing ?? (spot.layer === plan.rightColumn ? -1 : 1);
}

function addEntryNets(
  plan: BoxPlan,
  entry: EntryPlan,
  spotOf: (end: EndKey, other: Layer | undefined) => Spot,
  passing: Map<string, { readonly entry: EntryPlan; readonly port: Port }>,
): void {
  const { enclosure } = plan;
  const wall = entry.flank === "left" ? plan.layers[0] : plan.layers[plan.layers.length - 1];
  if (wall === undefined) return;
  entry.conductors.forEach(({ key, conductor, end, pass }, index) => {
    const port = wallPort(wall, entry);
    const twin = twinOf(key);
    const common = {
      of: "cable" as const,
      cable: entry.cable.id,
      conductor: key,
      colour: conductor.colour,
      grounding: conductor.grounding,
    };
    const owner = plateName(entry.cable.name);
    if (pass !== undefined) {
      const id = `${pass.id}.${key}`;
      const first = passing.get(id);
      if (first === undefined) {
        passing.set(id, { entry, port });
        return;
      }
      const code = codeOf(conductor.colour, undefined, twin);
      const net: Net = {
        ...common,
        key: `p.${id}`,
        kind: kindOfConductor(conductor),
        passThrough: pass.id,
        ends: [],
        markedAs: [],
        code,
        name: `${owner} ${code}`,
        a: first.port,
        b: port,
        run: 0,
      };
      plan.nets.push(net);
      plan.wallPorts.get(first.entry)?.push({ port: first.port, index, net });
      plan.wallPorts.get(entry)?.push({ port, index, net });
      return;
    }
    if (end === undefined) return;
    const at = placeOf(enclosure, end);
    const markedAs = enclosure.places[end]?.markedAs;
    if (isStub(at)) return;
    const name = `${owner} ${codeOf(conductor.colour, markedAs, twin)}`;
    const spot = spotOf(end, wall);
    const wallSpot: Spot = { layer: wall, make: () => port };
    const target = spot.make(end, facingOf(plan, spot, wallSpot), plateWidth(name), "cable");
    const net: Net = {
      ...common,
      key: `c.${end}`,
      kind: kindOfConductor(conductor),
      ends: [end],
      markedAs: [markedAs],
      code: codeOf(conductor.colour, undefined, twin),
      name,
      a: port,
      b: target,
      run: 0,
      ...(isLikely(plan, [end]) && { likely: true as const }),
    };
    spot.take?.(end, target, net);
    plan.nets.push(net);
    plan.wallPorts.get(entry)?.push({ port, index, net });
  });
}

const isStub = (at: At): at is Extract<At, { readonly kind: Stub["kind"] }> =>
  at.kind === "capped" || at.kind === "loose";

function addStubs({ there, stubs }: BoxPlan, entry: EntryPlan): void {
  entry.conductors.forEach(({ key, conductor, end, pass }, index) => {
    if (end === undefined || pass !== undefined) return;
    const at = placeOf(there, end);
    if (!isStub(at)) return;
    const text = codeOf(conductor.colour, there.places[end]?.markedAs, twinOf(key));
    stubs.push({ entry, index, end, kind: at.kind, text });
  });
}

/** A second conductor of the colour in its cable says so. */
const twinOf = (key: string): string => (/\d$/.test(key) ? " 2" : "");

/** A port in the wall: its row is kept in step with its sheath. */
const wallPort = (wall: Layer, entry: EntryPlan): Port => ({
  what: "wall",
  layer: wall.index,
  facing: entry.flank === "left" ? 1 : -1,
  row: 0,
  depth: 0,
  pad: FIRST_LANE,
});
