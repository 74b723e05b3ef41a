import { findConnector } from "../../shared-model/catalog/connectors.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import { type EndKey, type JumperId, jumperEnd, type SpliceId } from "../../shared-model/model/ids.ts";
import type { At } from "../../shared-model/model/place.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { type SpliceMember, takes } from "../../shared-model/queries/connector-takes.ts";
import { findEndFacts } from "../../shared-model/queries/end-facts.ts";

/**
 * A second, slow account of the fewest moves: every way to put the ends of some nets into splices that exist or new ones,
 * every chain of links, every jumper that exists in every place that one is needed, both ways round. Small boxes only.
 */

/** A net of one box: cable ends, and terminals that it must reach, as "device.TERMINAL". */
export interface SmallNet {
  readonly ends: readonly EndKey[];
  readonly ports: readonly string[];
}

interface Small {
  readonly installation: Installation;
  readonly box: Enclosure;
  readonly nets: readonly SmallNet[];
  readonly connectors: readonly string[];
  readonly awg: SpliceMember["awg"];
}

/** A jumper that is needed: where its ends go, as points. */
type Need = readonly [string, string];

interface Form {
  readonly homes: ReadonlySet<string>;
  /** Point of each cable end. */
  readonly at: ReadonlyMap<EndKey, string>;
  readonly needs: readonly Need[];
  readonly fresh: number;
}

const pointOf = (at: At | undefined): string =>
  at?.kind === "splice"
    ? `s ${at.splice}`
    : at?.kind === "terminal"
      ? `t ${at.device}.${at.terminal}`
      : at?.kind === "bond"
        ? "b"
        : "";

export function fewestMoves(small: Small): number {
  const forms = small.nets.map((net, index) => formsOf(small, net, index));
  let best = Number.POSITIVE_INFINITY;
  const combine = (chosen: readonly Form[]): void => {
    const options = forms[chosen.length];
    if (options === undefined) {
      best = Math.min(best, costOf(small, chosen, best));
      return;
    }
    for (const form of options)
      if (![...form.homes].some((home) => chosen.some(({ homes }) => homes.has(home)))) combine([...chosen, form]);
  };
  combine([]);
  return best;
}

function formsOf(small: Small, { ends, ports }: SmallNet, number: number): readonly Form[] {
  const none = { homes: new Set<string>(), needs: [], fresh: 0 };
  if (ends.length === 0)
    return [{ ...none, at: new Map(), needs: ports.length === 2 ? [[`t ${ports[0]}`, `t ${ports[1]}`]] : [] }];
  if (ends.length === 1 && ports.length < 2)
    return [{ ...none, at: new Map(ends.map((end) => [end, ports.length === 0 ? "" : `t ${ports[0]}`])) }];
  const items = [...ends, ...ports.map((port) => `t ${port}`)];
  const splices = Object.keys(small.box.splices).map((id) => `s ${id}`);
  const forms: Form[] = [];
  const fresh = Array.from({ length: 3 }, (_, index) => `new ${number} ${index}`);
  const spread = (placed: readonly string[]): void => {
    if (placed.length === items.length) {
      const bins = [...new Set(placed)];
      if (bins.length <= 3) for (const order of permutations(bins)) addForm(order, placed);
      return;
    }
    const used = fresh.filter((name) => placed.includes(name)).length;
    for (const bin of [...splices, ...fresh.slice(0, used + 1)]) spread([...placed, bin]);
  };
  const addForm = (order: readonly string[], placed: readonly string[]): void => {
    const isSound = order.every((bin, at) => {
      const links = (at > 0 ? 1 : 0) + (at < order.length - 1 ? 1 : 0);
      const members = items.flatMap((item, index) => (placed[index] === bin ? [memberOf(small, item)] : []));
      const all = [...members, ...Array.from({ length: links }, () => fresh12(small))];
      const home = bin.startsWith("s ") ? small.box.splices[bin.slice(2) as SpliceId]?.connector : undefined;
      return [...small.connectors, ...(home === undefined ? [] : [home])].some((id) => {
        const connector = findConnector(id);
        return connector !== undefined && takes(connector, all);
      });
    });
    if (!isSound) return;
    const at = new Map(ends.map((end, index) => [end, placed[index] as string]));
    const pigtails = ports.map((port, index): Need => [`t ${port}`, placed[ends.length + index] as string]);
    const links = order.slice(1).map((bin, index): Need => [order[index] as string, bin]);
    const homes = new Set(order.filter((bin) => bin.startsWith("s ")));
    forms.push({ homes, at, needs: [...pigtails, ...links], fresh: order.length - homes.size });
  };
  spread([]);
  return forms;
}

