import type { Operable } from "../../../shared-model/answers/energised.ts";
import type { BoxDrawing, DeviceDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import { CONDITION_TAGS, leadWords, rounded, standsWords } from "../../state/energise/energise-words.ts";
import type { BoxItem } from "../box-items.ts";
import type { Lit } from "./lit.ts";
import { wording } from "./words.ts";

/** Keys of what only an energised drawing has. */
export const TEST_KEY = "test ";
export const RESET_KEY = "reset ";
export const TERMINAL_KEY = "terminal ";

/**
 * What can be pressed in a box while it is energised: its things, named with how they stand; TEST and RESET of
 * ground-fault receptacles; and every terminal while a lead is in the hand.
 */
export function litItems(
  items: readonly BoxItem[],
  drawing: BoxDrawing,
  lit: Lit,
  inHand: boolean,
): readonly BoxItem[] {
  const named = items.map((item) => ({ ...item, name: litName(item, lit) }));
  const faces = drawing.devices.flatMap((device) => buttonsOf(drawing.enclosure, device, lit));
  const terminals = inHand ? drawing.devices.flatMap((device) => terminalsOf(drawing.enclosure, device, lit)) : [];
  return [...named, ...faces, ...terminals];
}

function litName({ name, subject }: BoxItem, { box, answer }: Lit): string {
  if (subject.kind === "end") return withCondition(name, box.ends[subject.id]);
  if (subject.kind === "splice") return withCondition(name, box.splices[subject.id]);
  if (subject.kind !== "device") return name;
  const stands = answer.operables
    .filter((one) => one.device === subject.id)
    .map((one) => (one.kind === "load" && one.plugged ? `${one.name} ${standsWords(one)}` : standsWords(one)));
  return [name, ...stands].join(", ");
}

const withCondition = (name: string, condition: Lit["box"]["bond"]): string =>
  condition === undefined
    ? name
    : `${name}, ${CONDITION_TAGS[condition.kind].word}${condition.shows ? `, ${rounded(condition.volts)} V to ground` : ""}`;

/** TEST and RESET where the face of the device has them. */
function buttonsOf(enclosure: EnclosureId, device: DeviceDrawing, { answer }: Lit): readonly BoxItem[] {
  const { face, family, name } = device;
  const one = answer.operables.find(isGroundFaultOf(device));
  if (one === undefined || family !== "ground-fault-receptacle" || face.height < 80 || face.width < 40) return [];
  const at = { x: face.x + face.width / 2, y: face.y + face.height / 2 };
  const button = (key: string, word: string, x: number, width: number): BoxItem => ({
    key: `${key}${device.device}`,
    subject: { kind: "device", enclosure, id: device.device },
    name: wording.ofWord(word, name, standsWords(one)),
    at: { x: at.x + x + width / 2, y: at.y },
    area: { x: at.x + x, y: at.y - 12, width, height: 24 },
  });
  return [button(TEST_KEY, "TEST", -45, 42), button(RESET_KEY, "RESET", -3, 48)];
}

const isGroundFaultOf =
  ({ device }: DeviceDrawing) =>
  (one: Operable): boolean =>
    one.kind === "ground-fault" && one.device === device;

function terminalsOf(enclosure: EnclosureId, { device, terminals }: DeviceDrawing, { box }: Lit): readonly BoxItem[] {
  return terminals.map(({ terminal, screw }) => ({
    key: `${TERMINAL_KEY}${device} ${terminal}`,
    subject: { kind: "device", enclosure, id: device },
    name: withCondition(
      wording.terminal(leadWords({ kind: "device", device, node: terminal })),
      box.devices[device]?.[terminal],
    ),
    at: screw,
    area: { x: screw.x - 12, y: screw.y - 12, width: 24, height: 24 },
  }));
}
