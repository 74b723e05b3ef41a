import type { Enclosure } from "../model/enclosure.ts";
import { type CableId, type ConductorKey, cableEnd, type EndKey } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { type CableIn, cablesInto } from "../queries/cables-into.ts";
import type { Colour } from "../units/colour.ts";
import type { WireSize } from "../units/wire-size.ts";
import {
  type GroupRole,
  groundKeysOf,
  hotKeysOf,
  isNeutralColour,
  type JointGroup,
  neutralKeysOf,
  type Port,
} from "./joint-group.ts";

/** Side of the ground-fault device of the box: L is its LINE, D what is behind it. */
export type BoxSide = "L" | "D";

interface Growing {
  readonly role: GroupRole;
  readonly ends: EndKey[];
  readonly ports: Port[];
  colour: Colour;
}

/** A cable that enters the box, with the ends that it has there. */
export interface CableHere extends CableIn {
  readonly hots: readonly ConductorKey[];
  readonly neutrals: readonly ConductorKey[];
  readonly grounds: readonly ConductorKey[];
  end(key: ConductorKey): EndKey;
}

/** Puts the nets of one box together by name, and remembers which ends of its cables have a use. */
export class GroupBuilder {
  readonly enclosure: Enclosure;
  readonly cables: ReadonlyMap<CableId, CableHere>;
  readonly #groups = new Map<string, Growing>();
  readonly #used = new Set<EndKey>();
  readonly #order: ReadonlyMap<CableId, number>;
  /** Whites that carry a hot. */
  readonly reidentified = new Set<EndKey>();

  constructor(installation: Installation, enclosure: Enclosure, supply?: CableId) {
    this.enclosure = enclosure;
    const here = cablesInto(installation.cables, enclosure.id).map(cableHere);
    this.cables = new Map(here.map((one) => [one.cable.id, one]));
    const first = here.filter(({ cable }) => cable.id === supply);
    const order = [...first, ...here.filter(({ cable }) => cable.id !== supply)];
    this.#order = new Map(order.map(({ cable }, index) => [cable.id, index]));
  }

  add(
    name: string,
    role: GroupRole,
    what: { readonly end: EndKey; readonly colour: Colour } | { readonly port: Port },
  ): void {
    const group = this.#groups.get(name) ?? { role, ends: [], ports: [], colour: USUAL_COLOUR[role] };
    this.#groups.set(name, group);
    if ("port" in what) {
      group.ports.push(what.port);
      return;
    }
    if (group.ends.length === 0 && role === "hot" && !isNeutralColour(what.colour)) group.colour = what.colour;
    group.ends.push(what.end);
    this.#used.add(what.end);
    if (role === "hot" && isNeutralColour(what.colour)) this.reidentified.add(what.end);
  }

  conductor(name: string, role: GroupRole, here: CableHere, key: ConductorKey | undefined): void {
    const colour = key === undefined ? undefined : here.cable.conductors[key]?.colour;
    if (key !== undefined && colour !== undefined) this.add(name, role, { end: here.end(key), colour });
  }

  port(name: string, role: GroupRole, port: Port | undefined): void {
    if (port !== undefined) this.add(name, role, { port });
  }

  /** Ends of cables that no group holds. */
  spare(): readonly EndKey[] {
    return [...this.cables.values()].flatMap((here) =>
      [...here.hots, ...here.neutrals, ...here.grounds].map(here.end).filter((end) => !this.#used.has(end)),
    );
  }

  groups(leastOf: (role: GroupRole) => WireSize | undefined, multiwire: boolean): readonly JointGroup[] {
    return [...this.#groups].map(([name, { role, ends, ports, colour }]) => {
      const leastAwg = leastOf(role);
      return {
        name,
        role,
        ends: [...ends].sort((p, q) => this.#rank(p) - this.#rank(q)),
        ports,
        colour,
        ...(leastAwg !== undefined && { leastAwg }),
        ...(role === "neutral" && multiwire && { multiwire: true as const }),
      };
    });
  }

  #rank = (end: EndKey): number => this.#order.get(end.slice(0, end.indexOf(".")) as CableId) ?? 0;
}

const USUAL_COLOUR: Readonly<Record<GroupRole, Colour>> = { hot: "black", neutral: "white", ground: "bare" };

const cableHere = (one: CableIn): CableHere => ({
  ...one,
  hots: hotKeysOf(one.cable) as readonly ConductorKey[],
  neutrals: neutralKeysOf(one.cable) as readonly ConductorKey[],
  grounds: groundKeysOf(one.cable) as readonly ConductorKey[],
  end: (key) => cableEnd(one.cable.id, key, one.side),
});
