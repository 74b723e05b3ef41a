import type { Subject } from "../../answers/finding.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { DeviceId } from "../../model/ids.ts";
import { inOrder } from "../../queries/in-order.ts";
import { terminalsOf } from "../../queries/terminals-of.ts";
import type { Joining, PathStep, Section, Spot } from "../../solver/section.ts";
import { groundsOf } from "../grounds.ts";
import { OWN_CHECK } from "../own-check.ts";
import { enclosuresOfStep, joinWords, positionWords } from "../path-words.ts";
import { defineRule, type Report } from "../rule.ts";
import { basisOf, everyEdition, fillIn, subject } from "../rule-parts.ts";
import { hotOf, marksOnWay, NOT_PROTECTED, nameOfStep } from "../section-parts.ts";

const messages = templates({
  fault:
    "Hot and ground touch{when}: {piece}. It is a ground fault: the breaker opens, or, where the way back is poor, it does not, and metal parts stay live. Part the two there before the power comes on.",
  liveMetal:
    "Live metal{when}: {piece}, and no ground arrives there. No breaker opens, and whoever touches the metal is in the circuit. Switch off, and part the two there before anything else; do not join the grounds to it.",
  dead: "A hot terminal is on the ground{when}: {piece}, and no hot reaches it. To bring the hot there as it is would be a ground fault. Part the two first, then bring the hot.",
});

const wording = catalogue({
  when: (positions: Part) => ` with ${positions}`,
  whenForInstance: (positions: Part) => `, for instance with ${positions}`,
});

/** Found at what joins the two with the least taken out; walked from the ground. */
export const hotGroundJoined = defineRule({
  id: "hot-ground-joined",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "A hot must touch no equipment ground, no ground terminal and no metal of a box.",
  why: "Where a ground arrives it is a short circuit by way of the grounds; the breaker opens at once, or the fault burns on at a poor joint. Where no ground arrives nothing opens, and boxes, yokes and the frames of what is plugged in are live, also those of boxes farther on. Commonly a pigtail or a bare wire went into the wrong joint, or a bare wire lies against a terminal.",
  messages,
  sections: everyEdition(OWN_CHECK, "own-rule"),
  check({ section, report }) {
    const joinings = section.hotsOnGround();
    const live = joinings.length === 0 ? undefined : onLiveGround(section);
    for (const joining of joinings) {
      const { by } = joining;
      const dead = outletsWithout(section, by);
      report({
        ...common(section, joining, arrivesGround(section, by) ? messages.fault : messages.liveMetal),
        hides: [
          ...hiddenAt(section, by),
          { rule: "insulated-as-ground", subjects: [subjectOf(section, by).id] },
          { rule: "open-hot", subjects: dead },
          ...NOT_PROTECTED.map((rule) => ({ rule, subjects: [...dead, ...(live?.outlets ?? [])] })),
          // To join, bond or land these as they say would bring the hot to more metal.
          { rule: "egc-not-spliced-all", subjects: live?.boxes ?? [] },
          { rule: "metal-box-unbonded", subjects: live?.boxes ?? [] },
          { rule: "device-egc-missing", subjects: live?.devices ?? [] },
        ],
      });
    }
    const known = new Set(joinings.map(({ by }) => subjectOf(section, by).id));
    for (const joining of section.deadHotsOnGround()) {
      if (known.has(subjectOf(section, joining.by).id)) continue;
      const on = section.outlets().filter((one) => !one.live && section.reach().isOnGround(hotOf(one)));
      report({
        ...common(section, joining, messages.dead),
        severity: "violation",
        hides: [
          ...hiddenAt(section, joining.by),
          { rule: "insulated-as-ground", subjects: [subjectOf(section, joining.by).id] },
          { rule: "open-hot", subjects: on.map(({ outlet }) => outlet.key) },
        ],
      });
    }
  },
});

function common(section: Section, { by, when, alsoElse }: Joining, message: string) {
  const positions = positionWords(section, when);
  return {
    subjects: [subjectOf(section, by)],
    message: fillIn(message, {
      piece: joinWords(section, by, nameOfStep(section, by)),
      when: when.length === 0 ? "" : (alsoElse ? wording.whenForInstance : wording.when)(positions),
    }),
    ...(when.length > 0 && { data: { positions } }),
    ...basisOf(marksOnWay(section, [by])),
  };
}

