import type { ScopeChange, ScopeItem, ScopeKind, ScopeLine } from "../../answers/scope.ts";
import { findDeviceType } from "../../catalog/device-types.ts";
import { COLOUR_WORDS } from "../../catalog/wire-words.ts";
import type { CableId, DeviceId, JumperId, SpliceId } from "../../model/ids.ts";
import type { At } from "../../model/place.ts";
import { fieldWords } from "../../queries/field-words.ts";
import { landedAt, membersOf } from "../../queries/landings.ts";
import { type Colour, colourCode } from "../../units/colour.ts";
import { type BoxPair, isUntouched } from "./box-pair.ts";
import { foldedNames } from "./folded-names.ts";
import { LINE_WORDS as wording } from "./line-words.ts";
import { cablesOfEntry } from "./opening-changes.ts";
import { fromToWords, jumperKindWords, lengthWords, placeWords } from "./scope-words.ts";

/** Where a line stands: devices, the box, then joints and conductors by what they are for. */
type Wire = "hot" | "neutral" | "ground";
const WIRES: readonly Wire[] = ["hot", "neutral", "ground"];

const wireOf = (colour: Colour | undefined, markedAs?: Colour): Wire => {
  const shown = markedAs ?? colour;
  if (shown === "bare" || shown === "green") return "ground";
  return shown === "white" || shown === "grey" ? "neutral" : "hot";
};

const wireOfChange = ({ conductor }: ScopeChange): Wire => wireOf(conductor?.colour, conductor?.markedAs);

const line = (
  kind: ScopeKind,
  title: string,
  was: string | undefined,
  will: string,
  changes: readonly ScopeChange[],
  items: readonly ScopeItem[] = changes.map(({ item }) => item),
): ScopeLine => ({
  key: `${kind} ${changes[0]?.key ?? title}`,
  kind,
  title,
  ...(was !== undefined && { was }),
  will,
  items,
  changes: changes.map(({ key }) => key),
});

/** The changes of a box as a person reads them. Every change but what is kept is in at least one line. */
export function boxLines(pair: BoxPair, changes: readonly ScopeChange[]): readonly ScopeLine[] {
  const of = (...kinds: readonly ScopeItem["kind"][]): readonly ScopeChange[] =>
    changes.filter(({ item }) => kinds.includes(item.kind));
  return [
    ...of("enclosure").map(plainLine),
    ...of("device").flatMap((one) => deviceLines(pair, one)),
    ...of("part").map((one) => plainLine(one)),
    ...entryLines(pair, of("entry")),
    ...of("ring", "pass-through").map(plainLine),
    ...of("splice").flatMap((one) => spliceLine(pair, one)),
    ...keptLines(pair, of("end")),
    ...WIRES.flatMap((wire) => conductorLines(pair, wire, of("end"), of("jumper"))),
  ];
}

/** Cables, loads, labels and lines of the directory. */
export const looseLines = (changes: readonly ScopeChange[]): readonly ScopeLine[] => changes.map(plainLine);

function plainLine(change: ScopeChange): ScopeLine {
  const { kind, item, was, will } = change;
  const fallback = kind === "removed" ? wording.out : kind === "new" ? wording.new : "";
  return line(kind, item.name, was?.words, will?.words ?? fallback, [change]);
}

function deviceLines(pair: BoxPair, change: ScopeChange): readonly ScopeLine[] {
  const { kind, item, was, will } = change;
  const out = (words: string | undefined, id: string): ScopeLine =>
    line("removed", words ?? item.name, undefined, wording.out, [change], [{ kind: "device", id, name: item.name }]);
  switch (kind) {
    case "kept":
      return [];
    case "removed":
      return [out(was?.words, item.id)];
    case "new":
      return [
        line("new", will?.words ?? item.name, undefined, isLineOnly(pair, item) ? wording.newLineOnly : wording.new, [
          change,
        ]),
      ];
    case "replaced":
      return [
        out(was?.words, item.was ?? item.id),
        line(
          "new",
          will?.words ?? item.name,
          undefined,
          isLineOnly(pair, item) ? wording.inItsPlaceLineOnly : wording.inItsPlace,
          [change],
        ),
      ];
    default:
      return [plainLine(change)];
  }
}

/** A ground-fault device that feeds nothing on is told so: its LOAD stays taped. */
function isLineOnly({ after }: BoxPair, { id }: ScopeItem): boolean {
  const device = after?.devices[id as DeviceId];
  const load = device && findDeviceType(device.type)?.terminals.filter(({ group }) => group === "LOAD");
  if (after === undefined || device === undefined || load === undefined || load.length === 0) return false;
  return !load.some(({ name }) => landedAt(after, device.id, name).length > 0);
}

