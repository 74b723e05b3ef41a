import { catalogue, type Part } from "../lib/catalogue.ts";
import { type Problem, problem } from "../lib/result.ts";
import { parseOutlet } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";

const wording = catalogue({
  alreadyTheId: (id: Part, first: Part) => `"${id}" is already the id of ${first}.`,
  pluggedInto: (load: Part, plug: Part) => `${load} is plugged into "${plug}", which does not exist.`,
  labelOnNothing: "The label is on something that does not exist.",
  decisionAboutNothing: "The decision is about an outlet that does not exist.",
  intentAboutNothing: "The intent is about an enclosure that does not exist.",
  intentNamesCable: (cable: Part) => `The intent names cable "${cable}", which does not exist.`,
  directoryNamesNothing: "The directory names a breaker that does not exist.",
});

/** Devices, splices and jumpers are looked up by id alone, so an id may not occur in two enclosures. */
export function checkUniqueIds(installation: Installation, path: string, problems: Problem[]): void {
  const seen = new Set<string>();
  const twice = new Set<string>();
  const look = (id: string): void => {
    if (seen.has(id)) twice.add(id);
    else seen.add(id);
  };
  for (const id in installation.cables) look(id);
  for (const { id: box, devices, splices, jumpers } of Object.values(installation.enclosures)) {
    look(box);
    for (const id in devices) look(id);
    for (const id in splices) look(id);
    for (const id in jumpers) look(id);
  }
  for (const id of twice) checkUniqueId(installation, id, path, problems);
}

/** As `checkUniqueIds`, of one id: a look-up in each table. */
export function checkUniqueId(installation: Installation, id: string, path: string, problems: Problem[]): void {
  let first: string | undefined;
  const note = (table: object, at: string): void => {
    if (!(id in table)) return;
    if (first === undefined) first = `${at}/${id}`;
    else problems.push(problem("duplicate-id", `${at}/${id}`, wording.alreadyTheId(id, first)));
  };
  note(installation.cables, `${path}/cables`);
  note(installation.enclosures, `${path}/enclosures`);
  for (const { id: box, devices, splices, jumpers } of Object.values(installation.enclosures)) {
    const at = `${path}/enclosures/${box}`;
    note(devices, `${at}/devices`);
    note(splices, `${at}/splices`);
    note(jumpers, `${at}/jumpers`);
  }
}

/** Loads, labels, decisions, intents and directory lines are about things that the installation has. */
export function checkReferences(installation: Installation, path: string, problems: Problem[]): void {
  const devices = new Set<string>();
  for (const enclosure of Object.values(installation.enclosures))
    for (const id of Object.keys(enclosure.devices)) devices.add(id);
  for (const load of Object.values(installation.loads)) {
    if (!devices.has(parseOutlet(load.plug).device))
      problems.push(
        problem("unknown-outlet", `${path}/loads/${load.id}/plug`, wording.pluggedInto(load.name, load.plug)),
      );
  }
  for (const label of Object.values(installation.labels)) {
    const { on } = label;
    const known =
      "device" in on
        ? devices.has(on.device)
        : "enclosure" in on
          ? on.enclosure in installation.enclosures
          : on.cable in installation.cables;
    if (!known) problems.push(problem("unknown-item", `${path}/labels/${label.id}/on`, wording.labelOnNothing));
  }
  for (const key of Object.keys(installation.intent.outlets)) {
    if (!devices.has(parseOutlet(key as Parameters<typeof parseOutlet>[0]).device)) {
      problems.push(problem("unknown-outlet", `${path}/intent/outlets/${key}`, wording.decisionAboutNothing));
    }
  }
  for (const [box, intent] of Object.entries(installation.intent.boxes)) {
    const named = [...(intent.supply === undefined ? [] : [intent.supply]), ...Object.keys(intent.protect ?? {})];
    if (!(box in installation.enclosures))
      problems.push(problem("unknown-enclosure", `${path}/intent/boxes/${box}`, wording.intentAboutNothing));
    for (const cable of named) {
      if (!(cable in installation.cables))
        problems.push(problem("unknown-cable", `${path}/intent/boxes/${box}`, wording.intentNamesCable(cable)));
    }
  }
  for (const device of Object.keys(installation.directory)) {
    if (!devices.has(device))
      problems.push(problem("unknown-device", `${path}/directory/${device}`, wording.directoryNamesNothing));
  }
}
