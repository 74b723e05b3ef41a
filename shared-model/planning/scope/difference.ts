import type { ScopeBox, ScopeChange, ScopeCounts, ScopeDifference } from "../../answers/scope.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { CableId, DeviceId, EnclosureId, EndKey } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { changedBetweenStates } from "../../queries/changed-between-states.ts";
import { inOrder } from "../../queries/in-order.ts";
import { replacementFor } from "../../queries/replaced.ts";
import type { EditionData } from "../../rules/editions/edition-data.ts";
import { type BoxPair, type DevicePlaces, homesOf } from "./box-pair.ts";
import { breakersAt } from "./breakers-at.ts";
import { devicePlaces } from "./device-places.ts";
import { endChanges, jumperChanges } from "./end-changes.ts";
import { cableChanges, looseChanges, remadeCables } from "./other-changes.ts";
import { boxChanges, deviceChanges, spliceChanges } from "./part-changes.ts";
import { boxLines, looseLines } from "./scope-lines.ts";

/**
 * The difference of two accounts of one house, thing by thing. Boxes that are the same in both are left out, and of the
 * others everything that is in them is told, what is kept too. Costs the boxes that changed, once it is known which.
 * @param edition Tells what internal clamps took of the volume that are taken out.
 */
export function scopeDifference(asFound: Installation, proposed: Installation, edition?: EditionData): ScopeDifference {
  const work = changedBetweenStates(asFound, proposed).enclosures;
  const former = replacementFor(proposed, asFound);
  const remade = remadeCables(asFound, proposed);
  const elsewhere: DevicePlaces = {
    get asFound() {
      return devicePlaces(asFound);
    },
    get proposed() {
      return devicePlaces(proposed);
    },
  };
  const ids = enclosuresInOrder(asFound, proposed).filter(
    (id) => work.has(id) || isRenamed(asFound.enclosures[id], proposed.enclosures[id]),
  );
  const boxes = ids.flatMap((id): readonly ScopeBox[] => {
    const pair = pairOf(id, { asFound, proposed, former, elsewhere });
    const box = scopeBox(pair, remade, work.get(id) ?? "not-opened", edition);
    return box === undefined ? [] : [box];
  });
  const loose = [...cableChanges(asFound, proposed), ...looseChanges(asFound, proposed, former)];
  const newCables = loose.filter(({ kind, item }) => kind === "new" && item.kind === "cable").length;
  return {
    boxes,
    elsewhere: loose,
    elsewhereLines: looseLines(loose),
    totals: {
      ...sumOf(boxes.map(({ counts }) => counts)),
      newCables,
      boxes: boxes.filter((one) => one.work !== "not-opened").length,
    },
  };
}

type House = Pick<BoxPair, "asFound" | "proposed" | "former" | "elsewhere">;

function pairOf(id: EnclosureId, house: House): BoxPair {
  const [before, after] = [house.asFound.enclosures[id], house.proposed.enclosures[id]];
  return { ...house, id, before, after, homes: homesOf(before, after) };
}

/** Boxes of proposed in the order of the drawing, then those that go. */
function enclosuresInOrder(asFound: Installation, proposed: Installation): readonly EnclosureId[] {
  const ids = inOrder<Enclosure>(proposed.enclosures).map(({ id }) => id);
  const gone = inOrder<Enclosure>(asFound.enclosures).filter(({ id }) => proposed.enclosures[id] === undefined);
  return [...ids, ...gone.map(({ id }) => id)];
}

/** A box, or a device in it, has another name: what hangs on the wall is the same and is written otherwise. */
function isRenamed(before: Enclosure | undefined, after: Enclosure | undefined): boolean {
  if (before === undefined || after === undefined || before === after) return false;
  if (before.name !== after.name) return true;
  if (before.devices === after.devices) return false;
  for (const id in after.devices) {
    const [was, is] = [before.devices[id as DeviceId], after.devices[id as DeviceId]];
    if (was !== undefined && is !== undefined && was.name !== is.name) return true;
  }
  return false;
}

function scopeBox(
  pair: BoxPair,
  remade: ReadonlySet<CableId>,
  work: ScopeBox["work"],
  edition: EditionData | undefined,
): ScopeBox | undefined {
  const { id, asFound, proposed, before, after, homes } = pair;
  const enclosure = after ?? before;
  if (enclosure === undefined) return undefined;
  const changes: readonly ScopeChange[] = [
    ...deviceChanges(pair),
    ...boxChanges(pair, edition),
    ...spliceChanges(pair),
    ...jumperChanges(pair),
    ...endChanges(pair, remade),
  ];
  // A cable that is measured anew, a device whose forerunner is forgotten: nobody opens a box for that.
  if (changes.every(({ kind }) => kind === "kept")) return undefined;
  const moved = new Set(
    changes.flatMap(({ detach, attach, item }) => (detach + attach > 0 ? [item.id as EndKey] : [])),
  );
  const { name, note, kind } = enclosure;
  const breakers = work === "not-opened" ? [] : breakersAt(asFound, proposed, id, moved);
  const there = devicePlaces(asFound);
  const newBreakers = breakers.filter(({ device }) => !there.has(device));
  return {
    enclosure: id,
    name,
    ...(note !== undefined && { note }),
    isPanel: kind === "panel",
    work,
    counts: countsOf(changes, after),
    changes,
    lines: boxLines(pair, changes),
    homes: inOrder(after?.splices ?? {}).map((splice) => {
      const home = homes.splices.get(splice.id);
      const was = home === undefined ? undefined : before?.splices[home];
      return {
        splice: splice.id,
        name: splice.name,
        ...(was !== undefined && { home: { splice: was.id, name: was.name } }),
      };
    }),
    breakers: breakers.filter(({ device }) => there.has(device)),
    ...(newBreakers.length > 0 && { newBreakers }),
  };
}

function countsOf(changes: readonly ScopeChange[], after: Enclosure | undefined): ScopeCounts {
  const sum = (field: "detach" | "attach"): number => changes.reduce((total, change) => total + change[field], 0);
  const count = (item: ScopeChange["item"]["kind"], ...kinds: readonly ScopeChange["kind"][]): number =>
    changes.filter((change) => change.item.kind === item && kinds.includes(change.kind)).length;
  return {
    detach: sum("detach"),
    attach: sum("attach"),
    newJoints: count("splice", "new"),
    // One that goes to another box is counted there.
    devices: changes.filter(
      ({ kind, item }) =>
        item.kind === "device" &&
        (kind === "new" ||
          kind === "removed" ||
          kind === "replaced" ||
          (kind === "moved" && after?.devices[item.id as DeviceId] !== undefined)),
    ).length,
    newJumpers: count("jumper", "new", "replaced"),
    newCables: 0,
  };
}

const NOTHING: ScopeCounts = { detach: 0, attach: 0, newJoints: 0, devices: 0, newJumpers: 0, newCables: 0 };

const sumOf = (all: readonly ScopeCounts[]): ScopeCounts =>
  all.reduce(
    (sum, one) => ({
      detach: sum.detach + one.detach,
      attach: sum.attach + one.attach,
      newJoints: sum.newJoints + one.newJoints,
      devices: sum.devices + one.devices,
      newJumpers: sum.newJumpers + one.newJumpers,
      newCables: 0,
    }),
    NOTHING,
  );
