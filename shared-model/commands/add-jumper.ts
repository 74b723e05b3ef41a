import type { Draft } from "immer";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Jumper } from "../model/enclosure.ts";
import type { EnclosureId } from "../model/ids.ts";
import { jumperEnd } from "../model/ids.ts";
import type { At } from "../model/place.ts";
import type { Project, StateName } from "../model/project.ts";
import { nextOrder } from "../queries/in-order.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { placeAt } from "./args-of-model.ts";
import { colourName, idText, nameText, record, stateName, wireSize } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { enclosureOr, nameOfPlace, noSuchPlace, samePoint } from "./find-or-refuse.ts";
import { idsInUse } from "./fresh-ids.ts";
import { growConnectors } from "./grow-connector.ts";
import { assumed } from "./make-device.ts";
import { draftInstallation, written } from "./move-ends.ts";

type Args = CommandArgs["add-jumper"];

const wording = catalogue({
  add: (jumper: Part, from: Part, to: Part) => `Add jumper ${jumper} from ${from} to ${to}`,
  addOne: (jumper: Part) => `Add jumper ${jumper}`,
  onePoint: "Both ends of the jumper would be on one point. Pick another place for one end.",
});

/** Adds a short conductor between two places of one enclosure: pigtail, link, bonding jumper. */
export const addJumper = defineCommand<Args>({
  id: "add-jumper",
  args: record<Args>({
    state: stateName,
    enclosure: idText,
    jumper: idText,
    name: nameText,
    awg: wireSize,
    colour: colourName,
    from: placeAt,
    to: placeAt,
  }),
  label(project, { state, enclosure, name, from, to }) {
    const { found } = enclosureOr(project, state, enclosure);
    if (found === undefined) return wording.addOne(name);
    return wording.add(name, nameOfPlace(found.enclosure, from), nameOfPlace(found.enclosure, to));
  },
  refuse(project, { state, enclosure, jumper, from, to }) {
    const { found, no } = enclosureOr(project, state, enclosure);
    if (no !== undefined) return no;
    const missing = noSuchPlace(found, from) ?? noSuchPlace(found, to);
    if (missing !== undefined) return missing;
    if (samePoint(from, to)) return refusal("jumper-to-itself", wording.onePoint);
    return idsInUse(project, jumper);
  },
  apply(draft, { state, enclosure, jumper: id, name, awg, colour, from, to }, before) {
    const order = nextOrder(written(getInstallation(before, state).enclosures[enclosure]).jumpers);
    const jumper: Jumper = {
      id,
      name,
      awg,
      colour,
      material: "copper",
      stranded: false,
      order,
      evidence: assumed(["material", "stranded"]),
    };
    makeJumper(draft, state, enclosure, jumper, from, to);
  },
});

/** Adds a jumper with both its ends placed. */
export function makeJumper(
  draft: Draft<Project>,
  state: StateName,
  enclosure: EnclosureId,
  jumper: Jumper,
  from: At,
  to: At,
): void {
  const box = written(draftInstallation(draft, state).enclosures[enclosure]);
  box.jumpers[jumper.id] = jumper as Draft<Jumper>;
  box.places[jumperEnd(jumper.id, "a")] = { at: { ...from } };
  box.places[jumperEnd(jumper.id, "b")] = { at: { ...to } };
  growConnectors(
    draftInstallation(draft, state),
    enclosure,
    [from, to].flatMap((at) => (at.kind === "splice" ? [at.splice] : [])),
  );
}
