import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { EvidenceMark } from "../model/evidence.ts";
import type { RoomKind } from "../model/room.ts";
import { cableOfEnd } from "../queries/end-facts.ts";
import { roomKindsOf } from "../queries/outlets-of.ts";
import type { OutletStanding } from "../solver/section.ts";
import { DEDICATED_RATING } from "./editions/circuit-values.ts";
import { isNewCable, workAt } from "./new-work.ts";
import type { SectionContext } from "./rule.ts";
import { basisOf, fillIn, listed, marksOn, subject } from "./rule-parts.ts";

/** A breaker with outlets of a kind that today's work gives circuits of their own, and with others. */
export interface MixedCircuit {
  readonly breaker: Device;
  readonly panel: Enclosure;
  /** Outlets of the kind, in the order of their names; so the others. */
  readonly own: readonly OutletStanding[];
  readonly others: readonly OutletStanding[];
  /** The work makes it: the breaker is new, or something that it feeds comes where nothing was, or by a new cable. */
  readonly isNew: boolean;
  readonly marks: readonly EvidenceMark[];
}

interface Sorting {
  /** What makes a circuit one of the kind. */
  isOwn(outlet: OutletStanding, kinds: ReadonlySet<RoomKind>): boolean;
  /** What may share it. */
  mayShare(outlet: OutletStanding, kinds: ReadonlySet<RoomKind>): boolean;
}

/** Circuits with outlets of a kind. A breaker of another rating than 20 A feeds none of the circuits that must be there. */
export function circuitsFor(context: SectionContext, { isOwn, mayShare }: Sorting): readonly MixedCircuit[] {
  const { section, project } = context;
  const standings = section.outlets();
  const kindsOf = ({ enclosure, outlet }: OutletStanding) => roomKindsOf(project, enclosure, outlet.device);
  if (!standings.some((one) => isOwn(one, kindsOf(one)))) return [];
  return section.breakers().flatMap(({ device: breaker, panel }) => {
    if (breaker.breakerRatingA !== DEDICATED_RATING) return [];
    const keys = new Set(section.circuitOf(breaker.id).outlets);
    const fed = standings.filter(({ outlet }) => keys.has(outlet.key)).sort(byName);
    const own = fed.filter((one) => isOwn(one, kindsOf(one)));
    if (own.length === 0) return [];
    const others = fed.filter((one) => !own.includes(one) && !mayShare(one, kindsOf(one)));
    const isNew = isMadeByWork(context, breaker, panel, [...own, ...others]);
    const marks = [...own, ...others].flatMap(({ enclosure, outlet }) => [
      ...marksOn(enclosure, "roomId"),
      ...marksOn(outlet.device, "zones"),
    ]);
    return { breaker, panel, own, others, isNew, marks: [...marks, ...marksOn(breaker, "breakerRatingA")] };
  });
}

function isMadeByWork(
  context: SectionContext,
  breaker: Device,
  panel: Enclosure,
  outlets: readonly OutletStanding[],
): boolean {
  if (context.state === "as-found") return false;
  if (workAt(context, panel, breaker).kind === "new") return true;
  if (outlets.some(({ enclosure, outlet }) => workAt(context, enclosure, outlet.device).kind === "new")) return true;
  const { hotEnds } = context.section.circuitOf(breaker.id);
  return hotEnds.some((end) => {
    const cable = cableOfEnd(context.section.installation, end);
    return cable !== undefined && isNewCable(context, cable);
  });
}

const byName = (one: OutletStanding, other: OutletStanding): number =>
  one.outlet.name.localeCompare(other.outlet.name, "en", { numeric: true });

/** What such a rule says of a circuit that was there before, and of one that the work makes. */
interface MixedWords {
  readonly existing: string;
  readonly introduced: string;
}

/** A circuit that was there before may stay. `more` are words of the rule's own for its sentences. */
export function reportMixed(
  context: SectionContext,
  words: MixedWords,
  { breaker, panel, own, others, isNew, marks }: MixedCircuit,
  more: Readonly<Record<string, string>> = {},
): void {
  context.report({
    subjects: [subject("device", breaker)],
    severity: isNew ? "violation" : "caution",
    message: fillIn(isNew ? words.introduced : words.existing, {
      breaker: breaker.name,
      panel: panel.name,
      own: namesOfOutlets(own),
      others: namesOfOutlets(others),
      ...more,
    }),
    ...basisOf(marks),
  });
}

/** "R2, R3 and L1", a split receptacle once. */
export const namesOfOutlets = (outlets: readonly OutletStanding[]): string =>
  listed([...new Set(outlets.map(({ outlet }) => outlet.device.name))]);
