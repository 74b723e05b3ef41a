import type { ScopeBox, ScopeItem } from "../../answers/scope.ts";
import { findDeviceType } from "../../catalog/device-types.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { DeviceId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import { landedAt } from "../../queries/landings.ts";
import { listed } from "../../rules/rule-parts.ts";
import { placeWords } from "../scope/scope-words.ts";
import { inBox, type StepDraft } from "./step-draft.ts";
import { endsOf } from "./wire-classes.ts";

/** Stages 10 and 11: the second reading, torque, folding. */
export function finish(installation: Installation, after: Enclosure, box: ScopeBox): readonly StepDraft[] {
  const where = inBox(box);
  const touched = new Set(
    endsOf(box).flatMap(({ attach, will }) => (attach > 0 && will?.at?.kind === "terminal" ? [will.at.device] : [])),
  );
  for (const { item, kind } of box.changes)
    if (item.kind === "device" && kind !== "kept" && kind !== "removed") touched.add(item.id as DeviceId);
  const devices = [...touched].flatMap((id) => after.devices[id] ?? []);
  const sided = devices.filter(({ type }) => findDeviceType(type)?.terminals.some(({ group }) => group === "LOAD"));
  const landed = devices.filter((device) =>
    findDeviceType(device.type)?.terminals.some(({ name }) => landedAt(after, device.id, name).length > 0),
  );
  const isFedOn = sided.some((device) =>
    findDeviceType(device.type)?.terminals.some(
      ({ group, name }) => group === "LOAD" && landedAt(after, device.id, name).length > 0,
    ),
  );
  const item = ({ id, name }: (typeof devices)[number]): ScopeItem => ({ kind: "device", id, name });
  return [
    ...sided.map(
      (device): StepDraft => ({
        ...where,
        id: `HP4:${box.enclosure}:${device.id}`,
        stage: 10,
        kind: "hold",
        hold: "HP4",
        items: [item(device)],
        text: `${device.name}: read LINE and LOAD on its face a second time against the card.`,
        details: sideWords(installation, after, device.id),
        ifNot: "They are exchanged: take the pairs off and land them again.",
      }),
    ),
    ...landed.map(
      (device): StepDraft => ({
        ...where,
        id: `torque:${box.enclosure}:${device.id}`,
        stage: 11,
        kind: "torque",
        items: [item(device)],
        text: `Tighten every terminal of ${device.name} to the torque marked on the device.`,
      }),
    ),
    ...(box.counts.attach + box.counts.devices === 0 || box.isPanel
      ? []
      : [
          {
            ...where,
            id: `fold:${box.enclosure}`,
            stage: 11,
            kind: "fold" as const,
            items: [{ kind: "enclosure" as const, id: box.enclosure, name: box.name }],
            text: `${box.name}: fold grounds to the back, then neutrals, hots in front${isFedOn ? "; LINE and LOAD bundles apart" : ""}.`,
            details: devices.length === 0 ? [] : [`Put ${listed(devices.map(({ name }) => name))} in place.`],
          },
        ]),
  ];
}

function sideWords(installation: Installation, box: Enclosure, id: DeviceId): readonly string[] {
  const device = box.devices[id];
  const terminals = (device && findDeviceType(device.type)?.terminals) ?? [];
  return terminals.flatMap(({ name, group }) => {
    if (group === undefined || device === undefined) return [];
    const words = placeWords(box, { kind: "terminal", device: id, terminal: name, hole: 1 });
    const ends = landedAt(box, id, name);
    return [
      ends.length === 0
        ? `${words}: nothing, taped as shipped.`
        : `${words}: ${ends.map(({ end }) => nameOfEnd(installation, box, end)).join(", ")}.`,
    ];
  });
}
