import { MATERIAL_WORDS } from "../catalog/wire-words.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { parseEnd, type SpliceId } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import type { SpliceMember } from "../queries/connector-takes.ts";
import { getEndFacts } from "../queries/end-facts.ts";
import { membersOf } from "../queries/landings.ts";
import { anyConnector, type ConnectorStock, cannotBeOpened } from "./connector-stock.ts";
import { newJumper } from "./joint-cost.ts";
import { type JointGroup, suitsRole } from "./joint-group.ts";
import type { Landing } from "./landing.ts";
import { shareOut } from "./share-out.ts";

const wording = catalogue({
  add: (title: Part, id: Part) => `“${title}” does: add ${id} to the connectors at hand.`,
  find: "Find a connector whose table takes them, or let fewer meet here.",
  none: (joint: Part, box: Part, sizes: Part, count: Part, help: Part) =>
    `No connector at hand takes the joint ${joint} of ${box}: ${sizes}, ${count} conductors in all. ${help}`,
  size: (awg: Part, material: Part) => `${awg} AWG ${material}`,
});

const MOST_COUNTS = 64;

/**
 * Numbers of splices to try, by group: the least that the stock needs first. What is there may take more than the stock
 * does, and a net that has several splices already may keep them all.
 */
export function countsToTry(
  enclosure: Enclosure,
  mine: readonly { readonly group: JointGroup; readonly landing: Landing }[],
  least: readonly number[],
  fewest: readonly number[],
): readonly (readonly number[])[] {
  let all: (readonly number[])[] = [[]];
  mine.forEach(({ group, landing }, index) => {
    const usual = least[index] ?? 0;
    const from = Math.min(usual, fewest[index] ?? usual);
    const there = Object.values(enclosure.splices).filter(({ id }) => mayHold(enclosure, id, group)).length;
    const others =
      landing.kind !== "splice" || there === 0
        ? []
        : Array.from({ length: Math.max(usual, there) - from + 1 }, (_, at) => from + at);
    const counts = [usual, ...others.filter((count) => count !== usual)];
    all = all.flatMap((row) => counts.map((count) => [...row, count])).slice(0, MOST_COUNTS);
  });
  return all;
}

const MOST_SPLICES = 12;

/** Whether a splice has an end of a group in it, or a jumper that could serve the group. */
const mayHold = (enclosure: Enclosure, splice: SpliceId, { ends, role }: JointGroup): boolean =>
  membersOf(enclosure, splice).some((end) => {
    const parsed = parseEnd(end);
    if (parsed?.of !== "jumper") return ends.includes(end);
    return suitsRole(enclosure.jumpers[parsed.jumper]?.colour ?? "black", role);
  });

/** The least number of splices, chained by links, in which connectors of the stock take a group. */
export function leastSplices(
  installation: Installation,
  enclosure: Enclosure,
  { ends, role }: JointGroup,
  { awgs, linkAwg }: Extract<Landing, { kind: "splice" }>,
  stock: ConnectorStock,
  atHome: readonly string[] = [],
): number | undefined {
  const cables = ends.map((end): SpliceMember => getEndFacts(installation, enclosure, end));
  const pigtails = awgs.map((awg) => newJumper(awg, role === "ground"));
  const items = [...cables, ...pigtails].map((member, index) => ({
    member,
    now: undefined,
    move: 1,
    isCable: index < cables.length,
  }));
  const link = newJumper(linkAwg, role === "ground");
  // Asked again and again of the same numbers of the same kinds.
  const known = new Map<string, boolean>();
  const accepted = (key: string, members: () => readonly SpliceMember[]): boolean => {
    let does = known.get(key);
    if (does === undefined) {
      const all = members();
      does = [undefined, ...atHome].some((home) => stock.choose(all, home) !== undefined);
      known.set(key, does);
    }
    return does;
  };
  for (let count = 1; count <= Math.min(MOST_SPLICES, items.length); count += 1) {
    const bins = Array.from({ length: count }, (_, bin) => {
      const linked = (bin > 0 ? 1 : 0) + (bin < count - 1 ? 1 : 0);
      return {
        links: Array.from({ length: linked }, () => link),
        home: undefined,
        closed: undefined,
        accepts: (members: () => readonly SpliceMember[], counts: string) => accepted(`${linked} ${counts}`, members),
      };
    });
    if (shareOut(items, bins) !== undefined) return count;
  }
  return undefined;
}

/** The same with connectors that are in the box already, each of which might be used for any of its splices. */
export function fewestWithWhatIsThere(
  installation: Installation,
  enclosure: Enclosure,
  group: JointGroup,
  landing: Extract<Landing, { kind: "splice" }>,
  stock: ConnectorStock,
): number {
  const there = Object.values(enclosure.splices).filter(({ id }) => mayHold(enclosure, id, group));
  if (there.some(({ connector }) => cannotBeOpened(connector))) return 1;
  const atHome = [...new Set(there.map(({ connector }) => connector))];
  return leastSplices(installation, enclosure, group, landing, stock, atHome) ?? 1;
}

export function noConnectorWords(
  installation: Installation,
  enclosure: Enclosure,
  group: JointGroup,
  landing: Landing,
): string {
  const sizes = group.ends.map((end) => {
    const { awg, material } = getEndFacts(installation, enclosure, end);
    return wording.size(awg, MATERIAL_WORDS[material]);
  });
  const members = [
    ...group.ends.map((end): SpliceMember => getEndFacts(installation, enclosure, end)),
    ...(landing.kind === "splice" ? landing.awgs.map((awg) => newJumper(awg, group.role === "ground")) : []),
  ];
  const other = anyConnector(members);
  const help = other === undefined ? wording.find : wording.add(other.title, other.id);
  return wording.none(group.name, enclosure.name, [...new Set(sizes)].join(", "), members.length, help);
}
