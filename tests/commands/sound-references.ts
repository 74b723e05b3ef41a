import { parseOutlet } from "../../shared-model/model/ids.ts";
import type { Installation, Project } from "../../shared-model/model/project.ts";
import { outletsOf } from "../../shared-model/queries/outlets-of.ts";

/** What commands keep true beyond the invariants: nothing is left over that points at, or was made for, what is gone. */
export function leftOvers(project: Project): readonly string[] {
  const installations = [project.asFound, ...(project.proposed === undefined ? [] : [project.proposed])];
  return [...installations.flatMap((one) => inInstallation(one)), ...inLayout(project, installations)];
}

function inInstallation(installation: Installation): readonly string[] {
  const found: string[] = [];
  for (const enclosure of Object.values(installation.enclosures)) {
    const used = new Set<string>();
    for (const cable of Object.values(installation.cables))
      for (const side of [cable.sides.a, cable.sides.b])
        if ("enclosure" in side && side.enclosure === enclosure.id) used.add(side.entry);
    for (const pass of Object.values(enclosure.passThroughs)) used.add(pass.entryIn).add(pass.entryOut);
    for (const id of Object.keys(enclosure.entries)) if (!used.has(id)) found.push(`entry ${id} is used by nothing`);
    const joined = new Set(
      Object.values(enclosure.places).flatMap(({ at }) => (at.kind === "splice" ? [at.splice] : [])),
    );
    for (const id of Object.keys(enclosure.splices))
      if (!joined.has(id as never)) found.push(`splice ${id} joins nothing`);
    for (const device of Object.values(enclosure.devices))
      if (device.tiedTo !== undefined && !(device.tiedTo in enclosure.devices))
        found.push(`${device.id} is tied to nothing`);
    for (const [end, place] of Object.entries(enclosure.places))
      if (place.spare === true && place.at.kind !== "capped") found.push(`${end} is spare but not capped`);
  }
  for (const [box, intent] of Object.entries(installation.intent.boxes))
    for (const cable of [...(intent.supply === undefined ? [] : [intent.supply]), ...Object.keys(intent.protect ?? {})])
      if (!entersBox(installation, cable, box)) found.push(`the intent of ${box} names ${cable}, which is not there`);
  const outlets = new Set(
    Object.values(installation.enclosures).flatMap((one) =>
      Object.values(one.devices).flatMap((device) => outletsOf(device).map((outlet) => outlet.key)),
    ),
  );
  for (const load of Object.values(installation.loads))
    if (!outlets.has(load.plug)) found.push(`load ${load.id} is plugged into ${load.plug}, which is no outlet`);
  for (const key of Object.keys(installation.intent.outlets))
    if (!outlets.has(key as never))
      found.push(`there is a wish for ${key} of ${parseOutlet(key as never).device}, no outlet`);
  return [...found, ...marksOfNothing(installation)];
}

function entersBox(installation: Installation, id: string, box: string): boolean {
  const cable = Object.values(installation.cables).find((one) => one.id === id);
  return Object.values(cable?.sides ?? {}).some((side) => "enclosure" in side && side.enclosure === box);
}

/** A mark of how a field is known needs the field, except where another record holds the fact. */
function marksOfNothing(installation: Installation): readonly string[] {
  const found: string[] = [];
  const check = (entity: object & { evidence?: Readonly<Record<string, string>> }, name: string): void => {
    for (const field of Object.keys(entity.evidence ?? {}))
      if (!(field in entity) && !field.startsWith("conductors-"))
        found.push(`${name}: mark of ${field}, which is absent`);
  };
  for (const one of Object.values(installation.cables)) check(one, one.id);
  for (const one of Object.values(installation.loads)) check(one, one.id);
  for (const enclosure of Object.values(installation.enclosures)) {
    check(enclosure, enclosure.id);
    for (const table of [enclosure.devices, enclosure.splices, enclosure.jumpers, enclosure.entries, enclosure.places])
      for (const [id, one] of Object.entries(table)) check(one, id);
  }
  return found;
}

function inLayout({ layout }: Project, installations: readonly Installation[]): readonly string[] {
  const boxes = new Set(installations.flatMap((one) => Object.keys(one.enclosures)));
  const cables = new Set(installations.flatMap((one) => Object.keys(one.cables)));
  const splices = new Set(
    installations.flatMap((one) => Object.values(one.enclosures).flatMap((box) => Object.keys(box.splices))),
  );
  return [
    ...Object.keys(layout.enclosures).filter((id) => !boxes.has(id)),
    ...Object.keys(layout.pinned ?? {}).filter((id) => !boxes.has(id)),
    ...Object.keys(layout.cables).filter((id) => !cables.has(id)),
    ...Object.keys(layout.splices).filter((id) => !splices.has(id)),
    ...[...boxes].filter((id) => !(id in layout.enclosures)),
  ].map((id) => `the layout and the drawing disagree about ${id}`);
}
