import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { EndKey } from "../../model/ids.ts";
import { getEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { landedAt } from "../../queries/landings.ts";
import { type PlacedTerminal, terminalsOf } from "../../queries/terminals-of.ts";
import { PUSH_IN_TAKES } from "../editions/product-values.ts";
import { unlikeKinds } from "../kinds-of-ends.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { OWN_CHECK } from "../own-check.ts";
import { type BoxContext, defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  through:
    "Everything beyond {device} in {box} gets its current through the springs of its push-in entries ({ends}). Splice them and bring one pigtail to the device: the box fill stays the same.",
});

const wording = catalogue({
  splice: (device: Part) => `Splice the conductors of ${device} and bring one pigtail to it for each`,
});

/** Common practice, not a rule of the code: push-in entries are listed to carry it. */
export const pushInFeedthrough = defineRule({
  id: "push-in-feedthrough",
  status: "stable",
  scope: "box",
  severity: "advice",
  summary: "What is beyond a device should not hang on its push-in entries.",
  why: "A spring contact that carries the current of every receptacle further on is where a circuit most often goes dead or burns, and nothing at the device itself shows it. With the conductors spliced and one pigtail to the device, a bad contact there darkens that device alone, and the device can be changed without opening the circuit.",
  messages,
  sections: everyEdition(OWN_CHECK, "own-rule"),
  check(context) {
    const { enclosure, installation, report } = context;
    for (const device of inOrder(enclosure.devices)) {
      const through = polesOf(device)
        .map((pole) => ({ pole, ends: endsOn(context, device, pole) }))
        .filter(({ ends }) => ends.length > 1);
      if (through.length === 0) continue;
      const ends = through.flatMap((one) => one.ends);
      report({
        subjects: [subject("device", device)],
        message: fillIn(messages.through, {
          device: device.name,
          box: enclosure.name,
          ends: listed(ends.map((end) => nameOfEnd(installation, enclosure, end))),
        }),
        data: { conductors: ends.length },
        ...basisOf(
          marksOn(device, "type", "entryKind"),
          ends.flatMap((end) => marksOn(enclosure.places[end] ?? {}, "at")),
        ),
        ...pigtailFix(context, device, through),
      });
    }
  },
});

type Pole = readonly PlacedTerminal[];

const endsOn = ({ enclosure }: BoxContext, device: Device, pole: Pole): readonly EndKey[] =>
  pole.flatMap(({ name }) => landedAt(enclosure, device.id, name).map(({ end }) => end));

/** Push-in terminals that a strap of the device joins, tabs that are broken off left out. */
function polesOf(device: Device): readonly Pole[] {
  const entries = terminalsOf(device).filter(({ entryKind }) => entryKind === "push-in");
  if (entries.length === 0) return [];
  const { paths } = getDeviceType(device.type);
  const isStrap = (one: string, other: string): boolean =>
    paths.some(
      ({ a, b, when }) =>
        ((a === one && b === other) || (a === other && b === one)) &&
        (when === "always" ||
          (when === "hot-tab" && device.hotTab !== "removed") ||
          (when === "neutral-tab" && device.neutralTab !== "removed")),
    );
  const poles: PlacedTerminal[][] = [];
  for (const entry of entries) {
    const pole = poles.find((one) => one.some(({ name }) => isStrap(name, entry.name)));
    if (pole === undefined) poles.push([entry]);
    else pole.push(entry);
  }
  return poles;
}

/** Withheld where the conductors do not belong in these entries, or not together: other rules say so. */
function pigtailFix(
  { enclosure, installation, state }: BoxContext,
  device: Device,
  through: readonly { readonly pole: Pole; readonly ends: readonly EndKey[] }[],
) {
  const { awg: size, material, stranded } = PUSH_IN_TAKES;
  const plan = new MakeUpPlan(installation, enclosure, state);
  for (const { pole, ends } of through) {
    const facts = ends.map((end) => getEndFacts(installation, enclosure, end));
    const isTaken = facts.every((one) => one.awg === size && one.material === material && one.stranded === stranded);
    const [first, [entry]] = [facts[0], pole];
    if (!isTaken || first === undefined || entry === undefined) return {};
    if (unlikeKinds(installation, enclosure, ends) !== undefined) return {};
    const at = { kind: "terminal", device: device.id, terminal: entry.name, hole: 1 } as const;
    plan.pigtailTo(at, ends, { awg: size, colour: first.colour });
  }
  const fix = plan.fix(() => wording.splice(device.name));
  return fix === undefined ? {} : { fix };
}
