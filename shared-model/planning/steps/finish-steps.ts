import type { ScopeBox, ScopeItem } from "../../answers/scope.ts";
import { findDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { DeviceId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import { landedAt } from "../../queries/landings.ts";
import { listed } from "../../rules/rule-parts.ts";
import { placeWords } from "../scope/scope-words.ts";
import { inBox, type StepDraft } from "./step-draft.ts";
import { endsOf } from "./wire-classes.ts";

const wording = catalogue({
  exchanged: "They are exchanged: take the pairs off and land them again.",
  fold: (box: Part) => `${box}: fold grounds to the back, then neutrals, hots in front.`,
  foldApart: (box: Part) =>
    `${box}: fold grounds to the back, then neutrals, hots in front; LINE and LOAD bundles apart.`,
  handleOff: "Its handle is off. That it clips in is no listing: read the marking of the panel.",
  inPlace: (devices: Part) => `Put ${devices} in place.`,
  on: (terminal: Part, ends: Part) => `${terminal}: ${ends}.`,
  putInto: (breaker: Part, panel: Part) => `Put ${breaker} into its space in ${panel}.`,
  readAgain: (device: Part) => `${device}: read LINE and LOAD on its face a second time against the card.`,
  taped: (terminal: Part) => `${terminal}: nothing, taped as shipped.`,
  tighten: (device: Part) => `Tighten every terminal of ${device} to the torque marked on the device.`,
});

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
        text: wording.readAgain(device.name),
        details: sideWords(installation, after, device.id),
        ifNot: wording.exchanged,
      }),
    ),
    ...landed.map(
      (device): StepDraft => ({
        ...where,
        id: `torque:${box.enclosure}:${device.id}`,
        stage: 11,
        kind: "torque",
        items: [item(device)],
        text: wording.tighten(device.name),
      }),
    ),
    ...putInto(after, box),
    ...(box.counts.attach + box.counts.devices === 0 || box.isPanel
      ? []
      : [
          {
            ...where,
            id: `fold:${box.enclosure}`,
            stage: 11,
            kind: "fold" as const,
            items: [{ kind: "enclosure" as const, id: box.enclosure, name: box.name }],
            text: isFedOn ? wording.foldApart(box.name) : wording.fold(box.name),
            details: devices.length === 0 ? [] : [wording.inPlace(listed(devices.map(({ name }) => name)))],
          },
        ]),
  ];
}

/** Breakers that come into a panel. */
function putInto(after: Enclosure, box: ScopeBox): readonly StepDraft[] {
  if (!box.isPanel) return [];
  return box.changes.flatMap(({ item, kind }): readonly StepDraft[] => {
    const device = item.kind === "device" ? after.devices[item.id as DeviceId] : undefined;
    if (device?.breakerRatingA === undefined || (kind !== "new" && kind !== "replaced" && kind !== "moved")) return [];
    return [
      {
        ...inBox(box),
        id: `put-into:${box.enclosure}:${device.id}`,
        stage: 11,
        kind: "fold",
        items: [{ kind: "device", id: device.id, name: device.name }],
        text: wording.putInto(device.name, box.name),
        details: [wording.handleOff],
      },
    ];
  });
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
        ? wording.taped(words)
        : wording.on(words, ends.map(({ end }) => nameOfEnd(installation, box, end)).join(", ")),
    ];
  });
}
