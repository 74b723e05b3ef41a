import { type EnclosureId, type EndKey, parseEnd } from "../../model/ids.ts";
import { EARTH, type Probe } from "./circuit.ts";
import type { EnclosureNets } from "./enclosure-nets.ts";
import type { PlacedNets, Wiring } from "./wiring.ts";

/** Places of a wiring by node and nodes by place; each index is made when first asked for. */
export class Places {
  readonly wiring: Wiring;
  private homes: ReadonlyMap<string, EnclosureId> | undefined;
  private byNode: readonly (readonly Probe[])[] | undefined;

  constructor(wiring: Wiring) {
    this.wiring = wiring;
  }

  nodeOf(place: Probe): number | undefined {
    switch (place.kind) {
      case "earth":
        return EARTH;
      case "device":
        return this.within(this.homeOf(place.device), (nets) => nets.netOfNode(place.device, place.node));
      case "panel":
        return this.within(place.panel, (nets) => nets.netOfNode("", place.node));
      case "splice":
        return this.within(this.homeOf(place.splice), (nets) => nets.netOfSplice(place.splice));
      case "bond":
        return this.within(place.enclosure, (nets) => nets.netOfPoint[0]);
      case "end":
        return this.within(this.homeOf(ownerOf(place.end)), (nets) => nets.netOfEnd(place.end));
    }
  }

  get atNodes(): readonly (readonly Probe[])[] {
    this.byNode ??= this.makeByNode();
    return this.byNode;
  }

  private within(
    enclosure: EnclosureId | undefined,
    netIn: (nets: EnclosureNets) => number | undefined,
  ): number | undefined {
    const placed = enclosure === undefined ? undefined : this.wiring.enclosures.get(enclosure);
    const net = placed === undefined ? undefined : netIn(placed.nets);
    return placed === undefined || net === undefined ? undefined : placed.base + net;
  }

  private homeOf(id: string): EnclosureId | undefined {
    this.homes ??= homesIn(this.wiring);
    return this.homes.get(id);
  }

  private makeByNode(): readonly (readonly Probe[])[] {
    const found: Probe[][] = Array.from({ length: this.wiring.nodeCount }, () => []);
    for (const placed of this.wiring.enclosures.values())
      for (const [net, probe] of probesOf(placed)) found[placed.base + net]?.push(probe);
    return found;
  }
}

/** Enclosure of each device, splice and jumper, and of each side of a cable. */
function homesIn({ scope }: Wiring): ReadonlyMap<string, EnclosureId> {
  const homes = new Map<string, EnclosureId>();
  for (const { id, devices, splices, jumpers } of scope.enclosures)
    for (const table of [devices, splices, jumpers]) for (const key in table) homes.set(key, id);
  for (const { id, sides } of scope.cables) {
    for (const side of ["a", "b"] as const) {
      const where = sides[side];
      if ("enclosure" in where) homes.set(`${id} ${side}`, where.enclosure);
    }
  }
  return homes;
}

function ownerOf(end: EndKey): string {
  const parsed = parseEnd(end);
  if (parsed === undefined) return "";
  return parsed.of === "jumper" ? parsed.jumper : `${parsed.cable} ${parsed.side}`;
}

function* probesOf({ nets }: PlacedNets): Generator<readonly [net: number, probe: Probe]> {
  const { enclosure, points, netOfPoint, netOfEnd } = nets;
  for (const [index, point] of points.entries()) {
    const net = netOfPoint[index] as number;
    if (point.kind === "bond") yield [net, { kind: "bond", enclosure: enclosure.id }];
    else if (point.kind === "panel") yield [net, { kind: "panel", panel: enclosure.id, node: point.node }];
    else if (point.kind === "device") yield [net, { kind: "device", device: point.device.id, node: point.node }];
    else if (point.kind === "splice") yield [net, point];
  }
  for (const key in enclosure.places) {
    const end = key as EndKey;
    const net = netOfEnd(end);
    if (net !== undefined) yield [net, { kind: "end", end }];
  }
}
