import type { Draft } from "immer";
import { findCableItem } from "../catalog/cable-items.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Cable, CableSide } from "../model/cable.ts";
import { type ConductorKey, cableEnd } from "../model/ids.ts";
import type { Installation, Project, StateName } from "../model/project.ts";
import { nextOrder } from "../queries/in-order.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { celsius, feet } from "../units/quantity.ts";
import { lengthFt, sideTarget } from "./args-of-model.ts";
import { catalogText, idText, nameText, optional, record, stateName } from "./args-shape.ts";
import type { CommandArgs, SideTarget } from "./command-args.ts";
import { defineCommand, type Refusal, refusal } from "./define-command.ts";
import { makeEntry, noSuchEntry } from "./entries.ts";
import { enclosureOr, installationOr } from "./find-or-refuse.ts";
import { idsInUse } from "./fresh-ids.ts";
import { notInStock, unnamed } from "./item-words.ts";
import { assumed } from "./make-device.ts";
import { draftInstallation, written } from "./move-ends.ts";
import { copyOf } from "./plain-data.ts";

type Args = CommandArgs["route-cable"];

const wording = catalogue({
  bothOutside: "A cable needs one side in a box or panel. Pick an enclosure for one of them.",
  outside: "outside the drawing",
  route: (cable: Part, from: Part, to: Part) => `Run ${cable} from ${from} to ${to}`,
  sameEnclosure:
    "Both sides would be in one enclosure. Pick another for one side, or add a jumper to join two points inside.",
});

/** Runs a cable of the stock between two enclosures, or from one into open country. Every end arrives capped. */
export const routeCable = defineCommand<Args>({
  id: "route-cable",
  args: record<Args>({
    state: stateName,
    id: idText,
    item: catalogText,
    name: nameText,
    a: sideTarget,
    b: sideTarget,
    lengthFt: optional(lengthFt),
  }),
  label(project, { state, name, a, b }) {
    const installation = getInstallation(project, state);
    return wording.route(name, nameOfSide(installation, a), nameOfSide(installation, b));
  },
  refuse(project, { state, id, item, a, b }) {
    const { no } = installationOr(project, state);
    if (no !== undefined) return no;
    if (findCableItem(item) === undefined) return refusal("unknown-catalog-item", notInStock.cable(item));
    return noSuchSide(project, state, a) ?? noSuchSide(project, state, b) ?? sidesMeet(a, b) ?? idsInUse(project, id);
  },
  apply(draft, { state, id, item: itemId, name, a, b, lengthFt: length }, before) {
    const item = findCableItem(itemId);
    if (item === undefined) throw new Error(`No cable item ${itemId}.`);
    const target = draftInstallation(draft, state);
    const facts = {
      construction: item.construction,
      conductors: item.conductors,
      ...(item.insulationC !== undefined && { insulationC: celsius(item.insulationC) }),
    };
    const cable: Cable = {
      id,
      name,
      item: itemId,
      ...facts,
      sides: { a: makeSide(target, a), b: makeSide(target, b) },
      ...(length !== undefined && { lengthFt: feet(length) }),
      order: nextOrder(getInstallation(before, state).cables),
      evidence: assumed(Object.keys(facts)),
    };
    // The catalogue's own records must not be shared with a document that freezes and edits them.
    target.cables[id] = copyOf(cable) as Draft<Cable>;
    for (const side of ["a", "b"] as const) capEnds(target, cable, side);
  },
});

const nameOfSide = (installation: Installation, side: SideTarget): string =>
  "outside" in side ? wording.outside : (installation.enclosures[side.enclosure]?.name ?? unnamed.box);

/** Why a cable side cannot go there. */
export function noSuchSide(project: Project, state: StateName, side: SideTarget): Refusal | undefined {
  if ("outside" in side) return undefined;
  const { found, no } = enclosureOr(project, state, side.enclosure);
  return no ?? noSuchEntry(project, found.enclosure, side);
}

/** A cable joins two different enclosures, or one and open country. */
export function sidesMeet(a: SideTarget | CableSide, b: SideTarget | CableSide): Refusal | undefined {
  if ("outside" in a && "outside" in b) return refusal("both-sides-outside", wording.bothOutside);
  if ("outside" in a || "outside" in b || a.enclosure !== b.enclosure) return undefined;
  return refusal("same-enclosure", wording.sameEnclosure);
}

export function makeSide(target: Draft<Installation>, side: SideTarget): CableSide {
  if ("outside" in side) return { outside: side.outside };
  return { enclosure: side.enclosure, entry: makeEntry(target, side.enclosure, side) };
}

/** Gives every end of a side its first place. */
export function capEnds(target: Draft<Installation>, cable: Cable, side: "a" | "b"): void {
  const where = cable.sides[side];
  if (!("enclosure" in where)) return;
  const { places } = written(target.enclosures[where.enclosure]);
  for (const key of Object.keys(cable.conductors) as ConductorKey[])
    places[cableEnd(cable.id, key, side)] = { at: { kind: "capped" } };
}
