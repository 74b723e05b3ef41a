import { UnionFind } from "../lib/union-find.ts";
import type { DeviceProof } from "../solver/circuit/proof-answers.ts";
import type { OutletStanding, Section } from "../solver/section.ts";
import { hotLeavesBoxOf } from "./bypass-words.ts";
import { breakersOf, multiwiresOf } from "./multiwire-parts.ts";
import type { Work } from "./new-work.ts";
import type { Requirement } from "./required-protection.ts";
import { breakersFeeding, hotOf } from "./section-parts.ts";

/** An outlet that must be protected and is not, with all that its finding is made of. */
export interface OpenOutlet {
  readonly standing: OutletStanding;
  readonly need: Extract<Requirement, { readonly required: true }>;
  readonly placed: Readonly<Record<string, string>>;
  /** The device that it is told by. */
  readonly decisive: DeviceProof | undefined;
  /** Its hot and neutral are exchanged: a fault of its own. */
  readonly isSwapped: boolean;
  /** What the work does at it: what is new is never told under what was there. */
  readonly work: Work["kind"];
}

interface Told {
  readonly one: OpenOutlet;
  /** Equal for those that lack protection by one cause. */
  readonly cause: string;
  /** It is the nearest to the source of those of its cause, and speaks for them. */
  readonly isFirst: boolean;
  /** Of the first: the other outlets that lack protection by its cause. */
  readonly others: readonly OutletStanding[];
}

/**
 * Unprotected outlets by what one piece of work would cure: halves of one receptacle, receptacles of a circuit or a
 * multiwire circuit without a device, those past one device on one cable, those behind a device of the wrong class. The
 * nearest to the source comes first, the others in the order of the section. What is wired in stands alone.
 */
export function unprotectedTogether(section: Section, open: readonly OpenOutlet[]): readonly Told[] {
  if (open.length < 2) return open.map((one) => ({ one, cause: one.standing.outlet.key, isFirst: true, others: [] }));
  const stepsTo = new Map(
    open.map((one) => [one, section.wayFrom("ungrounded", hotOf(one.standing))?.length ?? 0] as const),
  );
  const inOrder = [...open].sort((a, b) => (stepsTo.get(a) ?? 0) - (stepsTo.get(b) ?? 0));
  const sets = new UnionFind();
  const byKey = new Map<string, number>();
  inOrder.forEach((one, index) => {
    for (const key of sharedBy(section, one)) {
      const known = byKey.get(key);
      if (known === undefined) byKey.set(key, index);
      else sets.join(known, index);
    }
  });
  return inOrder.map((one, index) => {
    const root = sets.find(index);
    const others = index === root ? inOrder.filter((_, at) => at !== index && sets.find(at) === root) : [];
    return {
      one,
      cause: `${root}`,
      isFirst: index === root,
      others: open.filter((other) => others.includes(other)).map(({ standing }) => standing),
    };
  });
}

/** Names of what an outlet has in common with others that the same work would protect. */
function sharedBy(section: Section, { standing, decisive, isSwapped, work }: OpenOutlet): readonly string[] {
  const { outlet } = standing;
  if (isSwapped || !outlet.receptacle) return [];
  const halves = ["halves", outlet.device.id].join(" ");
  if (decisive === undefined)
    return [halves, ...circuitsOf(section, standing).map((id) => ["none", work, id].join(" "))];
  const { device, personnelClass, hotReached, neutralReached } = decisive;
  if (!personnelClass) return [halves, ["class", work, device].join(" ")];
  const leaves = hotReached && neutralReached ? hotLeavesBoxOf(section, standing, device) : undefined;
  return leaves?.kind === "cable" ? [halves, ["past", work, device, leaves.cable].join(" ")] : [halves];
}

/** The breakers that feed an outlet, and those that share its neutral. */
function circuitsOf(section: Section, standing: OutletStanding): readonly string[] {
  const own = breakersFeeding(section, standing).map(({ device }) => device.id);
  const sharing = multiwiresOf(section).flatMap(({ poles }) => {
    const ids = breakersOf(poles).map(({ id }) => id);
    return ids.some((id) => own.includes(id)) ? ids : [];
  });
  return [...own, ...sharing];
}
