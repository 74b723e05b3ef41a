import { type EndKey, type JumperId, jumperEnd, type SpliceId } from "../model/ids.ts";
import { getEndFacts } from "../queries/end-facts.ts";
import { membersOf } from "../queries/landings.ts";
import type { WireSize } from "../units/wire-size.ts";
import type { Arrangement, Formed, JumperSide, Search, Slot } from "./arrangement.ts";
import { pointKey } from "./box-nets.ts";
import { cannotBeOpened } from "./connector-stock.ts";
import {
  COST_OF_SPLICE,
  costOfMove,
  costOfTakingOff,
  endAt,
  type Filled,
  isAtPort,
  newJumper,
  splicesJoined,
} from "./joint-cost.ts";
import { suitsRole } from "./joint-group.ts";
import { type SharedBin, type SharedItem, shareOut } from "./share-out.ts";

/** A box holds few conductors; past so many tries the best so far is taken. */
const MOST_TRIES = 4_000;
/** Ways to keep splices that are looked at. */
const MOST_HOMES = 5_000;

type Homes = (SpliceId | undefined)[][];

/** The arrangement of some groups of one enclosure at the least cost; undefined where no connectors take
 * them so, or none costs less than `below`. */
export function cheapest(search: Search, below = Number.POSITIVE_INFINITY): Arrangement | undefined {
  return new Searching(search, below).run();
}

class Searching {
  readonly #search: Search;
  #best: Arrangement | undefined;
  readonly #below: number;
  #tries = 0;
  readonly #taken = new Map<string, boolean>();
  readonly #cableItems = new Map<EndKey, SharedItem>();
  readonly #joins: ReadonlyMap<JumperId, number | undefined>;

  constructor(search: Search, below: number) {
    this.#below = below;
    this.#search = search;
    this.#joins = new Map(search.jumpers.map((id) => [id, splicesJoined(search.enclosure, id)]));
  }

  run(): Arrangement | undefined {
    const candidates = this.#allHomes().map((homes) => ({ homes, least: this.#leastCost(homes) }));
    candidates.sort((a, b) => a.least - b.least);
    const floor = this.#leastOfJumpers([]);
    for (const { homes, least } of candidates) {
      if (least + floor >= this.#limit() || this.#tries > MOST_TRIES) break;
      this.#fill(homes, least, []);
    }
    return this.#best;
  }

  #limit = (): number => this.#best?.cost ?? this.#below;

  /** Every way to keep splices: each for one splice of a group that something in it belongs to, or for none. */
  #allHomes(): readonly Homes[] {
    const { formed, splices } = this.#search;
    let all: Homes[] = [formed.map(({ bins }) => Array.from({ length: bins }, () => undefined))];
    for (const splice of splices) {
      const groups = formed.flatMap((one, index) => (one.bins > 0 && this.#overlaps(splice, one) ? [index] : []));
      all = all.flatMap((homes) => [
        ...groups.flatMap((group) =>
          (homes[group] ?? []).flatMap((taken, bin) => {
            if (taken !== undefined) return [];
            const next = homes.map((row) => [...row]);
            (next[group] as (SpliceId | undefined)[])[bin] = splice;
            return [next];
          }),
        ),
        homes,
      ]);
      if (all.length > MOST_HOMES) break;
    }
    return all;
  }

  #overlaps(splice: SpliceId, { group }: Formed): boolean {
    const { enclosure, jumpers } = this.#search;
    const members = new Set(membersOf(enclosure, splice));
    if (group.ends.some((end) => members.has(end))) return true;
    return jumpers.some(
      (id) =>
        (members.has(jumperEnd(id, "a")) || members.has(jumperEnd(id, "b"))) &&
        suitsRole(enclosure.jumpers[id]?.colour ?? "black", group.role),
    );
  }

  /** New splices, and the cable ends that are in no splice of theirs. */
  #leastCost(homes: Homes): number {
    const { enclosure, formed } = this.#search;
    let cost = 0;
    formed.forEach(({ group, bins }, index) => {
      const kept = homes[index] ?? [];
      cost += COST_OF_SPLICE * kept.filter((home) => home === undefined).length;
      for (const end of group.ends) {
        const at = enclosure.places[end]?.at;
        if (bins === 0) {
          const isThere = at !== undefined && group.ports.some((port) => isAtPort(pointKey(at), port));
          cost += group.ports.length === 0 || isThere ? 0 : costOfMove(enclosure, end);
        } else if (at?.kind !== "splice" || !kept.includes(at.splice)) cost += costOfMove(enclosure, end);
      }
    });
    return cost;
  }

