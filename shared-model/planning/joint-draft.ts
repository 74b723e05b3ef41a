import type { Enclosure } from "../model/enclosure.ts";
import { type DeviceId, type EndKey, type JumperId, jumperEnd } from "../model/ids.ts";
import type { At } from "../model/place.ts";
import type { Installation } from "../model/project.ts";
import type { SpliceMember } from "../queries/connector-takes.ts";
import { getEndFacts } from "../queries/end-facts.ts";
import type { Arrangement, Slot } from "./arrangement.ts";
import { pointKey } from "./box-nets.ts";
import type { ConnectorStock } from "./connector-stock.ts";
import { endAt, type Filled, isAtPort, newJumper } from "./joint-cost.ts";
import type { JointGroup, Port } from "./joint-group.ts";
import type { JointPlan, PlannedAt, PlannedJumper, PlannedSplice } from "./joint-plan.ts";
import type { Landing } from "./landing.ts";

const CAPPED: At = { kind: "capped" };

/** Gathers what the parts of a box come to. */
export class JointDraft {
  readonly #splices: PlannedSplice[] = [];
  readonly #jumpers: PlannedJumper[] = [];
  readonly #moved = new Map<EndKey, PlannedAt>();
  readonly #kept = new Set<JumperId>();
  readonly #splicesOf = new Map<number, number[]>();
  readonly #takenHoles = new Set<string>();

  constructor(
    private readonly installation: Installation,
    private readonly enclosure: Enclosure,
    private readonly groups: readonly JointGroup[],
    private readonly landings: readonly Landing[],
    private readonly stock: ConnectorStock,
  ) {}

