import { findConnector } from "../../shared-model/catalog/connectors.ts";
import { findDeviceType } from "../../shared-model/catalog/device-types.ts";
import { findEnclosureItem } from "../../shared-model/catalog/enclosure-items.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { cablesInto } from "../../shared-model/queries/cables-into.ts";
import { nameOfEnd } from "../../shared-model/queries/end-facts.ts";
import { inOrder } from "../../shared-model/queries/in-order.ts";
import { membersOf } from "../../shared-model/queries/landings.ts";
import { farSideName } from "./far-side-name.ts";
import { laterWording } from "./later-words.ts";

/** Boxes in plain words, for a letter or a list: what each is, what is in it, where its cables go, what is joined. */
export function textOfBoxes(installation: Installation, ids: ReadonlySet<EnclosureId>): string {
  return inOrder<Enclosure>(installation.enclosures)
    .filter(({ id }) => ids.has(id))
    .map((box) => linesOf(installation, box).join("\n"))
    .join("\n\n");
}

function linesOf(installation: Installation, box: Enclosure): readonly string[] {
  const make = findEnclosureItem(box.item)?.title ?? box.item;
  const note = box.note === undefined || box.note === "" ? "" : ` ${box.note}`;
  return [
    `${box.name}${note}: ${make}`,
    ...inOrder(box.devices).map(({ name, type }) => `  ${name}: ${findDeviceType(type)?.title ?? type}`),
    ...cablesInto(installation.cables, box.id).map(({ cable, side }) => {
      const long = cable.lengthFt === undefined ? "" : laterWording.ft(cable.lengthFt);
      return `  ${cable.name}: ${farSideName(installation, cable, side)}${long}`;
    }),
    ...inOrder(box.splices).map(({ id, name, connector }) => {
      const members = membersOf(box, id).map((end) => nameOfEnd(installation, box, end));
      return laterWording.splice2(
        name,
        members.join(", "),
        (findConnector(connector)?.title ?? connector).toLowerCase(),
      );
    }),
  ];
}
