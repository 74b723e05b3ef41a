import type { ScopeBox, ScopeChange, ScopeItem } from "../../answers/scope.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { DeviceId, EndKey } from "../../model/ids.ts";
import type { EndCondition } from "../../model/place.ts";
import type { Installation } from "../../model/project.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import { listed } from "../../rules/rule-parts.ts";
import { deviceWords } from "../scope/scope-words.ts";
import { inBox, type StepDraft } from "./step-draft.ts";
import { classOfEnd, endsOf, WIRE_CLASSES } from "./wire-classes.ts";

/** An end that is to be cut back. */
const CUT_BACK: Readonly<Record<Exclude<EndCondition, "good">, string>> = catalogue({
  brittle: "Its end is brittle: cut it back.",
  burnt: "Its end is burnt: cut it back.",
  nicked: "Its end is nicked: cut it back.",
});

const wording = catalogue({
  anotherSupply: "Another cable is the supply: stop, correct the drawing as found, and plan again.",
  doubtful: (cables: Part) => `Nobody has seen or measured all ends of ${cables}.`,
  everyConductor: (box: Part) => `${box}, every conductor`,
  itIs: (name: Part) => `On the plan: ${name}.`,
  notProved:
    "Where the role of a cable is not proved: cap every conductor singly, spread them, energise, read each pair, switch off, verify dead again.",
  photograph: (box: Part) => `${box}: photograph it before anything is parted.`,
  photographTag: (box: Part, cables: Part) => `${box}: photograph it; tag ${cables} before anything is parted.`,
  supply: (box: Part) => `${box}: the supply is proved and marked on its jacket; the box is dead again.`,
  supplyNamed: (box: Part, cable: Part) =>
    `${box}: the supply ${cable} is proved and marked on its jacket; the box is dead again.`,
  takeOff: (end: Part, place: Part) => `Take ${end} off ${place}.`,
  takeOut: (device: Part, box: Part) => `Take ${device} out of ${box}, conductors still on it.`,
  takeOutOf: (end: Part, joint: Part) => `Take ${end} out of ${joint}.`,
});

/** Stage 4: photographs, devices out, ends off, each with its old place. */
export function takeApart(installation: Installation, before: Enclosure, box: ScopeBox): readonly StepDraft[] {
  const detached = endsOf(box)
    .filter(({ detach }) => detach > 0)
    .sort((p, q) => takenRank(installation, before, p) - takenRank(installation, before, q));
  const taken = box.changes.filter(
    ({ item, kind }) =>
      item.kind === "device" &&
      (kind === "removed" || kind === "replaced" || kind === "moved") &&
      deviceOf(before, item) !== undefined,
  );
  if (detached.length + taken.length === 0) return [];
  const cables = [...new Set(cablesInto(installation.cables, before.id).map(({ cable }) => cable.name))];
  const where = inBox(box);
  return [
    {
      ...where,
      id: `photograph:${box.enclosure}`,
      stage: 4,
      kind: "photograph",
      items: [{ kind: "enclosure", id: box.enclosure, name: box.name }],
      text: cables.length === 0 ? wording.photograph(box.name) : wording.photographTag(box.name, listed(cables)),
    },
    ...taken.map((change): StepDraft => {
      const device = deviceOf(before, change.item);
      return {
        ...where,
        id: `take-out:${box.enclosure}:${device?.id ?? change.item.id}`,
        stage: 4,
        kind: "take-out",
        items: [{ kind: "device", id: device?.id ?? change.item.id, name: device?.name ?? change.item.name }],
        text: wording.takeOut(device === undefined ? change.item.name : deviceWords(device), box.name),
      };
    }),
    ...detached.map((change): StepDraft => {
      const end = (change.item.was ?? change.item.id) as EndKey;
      const place = before.places[end];
      const name = nameOfEnd(installation, before, end);
      const from = change.was?.words ?? "";
      return {
        ...where,
        id: `detach:${box.enclosure}:${end}`,
        stage: 4,
        kind: "detach",
        items: [change.item],
        text: place?.at.kind === "splice" ? wording.takeOutOf(name, from) : wording.takeOff(name, from),
        details: [
          ...(name === change.item.name || change.kind === "removed" ? [] : [wording.itIs(change.item.name)]),
          ...(place?.condition !== undefined && place.condition !== "good" ? [CUT_BACK[place.condition]] : []),
        ],
        cautions: place?.condition !== undefined && place.condition !== "good" ? ["WRK6", "WRK8"] : ["WRK6"],
      };
    }),
  ];
}

/** Off the devices first; each time hots, neutrals, and the grounds last: they stay joined as long as they can. */
function takenRank(installation: Installation, before: Enclosure, { item, was }: ScopeChange): number {
  const end = (item.was ?? item.id) as EndKey;
  const byClass = WIRE_CLASSES.length - WIRE_CLASSES.indexOf(classOfEnd(installation, before, end));
  return was?.at?.kind === "terminal" ? byClass - WIRE_CLASSES.length : byClass;
}

const deviceOf = ({ devices }: Enclosure, { id, was }: ScopeItem) => devices[(was ?? id) as DeviceId];

/** Stage 5, where cables part ways: which is the supply is proved and marked, and so are roles that nobody has measured. */
export function survey(installation: Installation, before: Enclosure, box: ScopeBox): readonly StepDraft[] {
  const moved = endsOf(box).filter(({ detach, owner }) => detach > 0 && owner?.kind === "cable");
  const cables = cablesInto(installation.cables, before.id);
  // In a panel no cable is the supply of the others, and nothing is energised there while it is open.
  if (box.isPanel || cables.length < 2 || moved.length === 0) return [];
  const supply = installation.intent.boxes[before.id]?.supply;
  const named = supply === undefined ? undefined : installation.cables[supply]?.name;
  const doubtful = [
    ...new Set(
      cables.flatMap(({ cable, side }) =>
        Object.keys(cable.conductors).some((key) => {
          const mark = before.places[`${cable.id}.${key}.${side}` as EndKey]?.evidence?.at;
          return mark !== "measured" && mark !== "seen";
        })
          ? [cable.name]
          : [],
      ),
    ),
  ];
  return [
    {
      ...inBox(box),
      id: `HP3:${box.enclosure}`,
      stage: 5,
      kind: "hold",
      hold: "HP3",
      items: cables.map(({ cable }): ScopeItem => ({ kind: "cable", id: cable.id, name: cable.name })),
      text: named === undefined ? wording.supply(box.name) : wording.supplyNamed(box.name, named),
      details: [...(doubtful.length === 0 ? [] : [wording.doubtful(listed(doubtful))]), wording.notProved],
      readings: [
        {
          id: "dead-again",
          what: wording.everyConductor(box.name),
          point: box.enclosure,
          name: box.name,
          test: "dead",
          expected: { kind: "word", word: "dead" },
          expect: "0 V",
        },
      ],
      ifNot: wording.anotherSupply,
      cautions: ["WRK3", "WRK5", "WRK6"],
    },
  ];
}
