import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Cable } from "../../model/cable.ts";
import type { Device } from "../../model/device.ts";
import type { Box, Enclosure } from "../../model/enclosure.ts";
import { parseEnd } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { getEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { nameOfTerminal, terminalsOf } from "../../queries/terminals-of.ts";
import type { Section, Spot } from "../../solver/section.ts";
import { fixIn } from "../fix-parts.ts";
import { joinGroupsFix } from "../ground-fixes.ts";
import { type BoxGrounds, type GroundGroup, groundsOf } from "../grounds.ts";
import { toBarFix } from "../neutral-ground-fixes.ts";
import { partedInPanels } from "../panel-grounds.ts";
import { defineRule, type Report } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  apart:
    "The grounds in {box} are {count} groups that are not joined there: {groups}.{without} Join them in one splice, or with a link between their splices; box fill stays the same.",
  parted:
    "{end} is on nothing in {panel}, so that the ground of its circuit leads nowhere.{without} Land it on the ground bar.",
});

const wording = catalogue({
  armourOf: (cable: Part) => `the armour of ${cable}`,
  at: (grounds: Part, place: Part) => `${grounds} at ${place}`,
  atMetal: (grounds: Part) => `${grounds} at the metal of the box`,
  onNothing: (grounds: Part) => `${grounds} on nothing`,
  without: (names: Part) => ` Without a ground: ${names}.`,
});

/**
 * Whether a ground of a box leads to ground is decided at its far end, so the whole section is looked at: where none
 * does, as behind an old two-wire cable, grounds must not be tied to each other either. A yoke is no splice.
 */
export const egcNotSplicedAll = defineRule({
  id: "egc-not-spliced-all",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary:
    "All equipment grounds of the circuits in a box must be joined to each other there, and in a panel to its bar.",
  why: "A ground that is left out of the joint leaves everything beyond it without a way for fault current, and nothing shows it until a fault. Two joints without a link are the usual slip when one joint would take more than its connector. An isolated ground of a receptacle may pass by; grounds of a cable that is not used in the box may stay capped.",
  messages,
  sections: everyEdition("250.148", "from-memory"),
  check({ section, state, report }) {
    const { installation } = section;
    for (const box of section.enclosures) {
      if (box.kind !== "box") continue;
      const grounds = groundsOf(section, box);
      if (!grounds.present) continue;
      const settled = box.beingSurveyed === true ? grounds.groups.filter(({ free }) => !free) : grounds.groups;
      const groups = settled.filter((group) => !isIsolated(installation, box, group, settled));
      if (groups.length < 2) continue;
      const fix = joinGroupsFix(installation, box, state, groups);
      const dead = without(section, spotsOf(box, groups));
      report({
        subjects: [subject("enclosure", box)],
        message: fillIn(messages.apart, {
          box: box.name,
          count: groups.length,
          groups: groups.map((group) => wordsOf(installation, box, group)).join("; "),
          without: withoutWords(dead),
        }),
        data: { groups: groups.length },
        ...basisOf(
          groups.flatMap(({ ends }) => ends).flatMap((end) => marksOn(box.places[end] ?? {}, "at")),
          groups.flatMap(({ armour }) => armour).flatMap((cable) => marksOn(cable, "construction")),
        ),
        hides: [...consequences(box, grounds, groups), ...ungrounded(dead)],
        ...(fix !== undefined && { fix }),
      });
    }
    for (const { cable, panel, end, far } of partedInPanels(section)) {
      const dead = without(section, [{ end: far }]);
      report({
        subjects: [subject("cable", cable), subject("enclosure", panel)],
        message: fillIn(messages.parted, {
          end: nameOfEnd(installation, panel, end),
          panel: panel.name,
          without: withoutWords(dead),
        }),
        ...basisOf(marksOn(panel.places[end] ?? {}, "at")),
        hides: ungrounded(dead),
        ...fixIn(state, () => toBarFix(installation, panel, end, "ground", state)),
      });
    }
  },
});

interface Without {
  readonly boxes: readonly Enclosure[];
  readonly devices: readonly Device[];
}

