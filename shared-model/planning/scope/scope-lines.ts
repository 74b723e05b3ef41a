import type { ScopeChange, ScopeItem, ScopeKind, ScopeLine } from "../../answers/scope.ts";
import { findDeviceType } from "../../catalog/device-types.ts";
import type { DeviceId, JumperId, SpliceId } from "../../model/ids.ts";
import type { At } from "../../model/place.ts";
import { landedAt, membersOf } from "../../queries/landings.ts";
import { type Colour, colourCode } from "../../units/colour.ts";
import { type BoxPair, isUntouched } from "./box-pair.ts";
import { foldedNames } from "./folded-names.ts";
import { jumperKindWords, lengthWords, placeWords } from "./scope-words.ts";

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
    ...entryLines(of("entry")),
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
  const fallback = kind === "removed" ? "out" : kind === "new" ? "new" : "";
  return line(kind, item.name, was?.words, will?.words ?? fallback, [change]);
}

function deviceLines(pair: BoxPair, change: ScopeChange): readonly ScopeLine[] {
  const { kind, item, was, will } = change;
  const out = (words: string | undefined, id: string): ScopeLine =>
    line("removed", words ?? item.name, undefined, "out", [change], [{ kind: "device", id, name: item.name }]);
  switch (kind) {
    case "kept":
      return [];
    case "removed":
      return [out(was?.words, item.id)];
    case "new":
      return [line("new", will?.words ?? item.name, undefined, `new${lineOnly(pair, item)}`, [change])];
    case "replaced":
      return [
        out(was?.words, item.was ?? item.id),
        line("new", will?.words ?? item.name, undefined, `in its place${lineOnly(pair, item)}`, [change]),
      ];
    default:
      return [plainLine(change)];
  }
}

/** A ground-fault device that feeds nothing on is told so: its LOAD stays taped. */
function lineOnly({ after }: BoxPair, { id }: ScopeItem): string {
  const device = after?.devices[id as DeviceId];
  const load = device && findDeviceType(device.type)?.terminals.filter(({ group }) => group === "LOAD");
  if (after === undefined || device === undefined || load === undefined || load.length === 0) return "";
  return load.some(({ name }) => landedAt(after, device.id, name).length > 0) ? "" : ", LINE only";
}

/** Openings that are changed alike stand in one line. */
function entryLines(entries: readonly ScopeChange[]): readonly ScopeLine[] {
  const alike = groupedBy(entries, ({ kind, was, will }) => `${kind}|${was?.words}|${will?.words}`);
  return alike.map((group) => {
    const [first] = group;
    const names = group.flatMap(({ item }) => item.name.replace(/^entry of /, "").split(", "));
    const title = group.length === 1 ? (first?.item.name ?? "") : `entries of ${foldedNames(names)}`;
    const will = first?.will?.words ?? "out";
    return line(first?.kind ?? "changed", title, first?.was?.words, will, group);
  });
}

function spliceLine(pair: BoxPair, change: ScopeChange): readonly ScopeLine[] {
  const { kind, item, will } = change;
  if (kind === "kept") return [];
  if (kind !== "new") return [plainLine(change)];
  const members = pair.after === undefined ? [] : membersOf(pair.after, item.id as SpliceId);
  return [line("new", item.name, undefined, `joint of ${members.length}, ${will?.words ?? ""}`, [change])];
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
    const code = first?.conductor?.markedAs === undefined ? first?.conductor?.code : nameAfterOwner(first);
    const title = `${foldedNames(group.map(ownerName))} ${code ?? ""}`.trim();
    const stays = at?.kind === "splice" ? (old === now ? `stay in ${now}` : `${old} is ${now}`) : staysWords(pair, at);
    return line("kept", title, undefined, stays, group);
  });
}

const wireRank = (change: ScopeChange | undefined): number =>
  change === undefined ? 0 : WIRES.indexOf(wireOfChange(change));

/** "C4 WH as BK" without its cable. */
const nameAfterOwner = ({ item: { name } }: ScopeChange): string => name.slice(name.indexOf(" ") + 1);
/** The cable of "C4 WH". Names of cables may have spaces: the code is what comes last. */
const ownerName = ({ item: { name }, conductor }: ScopeChange): string => {
  const code = ` ${conductor?.code ?? ""}`;
  const at = name.lastIndexOf(code);
  return at > 0 ? name.slice(0, at) : name;
};

function placeGroup(at: At | undefined): string {
  if (at?.kind === "splice") return `splice ${at.splice}`;
  return at?.kind === "terminal" ? `device ${at.device}` : (at?.kind ?? "");
}

function staysWords({ after }: BoxPair, at: At | undefined): string {
  if (at?.kind === "terminal") return `stay on ${after?.devices[at.device]?.name ?? at.device}`;
  if (at?.kind === "bond") return "stay on the bond";
  return at?.kind === "capped" ? "stay capped" : "stay loose";
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
            `${foldedNames(kept.map(({ item }) => item.name))}, ${kept.length === 1 ? "jumper" : "jumpers"} ${colourCode(kept[0]?.conductor?.colour ?? "black")}`,
            undefined,
            kept.length === 1 ? "stays" : "stay",
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
  if (kind === "relabelled") return line(kind, item.name, undefined, "mark it", [change]);
  if (kind === "changed")
    return line(kind, item.name, undefined, `${will?.words}: ${(fields ?? []).join(", ")}`, [change]);
  return line(kind, item.name, was?.words, will?.words ?? "out", [change]);
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
      `${old.name}, ${jumperKindWords(before, old)}`,
      fromTo(before, was?.ends),
      "out",
      all,
      items,
    );
  if (jumper === undefined || after === undefined) return plainLine(change);
  const made = `${jumper.name} ${conductor?.code ?? ""}, ${lengthWords(jumper)}`;
  if (kind === "new") return line("new", made, undefined, fromTo(after, will?.ends), all, items);
  if (kind === "replaced")
    return line(
      "replaced",
      made,
      old && `${old.awg} AWG ${old.colour}`,
      `${jumper.awg} AWG ${jumper.colour}`,
      all,
      items,
    );
  const called = old !== undefined && old.name !== jumper.name ? ` ${old.name}` : "";
  const title = `${jumper.name}, ${jumperKindWords(after, jumper)}${called}${ofDevice(pair, was?.ends)}`;
  const moved = (will?.ends ?? []).flatMap((at, index) => {
    const from = was?.ends?.[index];
    return from === undefined || isUntouched(pair, from, at) ? [] : [[from, at] as const];
  });
  if (moved.length === 0 || before === undefined) return line("changed", title, undefined, "set otherwise", all, items);
  const words = (side: 0 | 1): string =>
    moved.map((places) => placeWords(side === 0 ? before : after, places[side])).join(", ");
  return line(kind, title, words(0), words(1), all, items);
}

/** " of R1": the device that it served. */
function ofDevice({ before }: BoxPair, ends: readonly [At, At] | undefined): string {
  const [one] = (ends ?? []).flatMap((at) => (at.kind === "terminal" ? [before?.devices[at.device]?.name] : []));
  return one === undefined ? "" : ` of ${one}`;
}

const fromTo = (enclosure: NonNullable<BoxPair["after"]>, ends: readonly [At, At] | undefined): string =>
  ends === undefined ? "" : `${placeWords(enclosure, ends[0])} to ${placeWords(enclosure, ends[1])}`;

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
