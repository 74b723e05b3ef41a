import type { ScopeChange, ScopeItem } from "../../answers/scope.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Entry, PassThrough, Ring } from "../../model/enclosure.ts";
import type { EntryId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { asBox, type BoxPair, differentFields } from "./box-pair.ts";
import { change } from "./part-change.ts";
import { MEANS_WORDS, RING_WORDS, volumeWords } from "./scope-words.ts";

const wording = catalogue({
  entry: (cables: Part) => `entry of ${cables}`,
  opening: "opening",
  passing: (cable: Part) => `${cable} passing through`,
  unbrokenLoop: (inches: Part) => `unbroken, loop of ${inches} in.`,
  unbrokenStraight: "unbroken, straight",
});

/** Openings, rings, and conductors that pass through. */
export const openingChanges = (pair: BoxPair): readonly ScopeChange[] => [
  ...entryChanges(pair),
  ...ringChanges(pair),
  ...passChanges(pair),
];

const cablesAt = ({ id }: BoxPair, { cables }: Installation, opening: EntryId): readonly string[] =>
  cablesInto(cables, id).flatMap(({ entry, cable }) => (entry === opening ? [cable.name] : []));

/** Names of the cables in a changed opening; of one without, what it is called. */
export function cablesOfEntry(pair: BoxPair, { kind, item }: ScopeChange): readonly string[] {
  const cables = cablesAt(pair, kind === "removed" ? pair.asFound : pair.proposed, item.id as EntryId);
  return cables.length === 0 ? [wording.opening] : cables;
}

function entryChanges(pair: BoxPair): readonly ScopeChange[] {
  const { before, after, asFound, proposed } = pair;
  const nameOf = (installation: Installation, id: EntryId): string => {
    const cables = cablesAt(pair, installation, id);
    return cables.length === 0 ? wording.opening : wording.entry(cables.join(", "));
  };
  return both<Entry>(before?.entries, after?.entries).flatMap(([was, is]): readonly ScopeChange[] => {
    const id = (is ?? was).id;
    const item: ScopeItem = { kind: "entry", id, name: nameOf(is === undefined ? asFound : proposed, id) };
    const words = (entry: Entry | undefined): string | undefined => entry && MEANS_WORDS[entry.means];
    if (was === undefined) return [change(pair, { kind: "new", item, will: words(is) })];
    if (is === undefined) return [change(pair, { kind: "removed", item, was: words(was) })];
    const fields = differentFields(was, is);
    if (fields.length === 0) return [];
    const kind = fields.includes("means") ? "replaced" : "changed";
    return [change(pair, { kind, item, was: words(was), will: words(is), fields })];
  });
}

function ringChanges(pair: BoxPair): readonly ScopeChange[] {
  return both<Ring>(asBox(pair.before)?.rings, asBox(pair.after)?.rings).flatMap(([was, is]) => {
    const ring = is ?? was;
    const item: ScopeItem = { kind: "ring", id: ring.id, name: RING_WORDS[ring.kind] };
    const words = (one: Ring | undefined): string | undefined =>
      one && `${RING_WORDS[one.kind]}, ${volumeWords(one.volume)}`;
    if (was === undefined) return [change(pair, { kind: "new", item, will: words(is) })];
    if (is === undefined) return [change(pair, { kind: "removed", item, was: words(was) })];
    const fields = differentFields(was, is);
    if (fields.length === 0) return [];
    const kind = fields.includes("kind") ? "replaced" : "changed";
    return [change(pair, { kind, item, was: words(was), will: words(is), fields })];
  });
}

function passChanges(pair: BoxPair): readonly ScopeChange[] {
  const { asFound, proposed, before, after } = pair;
  return both<PassThrough>(before?.passThroughs, after?.passThroughs).flatMap(([was, is]) => {
    const pass = is ?? was;
    const cable = (is === undefined ? asFound : proposed).cables[pass.cable]?.name ?? pass.cable;
    const item: ScopeItem = { kind: "pass-through", id: pass.id, name: wording.passing(cable) };
    const words = (one: PassThrough | undefined): string | undefined =>
      one && (one.loopLengthIn === undefined ? wording.unbrokenStraight : wording.unbrokenLoop(one.loopLengthIn));
    if (was === undefined) return [change(pair, { kind: "new", item, will: words(is) })];
    if (is === undefined) return [change(pair, { kind: "removed", item, was: words(was) })];
    const fields = differentFields(was, is);
    return fields.length === 0
      ? []
      : [change(pair, { kind: "changed", item, was: words(was), will: words(is), fields })];
  });
}

type Two<T> = readonly [was: T, is: T] | readonly [was: undefined, is: T] | readonly [was: T, is: undefined];

/** Every thing of two tables, those of the second first, in their order. */
function both<T extends { readonly id: string; readonly order?: number }>(
  before: Readonly<Record<string, T>> | undefined,
  after: Readonly<Record<string, T>> | undefined,
): readonly Two<T>[] {
  const sorted = (table: Readonly<Record<string, T>> | undefined): readonly T[] =>
    Object.values(table ?? {}).sort((p, q) => (p.order ?? 0) - (q.order ?? 0) || (p.id < q.id ? -1 : 1));
  return [
    ...sorted(after).map((is): Two<T> => {
      const was = before?.[is.id];
      return was === undefined ? [undefined, is] : [was, is];
    }),
    ...sorted(before).flatMap((was): readonly Two<T>[] => (after?.[was.id] === undefined ? [[was, undefined]] : [])),
  ];
}
