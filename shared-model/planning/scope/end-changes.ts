import type { ScopeChange, ScopeConductor, ScopeKind, ScopePlace, ScopeStates } from "../../answers/scope.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Enclosure, Jumper } from "../../model/enclosure.ts";
import { type CableId, type EndKey, type JumperId, jumperEnd, parseEnd } from "../../model/ids.ts";
import type { At, Place } from "../../model/place.ts";
import type { Installation } from "../../model/project.ts";
import { findEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { colourCode } from "../../units/colour.ts";
import { type BoxPair, differentFields, isOnSomething, isUntouched } from "./box-pair.ts";
import { jumperKindWords, placeWords } from "./scope-words.ts";

const wording = catalogue({
  jumper: (kind: Part, from: Part, to: Part) => `${kind} from ${from} to ${to}`,
});

/** Facts of a place that say where it is and what it is called; the rest is compared. */
const WHERE: ReadonlySet<string> = new Set(["at", "tag"]);
/** Fields of a jumper of which another value is another piece of wire. */
const MAKE: ReadonlySet<string> = new Set(["awg", "colour", "material", "stranded"]);

/** Cables that another one takes the place of under the same id. */
export type RemadeCables = ReadonlySet<CableId>;

/** Every conductor end of a box: where it was and where it goes. Ends of one conductor are two. */
export function endChanges(pair: BoxPair, remade: RemadeCables): readonly ScopeChange[] {
  const { before, after, homes } = pair;
  const changes: ScopeChange[] = [];
  const seen = new Set<EndKey>();
  for (const end of Object.keys(after?.places ?? {}) as EndKey[]) {
    const old = homes.formerEnd(end);
    const is = after?.places[end];
    const was = before?.places[old];
    if (was !== undefined) seen.add(old);
    if (is !== undefined) changes.push(endChange(pair, end, was === undefined ? undefined : old, was, is, remade));
  }
  for (const old of Object.keys(before?.places ?? {}) as EndKey[]) {
    const was = before?.places[old];
    if (was !== undefined && !seen.has(old)) changes.push(endChange(pair, old, old, was, undefined, remade));
  }
  return changes;
}

function endChange(
  pair: BoxPair,
  end: EndKey,
  old: EndKey | undefined,
  was: Place | undefined,
  is: Place | undefined,
  remade: RemadeCables,
): ScopeChange {
  const { id, before, after, asFound, proposed } = pair;
  const [installation, enclosure] =
    is !== undefined && after !== undefined ? [proposed, after] : [asFound, before as Enclosure];
  const fields = was !== undefined && is !== undefined ? differentFields(was, is, WHERE) : [];
  const stays = was !== undefined && is !== undefined && isUntouched(pair, was.at, is.at);
  const kind = kindOf(pair, end, old, was, is, stays, fields, remade);
  const byHand = kind === "moved" || kind === "new" || kind === "removed" || kind === "replaced";
  const parsed = parseEnd(end);
  return {
    key: `${id} end ${end}`,
    kind,
    item: {
      kind: "end",
      id: end,
      name: nameOfEnd(installation, enclosure, end),
      ...(old !== undefined && old !== end && { was: old }),
    },
    states: statesOf(was, is),
    ...(was !== undefined && before !== undefined && { was: placeOf(before, was.at) }),
    ...(is !== undefined && after !== undefined && { will: placeOf(after, is.at) }),
    conductor: conductorOf(installation, enclosure, end),
    detach: byHand && isOnSomething(was?.at) ? 1 : 0,
    attach: byHand && isOnSomething(is?.at) ? 1 : 0,
    ...(parsed !== undefined && {
      owner: parsed.of === "cable" ? { kind: "cable", id: parsed.cable } : { kind: "jumper", id: parsed.jumper },
    }),
    ...(fields.length > 0 && { fields }),
  };
}

function kindOf(
  pair: BoxPair,
  end: EndKey,
  old: EndKey | undefined,
  was: Place | undefined,
  is: Place | undefined,
  stays: boolean,
  fields: readonly string[],
  remade: RemadeCables,
): ScopeKind {
  const parsed = parseEnd(end);
  if (is === undefined) return parsed?.of === "cable" && isIn(pair.proposed, parsed.cable) ? "moved" : "removed";
  if (was === undefined) return parsed?.of === "cable" && isIn(pair.asFound, parsed.cable) ? "moved" : "new";
  if (parsed?.of === "cable" && remade.has(parsed.cable)) return "replaced";
  if (parsed?.of === "jumper" && isRemade(pair, parsed.jumper, old)) return "replaced";
  if (!stays) return "moved";
  if (fields.length === 0) return "kept";
  return fields.every((field) => field === "markedAs") ? "relabelled" : "changed";
}

/** A side of a cable that comes from another box, or leaves for one, is moved: the cable stays. */
const isIn = ({ cables }: Installation, cable: CableId): boolean => cables[cable] !== undefined;

function isRemade({ before, after }: BoxPair, id: JumperId, old: EndKey | undefined): boolean {
  const parsed = old === undefined ? undefined : parseEnd(old);
  const was = parsed?.of === "jumper" ? before?.jumpers[parsed.jumper] : undefined;
  const is = after?.jumpers[id];
  return was !== undefined && is !== undefined && differentFields(was, is).some((field) => MAKE.has(field));
}

const statesOf = (was: unknown, is: unknown): ScopeStates =>
  was === undefined ? "proposed" : is === undefined ? "as-found" : "both";

const placeOf = (enclosure: Enclosure, at: At): ScopePlace => ({ words: placeWords(enclosure, at), at });

function conductorOf(installation: Installation, enclosure: Enclosure, end: EndKey): ScopeConductor {
  const facts = findEndFacts(installation, enclosure, end);
  const marked = enclosure.places[end]?.markedAs;
  if (facts === undefined) throw new Error(`No conductor has the end ${end}.`);
  return {
    awg: facts.awg,
    colour: facts.colour,
    code: colourCode(facts.colour),
    ...(marked !== undefined && { markedAs: marked }),
  };
}

/** Every jumper of a box as one piece of wire; its ends are told apart. */
export function jumperChanges(pair: BoxPair): readonly ScopeChange[] {
  const { before, after, homes } = pair;
  const changes: ScopeChange[] = [];
  const seen = new Set<JumperId>();
  for (const jumper of Object.values(after?.jumpers ?? {}) as readonly Jumper[]) {
    const home = homes.jumpers.get(jumper.id);
    const was = home === undefined ? undefined : before?.jumpers[home.jumper];
    if (home !== undefined) seen.add(home.jumper);
    changes.push(jumperChange(pair, jumper, was, true, home?.flipped === true));
  }
  for (const jumper of Object.values(before?.jumpers ?? {}) as readonly Jumper[])
    if (!seen.has(jumper.id)) changes.push(jumperChange(pair, jumper, jumper, false, false));
  return changes;
}

function jumperChange(
  pair: BoxPair,
  jumper: Jumper,
  was: Jumper | undefined,
  isThere: boolean,
  flipped: boolean,
): ScopeChange {
  const { id, before, after } = pair;
  const fields = was !== undefined && isThere ? differentFields(was, jumper) : [];
  const old = was === undefined || before === undefined ? undefined : bothEnds(before, was.id, flipped);
  const now = isThere && after !== undefined ? bothEnds(after, jumper.id, false) : undefined;
  const moved =
    old !== undefined && now !== undefined && old.some((at, index) => !isUntouched(pair, at, now[index] as At));
  const kind: ScopeKind = !isThere
    ? "removed"
    : was === undefined
      ? "new"
      : fields.some((field) => MAKE.has(field))
        ? "replaced"
        : moved
          ? "moved"
          : fields.length > 0
            ? "changed"
            : "kept";
  const { awg, colour, lengthIn } = jumper;
  return {
    key: `${id} jumper ${jumper.id}`,
    kind,
    item: {
      kind: "jumper",
      id: jumper.id,
      name: jumper.name,
      ...(was !== undefined && was.id !== jumper.id && { was: was.id }),
    },
    states: isThere ? (was === undefined ? "proposed" : "both") : "as-found",
    ...(old !== undefined &&
      before !== undefined &&
      was !== undefined && {
        was: { words: jumperWords(before, was, old), ends: old },
      }),
    ...(now !== undefined && after !== undefined && { will: { words: jumperWords(after, jumper, now), ends: now } }),
    conductor: { awg, colour, code: colourCode(colour), ...(lengthIn !== undefined && { lengthIn }) },
    detach: 0,
    attach: 0,
    ...(fields.length > 0 && { fields }),
  };
}

const jumperWords = (enclosure: Enclosure, jumper: Jumper, [a, b]: readonly [At, At]): string =>
  wording.jumper(jumperKindWords(enclosure, jumper), placeWords(enclosure, a), placeWords(enclosure, b));

function bothEnds({ places }: Enclosure, id: JumperId, flipped: boolean): readonly [At, At] {
  const [a, b] = (flipped ? (["b", "a"] as const) : (["a", "b"] as const)).map(
    (side) => places[jumperEnd(id, side)]?.at,
  );
  if (a === undefined || b === undefined) throw new Error(`The jumper ${id} has no two ends.`);
  return [a, b];
}