const fresh12 = ({ awg }: Small): SpliceMember => ({ awg, material: "copper", stranded: false, grounding: false });

const memberOf = (small: Small, item: string): SpliceMember =>
  item.startsWith("t ")
    ? fresh12(small)
    : (findEndFacts(small.installation, small.box, item as EndKey) as SpliceMember);

function permutations(items: readonly string[]): readonly (readonly string[])[] {
  if (items.length < 2) return [items];
  return items.flatMap((first, index) =>
    permutations(items.filter((_, at) => at !== index)).map((rest) => [first, ...rest]),
  );
}

/** Moves, 2 for each new splice, 3 for each end in bad condition that moves; a splice that keeps nothing is a new one. */
function costOf(small: Small, forms: readonly Form[], below: number): number {
  const { box } = small;
  const now = (end: EndKey): string => pointOf(box.places[end]?.at);
  const move = (end: EndKey, to: string): number => {
    if (now(end) === to) return 0;
    const condition = box.places[end]?.condition;
    return (now(end) === "" ? 0 : 1) + (to === "" ? 0 : 1) + (condition === undefined || condition === "good" ? 0 : 3);
  };
  let base = 0;
  for (const { at, fresh } of forms) {
    base += 2 * fresh;
    for (const [end, to] of at) base += move(end, to);
  }
  if (base >= below) return base;
  const needs = forms.flatMap((form) => form.needs);
  const jumpers = Object.keys(box.jumpers) as JumperId[];
  const inSplice = (point: string): number => (point.startsWith("s ") || point.startsWith("new ") ? 1 : 0);
  let best = Number.POSITIVE_INFINITY;
  const assign = (index: number, cost: number, used: ReadonlyMap<JumperId, readonly [string, string]>): void => {
    if (cost >= best || base + cost >= below) return;
    const need = needs[index];
    if (need === undefined) {
      const removed = jumpers.filter((id) => !used.has(id)).flatMap((id) => [jumperEnd(id, "a"), jumperEnd(id, "b")]);
      const total = cost + removed.filter((end) => now(end) !== "").length;
      if (keepsAll(forms, used)) best = Math.min(best, total);
      return;
    }
    assign(index + 1, cost + 2, used);
    for (const id of jumpers) {
      if (used.has(id)) continue;
      const [a, b] = [now(jumperEnd(id, "a")), now(jumperEnd(id, "b"))];
      // A pigtail stays a pigtail, a link a link.
      if (a !== "" && b !== "" && inSplice(a) + inSplice(b) !== inSplice(need[0]) + inSplice(need[1])) continue;
      for (const [to, from] of [need, [need[1], need[0]] as const])
        assign(
          index + 1,
          cost + move(jumperEnd(id, "a"), to) + move(jumperEnd(id, "b"), from),
          new Map([...used, [id, [to, from]]]),
        );
    }
  };
  const keepsAll = (all: readonly Form[], used: ReadonlyMap<JumperId, readonly [string, string]>): boolean =>
    all.every(({ homes, at }) =>
      [...homes].every(
        (home) =>
          [...at].some(([end, to]) => to === home && now(end) === home) ||
          // A link alone is no reason to keep a splice.
          [...used].some(
            ([id, [a, b]]) =>
              inSplice(a) + inSplice(b) === 1 &&
              ((a === home && now(jumperEnd(id, "a")) === home) || (b === home && now(jumperEnd(id, "b")) === home)),
          ),
      ),
    );
  assign(0, 0, new Map());
  return base + best;
}
