import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Cable } from "../../model/cable.ts";
import type { Device } from "../../model/device.ts";
import type { Box } from "../../model/enclosure.ts";
import type { EvidenceMark } from "../../model/evidence.ts";
import { type DeviceId, parseEnd } from "../../model/ids.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import { sectionProof } from "../../solver/circuit/section-proof.ts";
import type { Section } from "../../solver/section.ts";
import { reachesGround } from "../ground-leads.ts";
import { groundsOf, isParted } from "../grounds.ts";
import { isNewCable, workAt } from "../new-work.ts";
import { isWithoutGround } from "../no-ground.ts";
import { takesGroundPin } from "../receptacle-kinds.ts";
import { defineRule, type SectionContext } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  added:
    "{outlet} is new in {box}, has three slots, and no ground reaches it{why}. A new outlet needs one: bring a cable with a ground from the panel, or run a ground wire to a point that takes one.",
  existing:
    "{outlets} {has} no ground: protection lets {it} stay, and what must be grounded does not belong in {it}: a refrigerator, a washer, a dishwasher, a tool with a metal case. A ground wire of its own would settle it.",
  extended:
    "{cable} is new and has no ground: a circuit is not extended without one. Run a cable with a ground, from a place where a ground is.",
});

const wording = catalogue({
  has: (count: number) => (count === 1 ? "has" : "have"),
  it: (count: number) => (count === 1 ? "it" : "them"),
  leadsToNone: (ends: Part, count: number) => ` (${ends} ${count === 1 ? "leads" : "lead"} to none)`,
});

/**
 * Live outlets in boxes whose grounds lead nowhere, or that have none. A metal raceway may be the ground and is not told
 * apart from another: boxes with one are passed over. What stays, or comes for another, may do without a ground where it
 * is protected; where it is not, that is another rule.
 */
export const egcMissing = defineRule({
  id: "egc-missing",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "New outlets and extensions have an equipment ground.",
  why: "An old two-wire cable has no ground to give, and a new outlet or cable spliced to it has none either, however new it looks. Ground-fault protection with its labels stands in for the ground only where an old receptacle is replaced. A ground wire of its own may be run to the panel, to the grounding electrode, or to a ground of another circuit of the same panel. Where that is so it stays advice: refrigerators, washers and tools with a metal case need the third pin, and protection does not give it to them.",
  messages,
  sections: everyEdition("250.114, 406.4(A), 406.4(D)(2), 250.130(C)", "from-memory"),
  check(context) {
    const { section, report } = context;
    const found = ungrounded(context);
    const added = found.filter(({ isNew }) => isNew);
    for (const { device, box } of added) {
      report({
        subjects: [subject("device", device)],
        message: fillIn(messages.added, { outlet: device.name, box: box.name, why: whyWords(section, box) }),
        ...basisOf(marksAt(section, device, box)),
      });
    }
    const stays = found.filter(({ isNew, isProtected }) => !isNew && isProtected);
    if (stays.length > 0) {
      report({
        subjects: stays.map(({ device }) => subject("device", device)),
        message: fillIn(messages.existing, {
          outlets: listed(stays.map(({ device }) => device.name)),
          has: wording.has(stays.length),
          it: wording.it(stays.length),
        }),
        severity: "advice",
        data: { outlets: stays.length },
        ...basisOf(...stays.map(({ device, box }) => marksAt(section, device, box))),
      });
    }
    const told = new Set(added.map(({ box }) => box.id));
    for (const cable of liveCables(section)) {
      if (!isNewCable(context, cable) || hasItsGroundBeside(cable) || !isWithoutGround(cable)) continue;
      if ([cable.sides.a, cable.sides.b].some((side) => "enclosure" in side && told.has(side.enclosure))) continue;
      report({
        subjects: [subject("cable", cable)],
        message: fillIn(messages.extended, { cable: cable.name }),
        ...basisOf(marksOn(cable, "item", "conductors")),
      });
    }
  },
});

interface Ungrounded {
  readonly device: Device;
  readonly box: Box;
  readonly isNew: boolean;
  /** Each of its outlets is. */
  readonly isProtected: boolean;
}

/** By device: the halves of a receptacle have one ground. */
function ungrounded(context: SectionContext): readonly Ungrounded[] {
  const { section } = context;
  const { cables } = section.installation;
  const found = new Map<DeviceId, Ungrounded>();
  for (const { standing, verdict } of sectionProof(section).outlets) {
    const { outlet, enclosure, live } = standing;
    const { device, ground } = outlet;
    if (!live || enclosure.kind !== "box" || ground === undefined || !takesGroundPin(device)) continue;
    const grounds = groundsOf(section, enclosure);
    if (grounds.present || isParted(enclosure, grounds)) continue;
    if (reachesGround(section, { device: device.id, node: ground })) continue;
    if (cablesInto(cables, enclosure.id).some(({ cable }) => cable.construction === "raceway")) continue;
    const isProtected = verdict !== "none" && found.get(device.id)?.isProtected !== false;
    const isNew = workAt(context, enclosure, device).kind === "new";
    found.set(device.id, { device, box: enclosure, isNew, isProtected });
  }
  return [...found.values()].sort((a, b) => (a.device.id < b.device.id ? -1 : 1));
}

const marksAt = (section: Section, device: Device, box: Box): readonly EvidenceMark[] => [
  ...marksOn(device, "type"),
  ...cablesInto(section.installation.cables, box.id).flatMap(({ cable }) => marksOn(cable, "item", "conductors")),
];

/** Grounds that are in the box and lead nowhere: there the fault is further back. */
function whyWords(section: Section, box: Box): string {
  const ends = groundsOf(section, box).groups.flatMap((group) => group.ends);
  if (ends.length === 0) return "";
  const names = listed(ends.map((end) => nameOfEnd(section.installation, box, end)));
  return wording.leadsToNone(names, ends.length);
}

/** Cables that carry a hot of some breaker, sorted. */
function liveCables(section: Section): readonly Cable[] {
  const ids = new Set(
    section.breakers().flatMap(({ device }) =>
      section.circuitOf(device.id).hotEnds.flatMap((end) => {
        const parsed = parseEnd(end);
        return parsed?.of === "cable" ? parsed.cable : [];
      }),
    ),
  );
  return section.cables.filter(({ id }) => ids.has(id));
}

const hasItsGroundBeside = ({ construction }: Cable): boolean =>
  construction === "raceway" || construction === "single-conductor";
