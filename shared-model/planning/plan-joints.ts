import type { MakeUpStyle } from "../answers/make-up-intent.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { type EndKey, type JumperId, jumperEnd, parseEnd, type SpliceId } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { membersOf } from "../queries/landings.ts";
import type { Arrangement, Formed, Slot } from "./arrangement.ts";
import { pointKey } from "./box-nets.ts";
import { ConnectorStock } from "./connector-stock.ts";
import { isAtPort } from "./joint-cost.ts";
import { JointDraft } from "./joint-draft.ts";
import { type JointGroup, type Planned, type Port, planned, refused, suitsRole } from "./joint-group.ts";
import type { JointPlan } from "./joint-plan.ts";
import { cheapest } from "./joint-search.ts";
import { type Landing, landingOf, strapAwg } from "./landing.ts";
import { countsToTry, fewestWithWhatIsThere, leastSplices, noConnectorWords } from "./splice-counts.ts";

const wording = catalogue({
  noConnectors: (joint: Part, box: Part) =>
    `No connectors at hand take the joint ${joint} of ${box}. Add larger ones to the list.`,
});

/**
 * Puts the groups of an enclosure onto what is there with the fewest moves. `spare` are ends that belong to no group any
 * more: they are capped. What neither groups nor spare ends touch stays as it is.
 */
export function planJoints(
  installation: Installation,
  enclosure: Enclosure,
  groups: readonly JointGroup[],
  spare: readonly EndKey[],
  style: MakeUpStyle,
): Planned<JointPlan> {
  const stock = new ConnectorStock(style);
  const landings: Landing[] = [];
  for (const group of groups) {
    const landing = landingOf(installation, enclosure, group, style);
    if (!landing.ok) return landing;
    landings.push(landing.value);
  }
  const free = freedBy(enclosure, groups, spare);
  const parts = componentsOf(enclosure, groups, free);
  const draft = new JointDraft(installation, enclosure, groups, landings, stock);
  for (const part of parts) {
    const found = arrange(installation, enclosure, groups, landings, part, stock);
    if (!found.ok) return found;
    draft.add(part.groups, found.value.slots, found.value.arrangement);
  }
  for (const end of spare) draft.cap(end);
  return planned(draft.plan(free.jumpers));
}

interface Freed {
  readonly splices: readonly SpliceId[];
  readonly jumpers: readonly JumperId[];
}

/** Splices and jumpers that hang together with the ends of the groups, or stand at one of their ports. */
function freedBy(enclosure: Enclosure, groups: readonly JointGroup[], spare: readonly EndKey[]): Freed {
  const splices = new Set<SpliceId>();
  const jumpers = new Set<JumperId>();
  const ports = groups.flatMap((group) => group.ports);
  const reach = (end: EndKey): void => {
    const at = enclosure.places[end]?.at;
    if (at?.kind === "splice" && !splices.has(at.splice)) {
      splices.add(at.splice);
      for (const member of membersOf(enclosure, at.splice)) touch(member);
    }
  };
  const touch = (end: EndKey): void => {
    const parsed = parseEnd(end);
    if (parsed?.of !== "jumper" || jumpers.has(parsed.jumper)) return;
    jumpers.add(parsed.jumper);
    for (const side of ["a", "b"] as const) reach(jumperEnd(parsed.jumper, side));
  };
  for (const end of [...groups.flatMap(({ ends }) => ends), ...spare]) reach(end);
  for (const [end, { at }] of Object.entries(enclosure.places) as [EndKey, (typeof enclosure.places)[EndKey]][])
    if (ports.some((port) => isAtPort(pointKey(at), port))) touch(end);
  return { splices: [...splices].sort(), jumpers: [...jumpers].sort() };
}

interface Component extends Freed {
  readonly groups: readonly number[];
}

