import { type Connector, connectors, findConnector } from "../../shared-model/catalog/connectors.ts";
import type { TypedCall } from "../../shared-model/commands/command-args.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EndKey, JumperId, SpliceId } from "../../shared-model/model/ids.ts";
import { type SpliceMember, takes } from "../../shared-model/queries/connector-takes.ts";
import { type EndFacts, getEndFacts } from "../../shared-model/queries/end-facts.ts";
import { findSplice } from "../../shared-model/queries/find-item.ts";
import { membersOf } from "../../shared-model/queries/landings.ts";
import { compareWireSize } from "../../shared-model/units/wire-size.ts";
import { documentStore, shownInstallation } from "./document-store.ts";
import { laterWording } from "./later-words.ts";
import { mintId } from "./mint-id.ts";
import { nextJumperName, nextSpliceName } from "./naming.ts";
import { runOrTell } from "./pick-store.ts";
import { select } from "./session-store.ts";
import { stepTitle } from "./step-title.ts";

/** Fewer ends leave nothing to divide: two stay at least, and two go. */
export const FEWEST_TO_SPLIT = 4;

/** Makes two splices of one, as one step, and selects the new one: its ends can then be moved between the two. */
export function splitSplice(id: SpliceId): void {
  const call = splitCall(id);
  if (call === undefined || !runOrTell(call.step)) return;
  select({ kind: "splice", id: call.second });
}

/**
 * Half of the ends of a splice, the thinner ones, go into a second splice that a link joins to it, as thick as the
 * thickest of them: whatever was connected stays so. Both get a connector that takes what is in them, where there is one.
 * Undefined for a splice of too few ends.
 */
export function splitCall(
  id: SpliceId,
): { readonly step: TypedCall<"run-together">; readonly second: SpliceId } | undefined {
  const installation = shownInstallation();
  const found = findSplice(installation, id);
  if (found === undefined) return undefined;
  const { enclosure, splice } = found;
  const members = membersOf(enclosure, id).map((end) => ({ end, facts: getEndFacts(installation, enclosure, end) }));
  const [thickest, ...others] = members.toSorted((a, b) => compareWireSize(b.facts.awg, a.facts.awg));
  if (thickest === undefined || members.length < FEWEST_TO_SPLIT) return undefined;
  const sorted = [thickest, ...others];
  const half = Math.ceil(sorted.length / 2);
  const moved = sorted.slice(half);
  const ends: readonly EndKey[] = moved.map(({ end }) => end);
  const facts = sorted.map((member) => member.facts);
  const link = linkOf(facts);
  const second = mintId<SpliceId>("s");
  const where = { state: documentStore.get().state, enclosure: enclosure.id };
  const here = fitting(splice.connector, [...facts.slice(0, half), link]);
  const there = fitting(splice.connector, [...facts.slice(half), link]);
  const name = nextSpliceName(installation, enclosure, ends);
  const calls: TypedCall[] = [
    { command: "splice-ends", args: { ...where, splice: second, name, connector: there, ends } },
    {
      command: "add-jumper",
      args: {
        ...where,
        jumper: mintId<JumperId>("j"),
        name: nextJumperName(enclosure),
        awg: link.awg,
        colour: link.colour,
        from: { kind: "splice", splice: id },
        to: { kind: "splice", splice: second },
      },
    },
  ];
  if (here !== splice.connector)
    calls.push({ command: "change-connector", args: { ...where, splice: id, connector: here } });
  return {
    step: { command: "run-together", args: { title: stepTitle(laterWording.splitInTwo(splice.name)), calls } },
    second,
  };
}

/** Solid copper, bare among grounds, else of the colour that the first cable end has. */
function linkOf(facts: readonly EndFacts[]): SpliceMember & Pick<EndFacts, "colour"> {
  const [thickest] = facts as readonly [EndFacts];
  const grounding = facts.every((end) => end.grounding);
  const { colour } = facts.find(({ parsed }) => parsed.of === "cable") ?? thickest;
  return { awg: thickest.awg, material: "copper", stranded: false, grounding, colour: grounding ? "bare" : colour };
}

/** The connector at hand if it takes these ends, else one of its kind, else another; "unknown" where there is none. */
function fitting(current: string, members: readonly SpliceMember[]): string {
  const own = findConnector(current);
  const kind = own?.id.replace(/-[^-]+$/, "");
  const isKin = ({ id }: Connector): boolean => kind !== undefined && id.startsWith(kind);
  const plain = connectors
    .filter(({ groundsOnly }) => !groundsOnly)
    .toSorted((a, b) => Number(isKin(b)) - Number(isKin(a)));
  const all: readonly Connector[] = own === undefined ? plain : [own, ...plain];
  return all.find((one) => takes(one, members))?.id ?? "unknown";
}

/** Whether a splice has ends enough to be split. */
export const canSplit = (enclosure: Enclosure, splice: SpliceId): boolean =>
  membersOf(enclosure, splice).length >= FEWEST_TO_SPLIT;
