import { sameValue } from "../../lib/same-value.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure, PassThrough } from "../../model/enclosure.ts";
import type { EnclosureId, EndKey } from "../../model/ids.ts";
import { parseEnd } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { copyOf } from "../plain-data.ts";
import { deviceAsProposed } from "./as-proposed.ts";
import { mergeFields, mergeMarks, mergeTable, sameThing, type Three } from "./merge.ts";
import type { Path, Writing } from "./writing.ts";

/** One enclosure that both states have, part by part. Cables are merged before: where ends lie follows from them. */
export function mergeEnclosure(
  writing: Writing<Installation>,
  path: Path,
  three: Required<Three>,
  movedDevices: ReadonlySet<string>,
): void {
  const was = three.was as Enclosure;
  const is = three.is as Enclosure;
  const theirs = three.theirs as Enclosure;
  const part = (name: string) => [...path, name] as const;
  const parts = <K extends keyof Enclosure>(name: K) => ({
    was: was[name] as object,
    is: is[name] as object,
    theirs: theirs[name] as object,
  });
  mergeFields(writing, path, three);
  mergeMarks(writing, path, three);
  if (was.kind === "box" && is.kind === "box" && theirs.kind === "box")
    mergeTable(writing, part("rings"), { was: was.rings, is: is.rings, theirs: theirs.rings });
  // An entry or splice is there for as long as something uses it: `dropUnused` looks at that.
  mergeTable(writing, part("entries"), parts("entries"), { remove: () => false });
  mergeTable(writing, part("splices"), parts("splices"), { remove: () => false });
  mergeTable(writing, part("jumpers"), parts("jumpers"));
  mergeTable(writing, part("devices"), parts("devices"), {
    // A record that was corrected as found stands for hardware that proposed has replaced: nothing is kept and replaced.
    add: (device, id) => (isReplacedIn(writing.value, id) ? undefined : deviceAsProposed(device as Device)),
    merge: (at, of) => mergeDevice(writing, at, of),
    skips: movedDevices,
  });
  mergeTable(writing, part("passThroughs"), parts("passThroughs"), {
    // What a cable that proposed took out runs through is of no interest there.
    add: (pass) => ((pass as PassThrough).cable in writing.value.cables ? copyOf(pass) : undefined),
  });
  mergeTable(writing, part("places"), parts("places"), {
    add: (place, end) => (liesIn(writing.value, is.id, end as EndKey) ? copyOf(place) : undefined),
    remove: (end, one, other) => !liesIn(writing.value, is.id, end as EndKey) && sameThing(one, other),
    merge: (at, of) => mergePlace(writing, at, of),
  });
}

const isReplacedIn = ({ enclosures }: Installation, id: string): boolean =>
  Object.values(enclosures).some(({ devices }) => Object.values(devices).some(({ replaces }) => replaces === id));

/** Which device of as found it replaces is for proposed alone to say. */
const OWN: ReadonlySet<string> = new Set(["replaces"]);
const OWN_ELSEWHERE: ReadonlySet<string> = new Set(["replaces", "order"]);

/** `elsewhere`: it stands in another enclosure than as found, so its place among the devices there is its own. */
export function mergeDevice(writing: Writing<object>, path: Path, three: Three, elsewhere = false): void {
  mergeFields(writing, path, three, elsewhere ? OWN_ELSEWHERE : OWN);
  mergeMarks(writing, path, three);
}

/** Facts of a joint hold only where it is: one field with it. */
const JOINT = ["at", "spare", "jointOhm"] as const;
const OF_JOINT: ReadonlySet<string> = new Set(JOINT);

function mergePlace(writing: Writing<object>, path: Path, three: Required<Three>): void {
  const was = jointOf(three.was);
  const is = jointOf(three.is);
  if (!sameValue(was, is) && sameValue(jointOf(three.theirs), was)) {
    for (const field of JOINT) if (!sameValue(was[field], is[field])) writing.set([...path, field], copyOf(is[field]));
  }
  mergeFields(writing, path, three, OF_JOINT);
  mergeMarks(writing, path, three);
}

const jointOf = (place: object | undefined): Readonly<Record<(typeof JOINT)[number], unknown>> => {
  const { at, spare, jointOhm } = place as Readonly<Record<(typeof JOINT)[number], unknown>>;
  return { at, spare, jointOhm };
};

/** Whether a conductor end lies in an enclosure, by the cable or jumper that it belongs to. */
function liesIn(installation: Installation, id: EnclosureId, end: EndKey): boolean {
  const parsed = parseEnd(end);
  if (parsed === undefined) return false;
  if (parsed.of === "jumper") return installation.enclosures[id]?.jumpers[parsed.jumper] !== undefined;
  const side = installation.cables[parsed.cable]?.sides[parsed.side];
  return side !== undefined && "enclosure" in side && side.enclosure === id;
}

/**
 * Takes out of an enclosure of proposed the entries and splices that nothing uses any more, or that came for nothing.
 * What a file brought unused stays.
 */
export function dropUnused(
  writing: Writing<Installation>,
  id: EnclosureId,
  { was, is, theirs }: { readonly [K in keyof Three]: Installation },
): void {
  const now = writing.value.enclosures[id];
  if (now === undefined) return;
  for (const [table, usedIn] of [
    ["entries", entriesUsed],
    ["splices", splicesUsed],
  ] as const) {
    const used = usedIn(writing.value, now);
    const unused = Object.keys(now[table]).filter((key) => !used.has(key));
    if (unused.length === 0) continue;
    const before = tableOf(was, id, table, usedIn);
    const after = tableOf(is, id, table, usedIn);
    const proposed = tableOf(theirs, id, table, usedIn);
    for (const key of unused) {
      const went = key in before.all && !(key in after.all);
      const cameForNothing = !(key in proposed.all) && after.used.has(key);
      if (proposed.used.has(key) || went || cameForNothing) writing.set(["enclosures", id, table, key], undefined);
    }
  }
}

type UsedIn = (installation: Installation, enclosure: Enclosure) => ReadonlySet<string>;

function tableOf(installation: Installation, id: EnclosureId, table: "entries" | "splices", usedIn: UsedIn) {
  const enclosure = installation.enclosures[id];
  if (enclosure === undefined) return { all: {}, used: new Set<string>() };
  return { all: enclosure[table], used: usedIn(installation, enclosure) };
}

function splicesUsed(_installation: Installation, { places }: Enclosure): ReadonlySet<string> {
  const used = new Set<string>();
  for (const { at } of Object.values(places)) if (at.kind === "splice") used.add(at.splice);
  return used;
}

function entriesUsed({ cables }: Installation, enclosure: Enclosure): ReadonlySet<string> {
  const used = new Set<string>();
  for (const { entry } of cablesInto(cables, enclosure.id)) used.add(entry);
  for (const pass of Object.values(enclosure.passThroughs)) used.add(pass.entryIn).add(pass.entryOut);
  return used;
}