/** Groups that compete for a splice or a jumper are arranged together, all others by themselves. */
function componentsOf(enclosure: Enclosure, groups: readonly JointGroup[], free: Freed): readonly Component[] {
  const owner = groups.map((_, index) => index);
  const root = (index: number): number => (owner[index] === index ? index : root(owner[index] as number));
  const claims = new Map<string, number>();
  const claim = (key: string, group: number): void => {
    const other = claims.get(key);
    if (other === undefined) claims.set(key, group);
    else owner[root(group)] = root(other);
  };
  groups.forEach((group, index) => {
    for (const end of group.ends) {
      const at = enclosure.places[end]?.at;
      if (at?.kind === "splice") claim(at.splice, index);
    }
    for (const id of free.jumpers)
      if (suitsRole(enclosure.jumpers[id]?.colour ?? "black", group.role)) claim(id, index);
  });
  for (const id of free.jumpers) {
    const group = claims.get(id);
    for (const side of ["a", "b"] as const) {
      const at = enclosure.places[jumperEnd(id, side)]?.at;
      if (at?.kind === "splice" && group !== undefined) claim(at.splice, group);
    }
  }
  const rootOf = (key: string): number | undefined => {
    const group = claims.get(key);
    return group === undefined ? undefined : root(group);
  };
  return [...new Set(groups.map((_, index) => root(index)))].map((first) => ({
    groups: groups.flatMap((_, index) => (root(index) === first ? [index] : [])),
    splices: free.splices.filter((id) => rootOf(id) === first),
    jumpers: free.jumpers.filter((id) => rootOf(id) === first),
  }));
}

interface Arranged {
  readonly slots: readonly Slot[];
  readonly arrangement: Arrangement;
}

function arrange(
  installation: Installation,
  enclosure: Enclosure,
  groups: readonly JointGroup[],
  landings: readonly Landing[],
  part: Component,
  stock: ConnectorStock,
): Planned<Arranged> {
  const mine = part.groups.map((index) => ({
    group: groups[index] as JointGroup,
    landing: landings[index] as Landing,
  }));
  const least: number[] = [];
  const fewest: number[] = [];
  for (const { group, landing } of mine) {
    const bins = landing.kind === "splice" ? leastSplices(installation, enclosure, group, landing, stock) : 0;
    if (bins === undefined) return refused("no-connector", noConnectorWords(installation, enclosure, group, landing));
    least.push(bins);
    fewest.push(landing.kind === "splice" ? fewestWithWhatIsThere(installation, enclosure, group, landing, stock) : 0);
  }
  let best: Arranged | undefined;
  for (const counts of countsToTry(enclosure, mine, least, fewest)) {
    const formed: Formed[] = mine.map(({ group, landing }, index) => ({
      group,
      bins: counts[index] ?? 0,
      linkAwg: landing.kind === "splice" ? landing.linkAwg : undefined,
    }));
    const slots = slotsOf(
      formed,
      mine.map(({ landing }) => landing),
    );
    const { splices, jumpers } = part;
    const arrangement = cheapest(
      { installation, enclosure, formed, slots, jumpers, splices, stock },
      best?.arrangement.cost,
    );
    if (arrangement !== undefined) best = { slots, arrangement };
  }
  if (best !== undefined) return planned(best);
  const [first] = mine;
  const name = first?.group.name ?? "";
  return refused("no-connector", wording.noConnectors(name, enclosure.name));
}

function slotsOf(formed: readonly Formed[], landings: readonly Landing[]): readonly Slot[] {
  return formed.flatMap(({ group, bins, linkAwg }, index): Slot[] => {
    const landing = landings[index];
    if (landing?.kind === "strap") {
      const [one, two] = group.ports as readonly [Port, Port];
      return [{ group: index, sides: [{ port: one }, { port: two }], awg: strapAwg(group) }];
    }
    if (landing?.kind !== "splice" || linkAwg === undefined) return [];
    const pigtails = group.ports.map(
      (port, number): Slot => ({
        group: index,
        sides: [{ port }, { group: index, bin: "any" }],
        awg: landing.awgs[number] ?? linkAwg,
      }),
    );
    const links = Array.from(
      { length: bins - 1 },
      (_, bin): Slot => ({
        group: index,
        sides: [
          { group: index, bin },
          { group: index, bin: bin + 1 },
        ],
        awg: linkAwg,
      }),
    );
    return [...pigtails, ...links];
  });
}