/** Openings that are changed alike stand in one line. */
function entryLines(pair: BoxPair, entries: readonly ScopeChange[]): readonly ScopeLine[] {
  const alike = groupedBy(entries, ({ kind, was, will }) => `${kind}|${was?.words}|${will?.words}`);
  return alike.map((group) => {
    const [first] = group;
    const names = group.flatMap((entry) => cablesOfEntry(pair, entry));
    const title = group.length === 1 ? (first?.item.name ?? "") : wording.entries(foldedNames(names));
    const will = first?.will?.words ?? wording.out;
    return line(first?.kind ?? "changed", title, first?.was?.words, will, group);
  });
}

function spliceLine(pair: BoxPair, change: ScopeChange): readonly ScopeLine[] {
  const { kind, item, will } = change;
  if (kind === "kept") return [];
  if (kind !== "new") return [plainLine(change)];
  const members = pair.after === undefined ? [] : membersOf(pair.after, item.id as SpliceId);
  return [line("new", item.name, undefined, wording.joint(members.length, will?.words ?? ""), [change])];
}

/** Cable ends that stay where they are: those of one colour in one joint, those on one device. */
function keptLines(pair: BoxPair, ends: readonly ScopeChange[]): readonly ScopeLine[] {
  const kept = ends.filter(({ kind, owner }) => kind === "kept" && owner?.kind === "cable");
  const groups = groupedBy(
    kept,
    ({ will, conductor }) => `${placeGroup(will?.at)}|${conductor?.code}|${conductor?.markedAs}`,
  );
  const sorted = [...groups].sort((p, q) => wireRank(p[0]) - wireRank(q[0]));
  return sorted.map((group) => {
    const [first] = group;
    const at = first?.will?.at;
    const [old, now] = [first?.was?.words ?? "", first?.will?.words ?? ""];
    const code = first?.conductor?.markedAs === undefined ? first?.conductor?.code : nameAfterOwner(pair, first);
    const title = `${foldedNames(group.map((one) => ownerName(pair, one)))} ${code ?? ""}`.trim();
    const stays =
      at?.kind === "splice" ? (old === now ? wording.stayIn(now) : wording.isNow(old, now)) : staysWords(pair, at);
    return line("kept", title, undefined, stays, group);
  });
}

const wireRank = (change: ScopeChange | undefined): number =>
  change === undefined ? 0 : WIRES.indexOf(wireOfChange(change));

/** "C4 WH as BK" without its cable. */
function nameAfterOwner(pair: BoxPair, change: ScopeChange): string {
  const { name } = change.item;
  const owner = `${ownerName(pair, change)} `;
  return name.startsWith(owner) ? name.slice(owner.length) : name;
}

/** The cable of "C4 WH". */
const ownerName = ({ proposed, asFound }: BoxPair, { item: { name }, owner }: ScopeChange): string =>
  (proposed.cables[owner?.id as CableId] ?? asFound.cables[owner?.id as CableId])?.name ?? name;

function placeGroup(at: At | undefined): string {
  if (at?.kind === "splice") return `splice:${at.splice}`;
  return at?.kind === "terminal" ? `device:${at.device}` : (at?.kind ?? "");
}

function staysWords({ after }: BoxPair, at: At | undefined): string {
  if (at?.kind === "terminal") return wording.stayOn(after?.devices[at.device]?.name ?? at.device);
  if (at?.kind === "bond") return wording.stayAtBond;
  return at?.kind === "capped" ? wording.stayCapped : wording.stayLoose;
}

const ORDER: readonly ScopeKind[] = ["kept", "moved", "replaced", "new", "relabelled", "changed", "removed"];
const rank = ({ kind }: ScopeLine): number => ORDER.indexOf(kind);

