import type { Draft } from "immer";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { EnclosureId } from "../model/ids.ts";
import { parseEnd } from "../model/ids.ts";
import type { Place } from "../model/place.ts";
import type { Installation, Project, StateName } from "../model/project.ts";
import { inOrder, nextOrder } from "../queries/in-order.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { keptEntries } from "../queries/kept-entries.ts";
import { draftInstallation, forgetEvidence, written } from "./move-ends.ts";

/** What is inside the one enclosure of some wiring, without what belongs to the enclosure itself. */
export function innerOf(from: Installation): Installation {
  const inside = (enclosure: Enclosure): Enclosure => ({
    ...enclosure,
    entries: {},
    passThroughs: {},
    places: keptEntries(enclosure.places, (_place, end) => parseEnd(end)?.of === "jumper"),
    ...(enclosure.kind === "box" && { rings: {} }),
  });
  return {
    ...from,
    enclosures: Object.fromEntries(Object.values(from.enclosures).map((one) => [one.id, inside(one)])),
    cables: {},
    labels: keptEntries(from.labels, ({ on }) => "device" in on),
    intent: { boxes: {}, outlets: from.intent.outlets },
  };
}

/** Puts renumbered devices, splices and jumpers into an enclosure, to the right of what is there. */
export function putInside(
  draft: Draft<Project>,
  state: StateName,
  into: EnclosureId,
  copies: Installation,
  before: Project,
): void {
  const installation = getInstallation(before, state);
  const home = written(installation.enclosures[into]);
  const inside = written(copies.enclosures[into]);
  const target = draftInstallation(draft, state);
  const box = written(target.enclosures[into]);
  for (const part of ["devices", "splices", "jumpers"] as const) {
    const first = nextOrder(home[part]);
    inOrder<{ readonly id: string; readonly order: number }>(inside[part]).forEach((item, index) => {
      (box[part] as Record<string, unknown>)[item.id] = { ...item, order: first + index };
    });
  }
  for (const { id } of inOrder(inside.devices)) freeSpace(written(box.devices[id]), home, box);
  for (const [end, place] of Object.entries(inside.places))
    box.places[end as keyof typeof inside.places] = fitting(place, home) as Draft<Place>;
  for (const kind of ["loads", "labels"] as const) {
    const first = nextOrder(installation[kind]);
    inOrder<{ readonly id: string; readonly order: number }>(copies[kind]).forEach((item, index) => {
      (target[kind] as Record<string, unknown>)[item.id] = { ...item, order: first + index };
    });
  }
  Object.assign(target.intent.outlets, copies.intent.outlets);
  Object.assign(target.directory, copies.directory);
}

/** A breaker keeps the number of its space only where the panel has that space free. */
function freeSpace(device: Draft<Device>, home: Enclosure, box: Draft<Enclosure>): void {
  const { slot, id } = device;
  if (slot === undefined) return;
  const taken = Object.values(box.devices).some((one) => one.id !== id && one.slot === slot);
  if (!taken && home.kind === "panel" && slot <= home.spaces) return;
  delete device.slot;
  forgetEvidence(device, "slot");
}

/** A nonmetallic box has no bond point. */
function fitting(place: Place, home: Enclosure): Place {
  if (place.at.kind !== "bond" || home.kind !== "box" || home.material !== "nonmetallic") return place;
  const { evidence, jointOhm: _ohm, ...rest } = place;
  const { at: _at, jointOhm: _mark, ...marks } = evidence ?? {};
  return { ...rest, at: { kind: "capped" }, ...(Object.keys(marks).length > 0 && { evidence: marks }) } as Place;
}
