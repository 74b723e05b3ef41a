import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Cable } from "../../model/cable.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import { type ConductorKey, cableEnd, otherSide, type Side } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { inOrder } from "../../queries/in-order.ts";
import { terminalsOf } from "../../queries/terminals-of.ts";
import { isWhite } from "../../rules/conductor-uses.ts";
import { joinedByWire } from "../../rules/wire-groups.ts";
import { enclosureGraph } from "../../solver/enclosure-graph.ts";
import type { Colour } from "../../units/colour.ts";

const wording = catalogue({
  bothDrawn: (cable: Part) => `Both sides of ${cable} are drawn. Draw the panel and run another cable to it.`,
  noneDrawn: (cable: Part) => `Neither side of ${cable} is drawn. Lead one of them to a box first.`,
  fromPanel: (cable: Part, panel: Part) =>
    `${cable} begins at ${panel}, which is drawn: what is not drawn is where it leads. Draw that box and move the end of ${cable} to it.`,
  oneConductor: (cable: Part) =>
    `${cable} is one conductor by itself, and a supply comes by two or more. Draw the panel by hand and run all conductors of the circuit to it.`,
  noHot: (cable: Part) => `${cable} has no conductor for a hot: it brings no supply. Pick the cable that does.`,
  noNeutral: (cable: Part) =>
    `${cable} has one hot and no neutral: it brings no supply by itself. Draw the panel by hand and run all conductors of the circuit to it.`,
  manyHots: (cable: Part, count: Part) =>
    `${cable} has ${count} hots, and one circuit has two at most. Draw the panel by hand, with a breaker for each circuit.`,
  travellers: (cable: Part, box: Part) =>
    `${cable} carries travellers from ${box}: its other side is at another switch and not at a panel. Draw that box and move the end of ${cable} to it.`,
});

interface HotWire {
  readonly key: ConductorKey;
  /** A white that is marked as a hot in its box. */
  readonly markedAs?: Colour;
}

/** What of a cable goes where in a panel. */
export interface SupplyWires {
  /** The side that leads out of the drawing. */
  readonly side: Side;
  /** Breakers by type, with the hots on each in the order of its terminals. */
  readonly poles: readonly { readonly type: "breaker-1" | "breaker-2"; readonly hots: readonly HotWire[] }[];
  readonly neutrals: readonly ConductorKey[];
  readonly grounds: readonly ConductorKey[];
}

/** What a cable would bring from a panel at its side that is not drawn; a sentence where it cannot be its supply. */
export function supplyWires({ enclosures }: Installation, cable: Cable): SupplyWires | string {
  const out = (["a", "b"] as const).filter((side) => "outside" in cable.sides[side]);
  const [side] = out;
  if (side === undefined) return wording.bothDrawn(cable.name);
  const near = cable.sides[otherSide(side)];
  if ("outside" in near) return wording.noneDrawn(cable.name);
  const box = enclosures[near.enclosure];
  if (box === undefined) throw new Error("A cable enters an enclosure that is there.");
  if (box.kind === "panel") return wording.fromPanel(cable.name, box.name);
  const { hots, neutrals, grounds } = byUse(box, cable, otherSide(side));
  if (hots.length + neutrals.length < 2 && grounds.length === 0) return wording.oneConductor(cable.name);
  if (hots.length === 0) return wording.noHot(cable.name);
  if (hots.length === 1 && neutrals.length === 0) return wording.noNeutral(cable.name);
  if (hots.length > 2) return wording.manyHots(cable.name, hots.length);
  if (hots.some(({ key }) => isTraveller(box, cable, key, otherSide(side))))
    return wording.travellers(cable.name, box.name);
  // Two hots on one white are a multiwire circuit, whose poles open together; each with a white of its own are two circuits.
  const isTwoCircuits = hots.length === 2 && neutrals.length > 1;
  const poles = isTwoCircuits
    ? hots.map((hot) => ({ type: "breaker-1" as const, hots: [hot] }))
    : [{ type: hots.length === 2 ? ("breaker-2" as const) : ("breaker-1" as const), hots }];
  return { side, poles, neutrals, grounds };
}

function byUse(box: Enclosure, cable: Cable, near: Side) {
  const hots: HotWire[] = [];
  const neutrals: ConductorKey[] = [];
  const grounds: ConductorKey[] = [];
  const keys = Object.entries(cable.conductors).sort(([, one], [, other]) => one.order - other.order);
  for (const [key, { colour, grounding }] of keys as [ConductorKey, (typeof keys)[number][1]][]) {
    const marked = box.places[cableEnd(cable.id, key, near)]?.markedAs;
    if (grounding) grounds.push(key);
    else if (isWhite(marked ?? colour)) neutrals.push(key);
    else hots.push({ key, ...(isWhite(colour) && marked !== undefined && { markedAs: marked }) });
  }
  return { hots, neutrals, grounds };
}

/** Wires join it to a traveller screw in the box. */
function isTraveller(box: Enclosure, cable: Cable, key: ConductorKey, near: Side): boolean {
  const graph = enclosureGraph(box);
  const groupOf = joinedByWire(box);
  const own = graph.pointOfEnd(cableEnd(cable.id, key, near));
  if (own === undefined) return false;
  return inOrder(box.devices).some((device) =>
    terminalsOf(device).some(({ name, purpose }) => {
      const point = purpose === "traveller" ? graph.pointOfNode(device.id, name) : undefined;
      return point !== undefined && groupOf(point) === groupOf(own);
    }),
  );
}