/** Of one wire: jumpers that stay together, then what moves, comes, is marked and goes, cables before jumpers. */
function conductorLines(
  pair: BoxPair,
  wire: Wire,
  ends: readonly ScopeChange[],
  jumpers: readonly ScopeChange[],
): readonly ScopeLine[] {
  const own = jumpers.filter((one) => wireOfChange(one) === wire);
  const kept = own.filter(({ kind, item }) => kind === "kept" && !hasOtherEnds(ends, item.id));
  const lines = [
    ...ends
      .filter((one) => one.owner?.kind === "cable" && one.kind !== "kept" && wireOfChange(one) === wire)
      .map(endLine),
    ...own.filter((one) => !kept.includes(one)).map((one) => jumperLine(pair, one, ends)),
  ];
  const stay =
    kept.length === 0
      ? []
      : [
          line(
            "kept",
            wording.jumpers(
              foldedNames(kept.map(({ item }) => item.name)),
              kept.length,
              colourCode(kept[0]?.conductor?.colour ?? "black"),
            ),
            undefined,
            wording.stay(kept.length),
            [...kept, ...kept.flatMap((one) => endsOf(ends, one.item.id))],
            kept.map(({ item }) => item),
          ),
        ];
  return [
    ...stay,
    ...lines
      .map((one, index) => ({ one, index }))
      .sort((p, q) => rank(p.one) - rank(q.one) || p.index - q.index)
      .map(({ one }) => one),
  ];
}

const endsOf = (ends: readonly ScopeChange[], jumper: string): readonly ScopeChange[] =>
  ends.filter(({ owner }) => owner?.kind === "jumper" && owner.id === jumper);

/** Its ends stay, and something is other about one of them all the same. */
const hasOtherEnds = (ends: readonly ScopeChange[], jumper: string): boolean =>
  endsOf(ends, jumper).some(({ kind }) => kind !== "kept");

function endLine(change: ScopeChange): ScopeLine {
  const { kind, item, was, will, fields } = change;
  if (kind === "relabelled") return line(kind, item.name, undefined, wording.mark, [change]);
  if (kind === "changed")
    return line(
      kind,
      item.name,
      undefined,
      wording.changed(will?.words ?? "", (fields ?? []).map(fieldWords).join(", ")),
      [change],
    );
  return line(kind, item.name, was?.words, will?.words ?? wording.out, [change]);
}

function jumperLine(pair: BoxPair, change: ScopeChange, allEnds: readonly ScopeChange[]): ScopeLine {
  const { kind, item, conductor, was, will } = change;
  const { before, after } = pair;
  const ends = endsOf(allEnds, item.id);
  const all = [change, ...ends];
  const items = [item];
  const jumper = after?.jumpers[item.id as JumperId];
  const old = before?.jumpers[(item.was ?? item.id) as JumperId];
  if (kind === "removed" && old !== undefined && before !== undefined)
    return line(
      "removed",
      wording.jumper(old.name, jumperKindWords(before, old)),
      fromTo(before, was?.ends),
      wording.out,
      all,
      items,
    );
  if (jumper === undefined || after === undefined) return plainLine(change);
  const made = wording.cutTo(`${jumper.name} ${conductor?.code ?? ""}`, lengthWords(jumper));
  if (kind === "new") return line("new", made, undefined, fromTo(after, will?.ends), all, items);
  if (kind === "replaced")
    return line(
      "replaced",
      made,
      old && wording.size(old.awg, COLOUR_WORDS[old.colour]),
      wording.size(jumper.awg, COLOUR_WORDS[jumper.colour]),
      all,
      items,
    );
  const called = old !== undefined && old.name !== jumper.name ? ` ${old.name}` : "";
  const kindWords = `${jumperKindWords(after, jumper)}${called}`;
  const served = servedDevice(pair, was?.ends);
  const title =
    served === undefined ? wording.jumper(jumper.name, kindWords) : wording.jumperOf(jumper.name, kindWords, served);
  const moved = (will?.ends ?? []).flatMap((at, index) => {
    const from = was?.ends?.[index];
    return from === undefined || isUntouched(pair, from, at) ? [] : [[from, at] as const];
  });
  if (moved.length === 0 || before === undefined)
    return line("changed", title, undefined, wording.setOtherwise, all, items);
  const words = (side: 0 | 1): string =>
    moved.map((places) => placeWords(side === 0 ? before : after, places[side])).join(", ");
  return line(kind, title, words(0), words(1), all, items);
}

/** Name of the device that a jumper served. */
const servedDevice = ({ before }: BoxPair, ends: readonly [At, At] | undefined): string | undefined =>
  (ends ?? []).flatMap((at) => (at.kind === "terminal" ? [before?.devices[at.device]?.name] : []))[0];

const fromTo = (enclosure: NonNullable<BoxPair["after"]>, ends: readonly [At, At] | undefined): string =>
  ends === undefined ? "" : fromToWords(placeWords(enclosure, ends[0]), placeWords(enclosure, ends[1]));

function groupedBy<T>(all: readonly T[], keyOf: (one: T) => string): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const one of all) {
    const key = keyOf(one);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [one]);
    else group.push(one);
  }
  return [...groups.values()];
}