/** To splice, spread or hold better what lies where the two meet would make the joint lasting. */
function hiddenAt({ installation }: Section, by: PathStep): NonNullable<Report["hides"]> {
  if (by.kind === "device") return [];
  const [first, last] = enclosuresOfStep(by);
  const places = [
    installation.enclosures[first]?.places[by.from]?.at,
    installation.enclosures[last]?.places[by.to]?.at,
  ];
  const splices = places.flatMap((at) => (at?.kind === "splice" ? at.splice : []));
  const terminals = places.flatMap((at) => (at?.kind === "terminal" ? `${at.device}.${at.terminal}` : []));
  const bonds = [first, last].filter((_, side) => places[side]?.kind === "bond");
  return [
    { rule: "splice-over-capacity", subjects: splices },
    { rule: "two-wires-one-screw", subjects: [...terminals, ...bonds] },
    { rule: "clamp-hole-doubled", subjects: terminals },
  ];
}

function subjectOf({ installation }: Section, by: PathStep): Subject {
  const enclosure = installation.enclosures[enclosuresOfStep(by)[0]];
  const cable = by.kind === "cable" ? installation.cables[by.cable] : undefined;
  const jumper = by.kind === "jumper" ? enclosure?.jumpers[by.jumper] : undefined;
  const device = by.kind === "device" ? enclosure?.devices[by.device] : undefined;
  if (cable !== undefined) return subject("cable", cable);
  if (jumper !== undefined) return subject("jumper", jumper);
  if (device !== undefined) return subject("device", device);
  throw new Error("What joins hot and ground is not in the drawing.");
}

/** Whether a ground of the supply is on it; the metal and the ground bar of a panel are taken to have theirs. */
function arrivesGround(section: Section, by: PathStep): boolean {
  if (by.kind === "jumper" && section.installation.enclosures[by.enclosure]?.kind === "panel") return true;
  const reach = section.reach();
  const spots: readonly Spot[] =
    by.kind === "device"
      ? [by.from, by.to].map((node) => ({ device: by.device, node }))
      : [by.from, by.to].map((end) => ({ end }));
  return spots.some((spot) => reach.isOnGround(spot));
}

/** Outlets that have no hot because it went to the ground: it stops where the two were joined, or is on the ground itself. */
const outletsWithout = (section: Section, by: PathStep): readonly string[] =>
  section
    .outlets()
    .filter((standing) => {
      if (standing.live) return false;
      if (section.reach().isOnGround(hotOf(standing))) return true;
      const stop = section.whereHotStops(standing.outlet.key);
      return stop !== undefined && enclosuresOfStep(by).includes(stop.enclosure);
    })
    .map(({ outlet }) => outlet.key);

const hasLiveScrew = (section: Section, device: Device): boolean =>
  terminalsOf(device).some(
    ({ name, purpose }) => purpose === "ground" && section.reach().isLive({ device: device.id, node: name }),
  );

interface OnLiveGround {
  readonly boxes: readonly string[];
  readonly devices: readonly DeviceId[];
  readonly outlets: readonly string[];
}

/** Boxes with a live ground in them, their devices, and outlets whose hot is on the ground. */
function onLiveGround(section: Section): OnLiveGround {
  const reach = section.reach();
  const boxes = section.enclosures.filter((box) => {
    if (reach.isLive({ bond: box.id }) || inOrder(box.devices).some((device) => hasLiveScrew(section, device)))
      return true;
    return (
      box.kind === "box" && groundsOf(section, box).groups.some(({ ends }) => ends.some((end) => reach.isLive({ end })))
    );
  });
  const devices = boxes.flatMap((box) => inOrder(box.devices));
  const outlets = section.outlets().filter((standing) => standing.live && reach.isOnGround(hotOf(standing)));
  return {
    boxes: boxes.map(({ id }) => id),
    devices: devices.map(({ id }) => id),
    outlets: outlets.map(({ outlet }) => outlet.key),
  };
}
