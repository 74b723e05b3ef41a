import type { Fix } from "../../answers/finding.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { Installation, StateName } from "../../model/project.ts";
import { type EndFacts, getEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { type Landing, landedAt } from "../../queries/landings.ts";
import { type PlacedTerminal, terminalsOf } from "../../queries/terminals-of.ts";
import { compareWireSize } from "../../units/wire-size.ts";
import { describeMembers } from "../connector-capacity.ts";
import { PUSH_IN_TAKES } from "../editions/product-values.ts";
import { unlikeKinds } from "../kinds-of-ends.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  wrong:
    "The push-in entries of {device} in {box} are for {takes} AWG solid copper; {ends} {is} {found}. Move them to its screws, or fit a device whose terminals take them.",
});

const wording = catalogue({
  is: (count: number) => (count === 1 ? "is" : "are"),
  toScrews: (device: Part) => `Move the conductors of ${device} to its side screws`,
  toScrewsByPigtails: (device: Part) => `Move the conductors of ${device} to its side screws, one pigtail to a screw`,
});

/** Spring contacts in the back of a device. Its green screw and its leads are none. */
export const pushInGauge = defineRule({
  id: "push-in-gauge",
  status: "stable",
  scope: "box",
  severity: "violation",
  summary: "A push-in entry holds 14 AWG solid copper only.",
  why: "The spring of a push-in entry is made for one size. A thicker wire was forced in, a thinner one or one of strands is not gripped, and aluminium creeps away from the spring; each heats under load. The side screws of the same device take what its marking says.",
  messages,
  sections: everyEdition("110.3(B)", "unconfirmed"),
  check({ enclosure, installation, state, report }) {
    for (const device of inOrder(enclosure.devices)) {
      const entries = terminalsOf(device).filter(({ entryKind }) => entryKind === "push-in");
      const landed = entries.flatMap((entry) => landedAt(enclosure, device.id, entry.name));
      const wrong = landed.filter(({ end }) => !isTaken(getEndFacts(installation, enclosure, end)));
      if (wrong.length === 0) continue;
      const members = wrong.map(({ end }) => getEndFacts(installation, enclosure, end));
      const fix = screwFix(installation, enclosure, state, device, entries);
      report({
        subjects: [subject("device", device)],
        message: fillIn(messages.wrong, {
          device: device.name,
          box: enclosure.name,
          takes: PUSH_IN_TAKES.awg,
          ends: listed(wrong.map(({ end }) => nameOfEnd(installation, enclosure, end))),
          is: wording.is(wrong.length),
          found: describeMembers(members),
        }),
        data: { conductors: wrong.length, found: describeMembers(members) },
        ...basisOf(
          marksOn(device, "type", "entryKind"),
          wrong.flatMap(({ end }) => marksOn(enclosure.places[end] ?? {}, "at")),
        ),
        ...(fix !== undefined && { fix }),
      });
    }
  },
});

const isTaken = ({ awg, material, stranded }: EndFacts): boolean =>
  awg === PUSH_IN_TAKES.awg && material === PUSH_IN_TAKES.material && stranded === PUSH_IN_TAKES.stranded;

/**
 * To the side screws, where they take every conductor there is; two on one screw are pigtailed in the same step, unless
 * they do not belong together.
 */
function screwFix(
  installation: Installation,
  enclosure: Enclosure,
  state: StateName,
  device: Device,
  entries: readonly PlacedTerminal[],
): Fix | undefined {
  const plan = new MakeUpPlan(installation, enclosure, state);
  const doubled: PlacedTerminal[] = [];
  for (const entry of entries) {
    const landed: readonly Landing[] = landedAt(enclosure, device.id, entry.name);
    const facts = landed.map(({ end }) => getEndFacts(installation, enclosure, end));
    if (!facts.every((one) => isForScrew(one, entry, device))) return undefined;
    if (landed.length < 2) continue;
    const ends = landed.map(({ end }) => end);
    if (unlikeKinds(installation, enclosure, ends) !== undefined) return undefined;
    doubled.push(entry);
  }
  for (const { name } of doubled) plan.pigtail(device.id, name);
  plan.set({ kind: "device", id: device.id }, "entryKind", "side-screw");
  return plan.fix(() => (doubled.length === 0 ? wording.toScrews : wording.toScrewsByPigtails)(device.name));
}

const isForScrew = ({ awg, material, stranded }: EndFacts, entry: PlacedTerminal, device: Device): boolean =>
  material === "copper" &&
  (!stranded || device.acceptsStranded === true) &&
  compareWireSize(awg, entry.thinnest) >= 0 &&
  compareWireSize(awg, entry.thickest) <= 0;