  /** Slots left over need new jumpers, jumpers left over come out: two ends each, whichever they are. */
  #leastOfJumpers(filled: readonly (Filled | undefined)[]): number {
    const used = new Set(filled.map((one) => one?.jumper));
    const surplus = [0, 0, 0];
    let anyKind = 0;
    for (const [id, joins] of this.#joins) {
      if (used.has(id)) continue;
      if (joins === undefined) anyKind += 1;
      else surplus[joins] = (surplus[joins] ?? 0) + 1;
    }
    for (const { sides } of this.#search.slots.slice(filled.length)) {
      const joins = sides.filter((side) => "group" in side).length;
      surplus[joins] = (surplus[joins] ?? 0) - 1;
    }
    const lacking = surplus.reduce((sum, count) => sum + Math.max(0, -count), 0);
    const over = surplus.reduce((sum, count) => sum + Math.max(0, count), 0);
    return 2 * Math.max(0, lacking - anyKind) + 2 * over;
  }

  /** Puts jumpers that exist into slots, one slot after the other, the cheapest first. */
  #fill(homes: Homes, cost: number, filled: (Filled | undefined)[]): void {
    if (cost + this.#leastOfJumpers(filled) >= this.#limit() || this.#tries > MOST_TRIES) return;
    this.#tries += 1;
    const slot = this.#search.slots[filled.length];
    if (slot === undefined) {
      this.#finish(homes, filled);
      return;
    }
    const used = new Set(filled.map((one) => one?.jumper));
    const choices: { readonly cost: number; readonly filled: Filled | undefined }[] = [
      { cost: this.#costOfSlot(homes, slot, undefined), filled: undefined },
    ];
    for (const jumper of this.#search.jumpers) {
      if (used.has(jumper) || !this.#fits(jumper, slot)) continue;
      for (const flipped of [false, true])
        choices.push({ cost: this.#costOfSlot(homes, slot, { jumper, flipped }), filled: { jumper, flipped } });
    }
    choices.sort((a, b) => a.cost - b.cost || Number(b.filled !== undefined) - Number(a.filled !== undefined));
    for (const choice of choices) this.#fill(homes, cost + choice.cost, [...filled, choice.filled]);
  }

  #fits(id: JumperId, { group, awg, sides }: Slot): boolean {
    const jumper = this.#search.enclosure.jumpers[id];
    const role = this.#search.formed[group]?.group.role;
    if (jumper === undefined || role === undefined) return false;
    const joins = this.#joins.get(id);
    if (joins !== undefined && joins !== sides.filter((side) => "group" in side).length) return false;
    return suitsRole(jumper.colour, role) && jumper.awg === awg && jumper.material === "copper" && !jumper.stranded;
  }

  /** At least: a pigtail may yet have to leave the splice that it is in. */
  #costOfSlot(homes: Homes, slot: Slot, filled: Filled | undefined): number {
    return slot.sides.reduce((sum, side, index) => {
      if (filled === undefined) return sum + 1;
      const end = endAt(filled, index);
      return sum + (this.#isThere(homes, end, side) ? 0 : costOfMove(this.#search.enclosure, end));
    }, 0);
  }

  #isThere(homes: Homes, end: EndKey, side: JumperSide): boolean {
    const at = this.#search.enclosure.places[end]?.at;
    if (at === undefined) return false;
    if ("port" in side) return isAtPort(pointKey(at), side.port);
    if (at.kind !== "splice") return false;
    const row = homes[side.group] ?? [];
    return side.bin === "any" ? row.includes(at.splice) : row[side.bin] === at.splice;
  }

  #finish(homes: Homes, filled: readonly (Filled | undefined)[]): void {
    const { enclosure, formed, slots, jumpers } = this.#search;
    const used = new Set(filled.map((one) => one?.jumper));
    let cost = 0;
    for (const id of jumpers)
      if (!used.has(id))
        for (const side of ["a", "b"] as const) cost += costOfTakingOff(enclosure, jumperEnd(id, side));
    const binOfEnd: (readonly number[])[] = [];
    const binOfSlot: (number | undefined)[] = slots.map(() => undefined);
    slots.forEach((slot, index) => {
      const one = filled[index];
      slot.sides.forEach((side, number) => {
        if (!("port" in side) && side.bin === "any") return;
        const isThere = one !== undefined && this.#isThere(homes, endAt(one, number), side);
        cost += isThere ? 0 : one === undefined ? 1 : costOfMove(enclosure, endAt(one, number));
      });
    });
    for (let index = 0; index < formed.length; index += 1) {
      const one = formed[index] as Formed;
      const kept = homes[index] ?? [];
      if (one.bins === 0) {
        binOfEnd.push([]);
        for (const end of one.group.ends) {
          const at = enclosure.places[end]?.at;
          const isThere = at !== undefined && one.group.ports.some((port) => isAtPort(pointKey(at), port));
          cost += one.group.ports.length === 0 || isThere ? 0 : costOfMove(enclosure, end);
        }
        continue;
      }
      cost += COST_OF_SPLICE * kept.filter((home) => home === undefined).length;
      if (cost >= this.#limit()) return;
      const pigtails = slots.flatMap(({ sides }, slot) =>
        sides.some((side) => "group" in side && side.group === index && side.bin === "any") ? [slot] : [],
      );
      const items = [
        ...one.group.ends.map((end) => this.#cableItem(end)),
        ...pigtails.map((slot) => this.#pigtailItem(slots[slot] as Slot, filled[slot])),
      ];
      const shared = shareOut(items, this.#binsOf(index, homes), this.#limit() - cost);
      if (shared === undefined) return;
      cost += shared.cost;
      binOfEnd.push(shared.binOf.slice(0, one.group.ends.length));
      pigtails.forEach((slot, number) => {
        binOfSlot[slot] = shared.binOf[one.group.ends.length + number];
      });
    }
    if (cost < this.#limit())
      this.#best = { cost, homes: homes.map((row) => [...row]), filled: [...filled], binOfEnd, binOfSlot };
  }

  /** Asked again and again of the same numbers of the same kinds. */
  #takes(key: string, choose: () => unknown): boolean {
    const known = this.#taken.get(key);
    if (known !== undefined) return known;
    const does = choose() !== undefined;
    this.#taken.set(key, does);
    return does;
  }

  #cableItem(end: EndKey): SharedItem {
    let item = this.#cableItems.get(end);
    if (item === undefined) {
      const { installation, enclosure } = this.#search;
      const at = enclosure.places[end]?.at;
      item = {
        member: getEndFacts(installation, enclosure, end),
        now: at?.kind === "splice" ? at.splice : undefined,
        move: costOfMove(enclosure, end),
        isCable: true,
      };
      this.#cableItems.set(end, item);
    }
    return item;
  }

  #pigtailItem(slot: Slot, filled: Filled | undefined): SharedItem {
    const { enclosure, formed } = this.#search;
    const end = filled && endAt(filled, 1);
    const at = end === undefined ? undefined : enclosure.places[end]?.at;
    return {
      member: newJumper(slot.awg, formed[slot.group]?.group.role === "ground"),
      now: at?.kind === "splice" ? at.splice : undefined,
      move: end === undefined ? 1 : costOfMove(enclosure, end),
      isCable: false,
    };
  }

  #binsOf(group: number, homes: Homes): readonly SharedBin[] {
    const { enclosure, formed, stock } = this.#search;
    const { linkAwg, group: own } = formed[group] as Formed;
    return (homes[group] ?? []).map((home, bin, all) => {
      const linked = linkAwg === undefined ? 0 : (bin > 0 ? 1 : 0) + (bin < all.length - 1 ? 1 : 0);
      const links = Array.from({ length: linked }, () => newJumper(linkAwg as WireSize, own.role === "ground"));
      const connector = home === undefined ? undefined : enclosure.splices[home]?.connector;
      const isClosed = home !== undefined && connector !== undefined && cannotBeOpened(connector);
      return {
        links,
        home,
        closed: isClosed ? membersOf(enclosure, home).length : undefined,
        accepts: (members, counts) =>
          isClosed ||
          this.#takes(`${group} ${linked} ${connector} ${counts}`, () => stock.choose(members(), connector)),
      };
    });
  }
}