  /** @param groups Numbers of the groups that were arranged together. */
  add(groups: readonly number[], slots: readonly Slot[], arrangement: Arrangement): void {
    const { homes, filled, binOfEnd, binOfSlot } = arrangement;
    const numberOf = new Map<string, number>();
    const ends = new Map<number, EndKey[]>();
    const fresh = new Map<number, SpliceMember[]>();
    groups.forEach((group, index) => {
      const row = homes[index] ?? [];
      const own = row.map((_, bin) => {
        const number = this.#splices.length + numberOf.size;
        numberOf.set(`${index} ${bin}`, number);
        ends.set(number, []);
        fresh.set(number, []);
        return number;
      });
      this.#splicesOf.set(group, own);
    });
    const place = (end: EndKey, to: PlannedAt): void => {
      if ("splice" in to) ends.get(to.splice)?.push(end);
      this.#place(end, to, numberOf, homes, groups);
    };
    groups.forEach((group, index) => {
      const { ends: cables, ports } = this.groups[group] as JointGroup;
      cables.forEach((end, number) => {
        const bin = binOfEnd[index]?.[number];
        if (bin !== undefined) place(end, { splice: numberOf.get(`${index} ${bin}`) as number });
        else place(end, { at: ports[0] === undefined ? CAPPED : this.#atPort(ports[0], end) });
      });
    });
    slots.forEach((slot, number) => {
      const { name, role, colour } = this.groups[groups[slot.group] as number] as JointGroup;
      const one: Filled | undefined = filled[number];
      const sides = slot.sides.map((side, at): PlannedAt => {
        if ("port" in side) return { at: this.#atPort(side.port, one && endAt(one, at)) };
        const bin = side.bin === "any" ? binOfSlot[number] : side.bin;
        return { splice: numberOf.get(`${side.group} ${bin}`) as number };
      }) as [PlannedAt, PlannedAt];
      if (one !== undefined) {
        this.#kept.add(one.jumper);
        sides.forEach((side, at) => {
          place(endAt(one, at), side);
        });
        return;
      }
      this.#jumpers.push({ group: name, awg: slot.awg, colour, sides });
      for (const side of sides)
        if ("splice" in side) fresh.get(side.splice)?.push(newJumper(slot.awg, role === "ground"));
    });
    groups.forEach((group, index) => {
      const { name } = this.groups[group] as JointGroup;
      (homes[index] ?? []).forEach((home, bin, all) => {
        const number = numberOf.get(`${index} ${bin}`) as number;
        const inIt = ends.get(number) ?? [];
        const members = [
          ...inIt.map((end) => getEndFacts(this.installation, this.enclosure, end)),
          ...(fresh.get(number) ?? []),
        ];
        const now = home === undefined ? undefined : this.enclosure.splices[home]?.connector;
        const connector = this.stock.choose(members, now)?.id ?? now ?? "unknown";
        this.#splices.push({
          group: name,
          word: all.length === 1 ? name : `${name}${bin + 1}`,
          ...(home !== undefined && { home }),
          connector,
          connectorChanges: connector !== now,
          ends: inIt,
          count: members.length,
        });
      });
    });
  }

  cap(end: EndKey): void {
    const at = this.enclosure.places[end]?.at;
    if (at !== undefined && pointKey(at) !== undefined) this.#moved.set(end, { at: CAPPED });
  }

  plan(jumpers: readonly JumperId[]): JointPlan {
    const removedJumpers = jumpers.filter((id) => !this.#kept.has(id));
    const removedEnds = removedJumpers.flatMap((id) => [jumperEnd(id, "a"), jumperEnd(id, "b")]);
    const moved = [...this.#moved];
    const attached = moved.filter(([, to]) => "splice" in to || pointKey(to.at) !== undefined);
    return {
      landings: this.groups.map((group, index) => ({
        group,
        landing: this.landings[index] as Landing,
        splices: this.#splicesOf.get(index) ?? [],
      })),
      splices: this.#splices,
      newJumpers: this.#jumpers,
      removedJumpers,
      keptJumpers: [...this.#kept],
      moved: this.#moved,
      moves: {
        detach: [...moved.map(([end]) => end), ...removedEnds].filter((end) => this.#isAttached(end)).length,
        attach: attached.length + 2 * this.#jumpers.length,
        newSplices: this.#splices.filter(({ home }) => home === undefined).length,
      },
    };
  }

  #isAttached(end: EndKey): boolean {
    const at = this.enclosure.places[end]?.at;
    return at !== undefined && pointKey(at) !== undefined;
  }

  #place(
    end: EndKey,
    to: PlannedAt,
    numberOf: ReadonlyMap<string, number>,
    homes: Arrangement["homes"],
    groups: readonly number[],
  ): void {
    const at = this.enclosure.places[end]?.at;
    if (at === undefined) return;
    const stays =
      "at" in to
        ? pointKey(at) === pointKey(to.at)
        : at.kind === "splice" &&
          groups.some((_, index) =>
            (homes[index] ?? []).some(
              (home, bin) => home === at.splice && numberOf.get(`${index} ${bin}`) === to.splice,
            ),
          );
    if (!stays) this.#moved.set(end, to);
  }

  /** The terminal that an end is on already, else the first one; the hole that it is in, else the first that is free. */
  #atPort(port: Port, end: EndKey | undefined): At {
    if (port.kind === "bond") return { kind: "bond" };
    const now = end === undefined ? undefined : this.enclosure.places[end]?.at;
    if (now?.kind === "terminal" && isAtPort(pointKey(now), port)) {
      this.#takenHoles.add(holeKey(now.device, now.terminal, now.hole));
      return now;
    }
    const [terminal] = port.terminals;
    if (terminal === undefined) throw new Error("A port has at least one terminal.");
    let hole = 1;
    while (this.#takenHoles.has(holeKey(port.device, terminal, hole))) hole += 1;
    this.#takenHoles.add(holeKey(port.device, terminal, hole));
    return { kind: "terminal", device: port.device, terminal, hole };
  }
}

const holeKey = (device: DeviceId, terminal: string, hole: number): string => `${device}.${terminal} ${hole}`;