/** One spot of each group that does not lead to ground. */
const spotsOf = (box: Box, groups: readonly GroundGroup[]): readonly Spot[] =>
  groups
    .filter(({ reachesGround }) => !reachesGround)
    .map(({ ends: [end], bond }) => (bond || end === undefined ? { bond: box.id } : { end }));

/** What is told of devices without a ground, where this is why they have none. */
const ungrounded = ({ devices }: Without): NonNullable<Report["hides"]> =>
  ["egc-missing", "grounding-type-unprotected"].map((rule) => ({ rule, subjects: devices.map(({ id }) => id) }));

/** The metal boxes and devices that lose their ground by it, here and beyond. */
function without(section: Section, dead: readonly Spot[]): Without {
  const reach = section.reach();
  const hangs = (spot: Spot): boolean => dead.some((group) => reach.areJoined(group, spot));
  return {
    boxes: section.enclosures.filter(
      (one) => one.kind === "box" && one.material === "metal" && hangs({ bond: one.id }),
    ),
    devices: section.enclosures.flatMap((one) =>
      inOrder(one.devices).filter((device) =>
        terminalsOf(device).some(
          ({ name, purpose }) => purpose === "ground" && hangs({ device: device.id, node: name }),
        ),
      ),
    ),
  };
}

/** " Without a ground: 17G and D17G." */
function withoutWords({ boxes, devices }: Without): string {
  const names = [boxes, devices].flatMap((items: readonly { readonly name: string }[]) =>
    items.map(({ name }) => name).sort(),
  );
  return names.length === 0 ? "" : wording.without(listed(names));
}

/** What hangs on a group that does not lead to ground is ungrounded for that reason alone. */
function consequences(box: Box, grounds: BoxGrounds, groups: readonly GroundGroup[]) {
  const isDead = (group: GroundGroup | undefined): boolean =>
    group !== undefined && !group.reachesGround && groups.includes(group);
  const devices = inOrder(box.devices)
    .filter((device) => terminalsOf(device).some(({ name }) => isDead(grounds.groupAtTerminal(device.id, name))))
    .map(({ id }) => id);
  return [
    { rule: "device-egc-missing", subjects: devices },
    { rule: "metal-box-unbonded", subjects: isDead(grounds.groupAtBond()) ? [box.id] : [] },
  ];
}

/**
 * An isolated ground runs beside the ordinary one: every cable of the group has another ground in another group, and its
 * own in this one is insulated.
 */
function isIsolated(installation: Installation, box: Box, group: GroundGroup, all: readonly GroundGroup[]): boolean {
  if (group.free || group.bond || group.ends.length === 0) return false;
  const cablesOf = ({ ends }: GroundGroup): ReadonlySet<string> =>
    new Set(
      ends.flatMap((end) => {
        const parsed = parseEnd(end);
        return parsed?.of === "cable" ? [parsed.cable] : [];
      }),
    );
  if (group.ends.some((end) => getEndFacts(installation, box, end).colour === "bare")) return false;
  const elsewhere = new Set(
    all.filter((one) => one !== group && !isInsulated(installation, box, one)).flatMap((one) => [...cablesOf(one)]),
  );
  return [...cablesOf(group)].every((cable) => elsewhere.has(cable));
}

const isInsulated = (installation: Installation, box: Box, { ends }: GroundGroup): boolean =>
  ends.every((end) => getEndFacts(installation, box, end).colour !== "bare");

function wordsOf(installation: Installation, box: Box, group: GroundGroup): string {
  const { ends, armour, splices, terminals, bond, free } = group;
  const names = listed([
    ...ends.map((end) => nameOfEnd(installation, box, end)),
    ...armour.map(({ name }: Cable) => wording.armourOf(name)),
  ]);
  if (free) return wording.onNothing(names);
  const [splice] = splices;
  if (splice !== undefined) return wording.at(names, box.splices[splice]?.name ?? splice);
  if (bond) return wording.atMetal(names);
  const screws = terminals.flatMap(({ device, terminal }) => {
    const placed = box.devices[device];
    return placed === undefined ? [] : nameOfTerminal(placed, terminal);
  });
  return screws.length === 0 ? names : wording.at(names, listed(screws));
}
