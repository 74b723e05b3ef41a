import type { Draft, Patch } from "immer";
import { sameValue } from "../../lib/same-value.ts";
import type { Cable } from "../../model/cable.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { CableId, EnclosureId, SpliceId } from "../../model/ids.ts";
import type { Installation, Project } from "../../model/project.ts";
import { clearField } from "../take-away.ts";
import { enclosureAsProposed } from "./as-proposed.ts";
import { type Edited, editedBy } from "./edited.ts";
import { mergeFields, mergeMarks, mergeTable, mergeValues, type Three } from "./merge.ts";
import { dropUnused, mergeEnclosure } from "./merge-enclosure.ts";
import { mergedIntent } from "./merge-intent.ts";
import { mergeMoved, movedDevices } from "./merge-moved-device.ts";
import { dropUnshared } from "./shared-tables.ts";
import { whatBreaks } from "./what-breaks.ts";
import { type Path, replay, type Write, Writing } from "./writing.ts";

/** What becomes of an as-found edit in proposed: writes that carry it on, or why it cannot be carried on. */
export type CarryOver =
  | { readonly ok: true; readonly writes: readonly Write[]; readonly proposed: Installation }
  | { readonly ok: false; readonly because: string };

/**
 * Follows an edit of as found in proposed: field by field and end by end, wherever proposed held what as found held
 * before. Undefined where there is nothing to do.
 */
export function carryOver(before: Project, after: Project, patches: readonly Patch[]): CarryOver | undefined {
  const { proposed: theirs } = after;
  if (before.proposed === undefined || theirs === undefined || before.asFound === after.asFound) return undefined;
  const states: States = { was: withoutGoneRooms(before, after), is: after.asFound, theirs };
  const edited = editedBy(patches, states.was, states.is);
  const writing = new Writing<Installation>(theirs);
  const stuck = merge(writing, states, edited);
  if (stuck !== undefined) return { ok: false, because: stuck };
  if (writing.writes.length === 0) return undefined;
  const because = whatBreaks({ ...after, proposed: writing.value }, theirs, writing.writes);
  if (because !== undefined) return { ok: false, because };
  return { ok: true, writes: writing.writes, proposed: writing.value };
}

/**
 * As found before the edit. Rooms belong to both states: where one went, boxes of both have left it already, and neither
 * has diverged by that.
 */
function withoutGoneRooms({ asFound, rooms }: Project, after: Project): Installation {
  if (rooms === after.rooms) return asFound;
  const enclosures = { ...asFound.enclosures };
  for (const enclosure of Object.values(enclosures)) {
    if (enclosure.roomId === undefined || enclosure.roomId in after.rooms) continue;
    const copy: Draft<Enclosure> = { ...(enclosure as Draft<Enclosure>) };
    if (copy.evidence !== undefined) copy.evidence = { ...copy.evidence };
    clearField(copy, "roomId");
    enclosures[enclosure.id] = copy as Enclosure;
  }
  return { ...asFound, enclosures };
}

/** Writes it into the draft of the document that the edit made, `after`. */
export function writeCarried(
  draft: Draft<Project>,
  after: Project,
  { writes, proposed }: Extract<CarryOver, { ok: true }>,
): void {
  replay(draft.proposed as object, writes);
  const gone = writes.flatMap(({ path, value }) => (value === undefined ? [path] : []));
  const gonePaths = (table: string, length: number) =>
    gone.flatMap((path) => (path[length - 2] === table && path.length === length ? [path[length - 1] as string] : []));
  const enclosures = gonePaths("enclosures", 2) as EnclosureId[];
  const inside = enclosures.flatMap((id) => Object.keys(after.proposed?.enclosures[id]?.splices ?? {}));
  dropUnshared(draft, after, [after.asFound, proposed], {
    enclosures,
    cables: gonePaths("cables", 2) as CableId[],
    splices: [...gonePaths("splices", 4), ...inside] as SpliceId[],
  });
}

interface States {
  readonly was: Installation;
  readonly is: Installation;
  readonly theirs: Installation;
}

/** Gives a sentence where the merge itself cannot go on. */
function merge(writing: Writing<Installation>, states: States, edited: Edited): string | undefined {
  mergeTable(writing, ["cables"], tablesOf(states, "cables"), {
    only: edited.cables,
    merge: (path, three) => mergeCable(writing, path, three),
  });
  const stuck = mergeEnclosures(writing, states, edited);
  if (stuck !== undefined) return stuck;
  mergeTable(writing, ["loads"], tablesOf(states, "loads"), { only: edited.loads });
  mergeTable(writing, ["labels"], tablesOf(states, "labels"), { only: edited.labels });
  mergeValues(writing, ["directory"], tablesOf(states, "directory"), edited.directory);
  const { was, is, theirs } = tablesOf(states, "intent");
  const outlets = { was: was.outlets, is: is.outlets, theirs: theirs.outlets };
  mergeValues(writing, ["intent", "outlets"], outlets, edited.outletWishes);
  for (const id of edited.boxIntents) {
    const merged = mergedIntent(was.boxes[id], is.boxes[id], theirs.boxes[id]);
    if (!sameValue(merged, theirs.boxes[id])) writing.set(["intent", "boxes", id], merged);
  }
  return undefined;
}

const tablesOf = <K extends keyof Installation>({ was, is, theirs }: States, name: K) => ({
  was: was[name],
  is: is[name],
  theirs: theirs[name],
});

const SIDES: ReadonlySet<string> = new Set(["sides"]);

/** Each side is one field: where a cable ends in a box, and by which entry, is one fact. */
function mergeCable(writing: Writing<Installation>, path: Path, three: Required<Three>): void {
  const [was, is, theirs] = [three.was as Cable, three.is as Cable, three.theirs as Cable];
  mergeFields(writing, path, three, SIDES);
  mergeValues(writing, [...path, "sides"], { was: was.sides, is: is.sides, theirs: theirs.sides });
  const conductors = { was: was.conductors, is: is.conductors, theirs: theirs.conductors };
  mergeTable(writing, [...path, "conductors"], conductors);
  mergeMarks(writing, path, three);
}

function mergeEnclosures(writing: Writing<Installation>, states: States, edited: Edited): string | undefined {
  const moved = movedDevices(states, edited.enclosures);
  for (const move of moved.values()) {
    const stuck = mergeMoved(writing, states.theirs, move);
    if (stuck !== undefined) return stuck;
  }
  const movedIds: ReadonlySet<string> = new Set(moved.keys());
  mergeTable(writing, ["enclosures"], tablesOf(states, "enclosures"), {
    only: edited.enclosures,
    add: (enclosure) => enclosureAsProposed(enclosure as Enclosure),
    merge: (path, three) => mergeEnclosure(writing, path, three, movedIds),
  });
  for (const id of edited.enclosures) dropUnused(writing, id, states);
  return undefined;
}
