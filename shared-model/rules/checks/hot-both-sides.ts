import type { Fix } from "../../answers/finding.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { StateName } from "../../model/project.ts";
import type { PathStep, Section } from "../../solver/section.ts";
import { withoutJumper } from "../neutral-ground-fixes.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import { hotOf, type LineLoadDevice, lineLoadDevices, marksOnWay, nameOfStep, neutralOf } from "../section-parts.ts";

const messages = templates({
  around:
    "A hot goes around the contacts of {device} in {box}{path}. {device} can trip, and this stays live: {outlets}. Remove the way round it, so that LOAD gets its hot through {device} alone.",
});

const wording = catalogue({
  by: (way: Part) => ` by ${way}`,
  loadTerminals: "the LOAD terminals",
});

const CONSEQUENCES = ["downstream-hot-on-line", "outlet-not-protected", "wish-not-protected", "replace-needs-gfci"];

/** With the contacts open, a source still reaches both the LINE and the LOAD hot. */
export const hotBothSides = defineRule({
  id: "hot-both-sides",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "The LOAD hot of a ground-fault device must get its supply through the device alone.",
  why: "The device looks healthy: it resets, its TEST button works, and a tester reads correct everywhere. After a trip the outlets behind it are still live, and part of a leak passes round its sensor so that it may not trip at all. Commonly one black went into the wrong one of two joints.",
  messages,
  sections: everyEdition("110.3(B)", "unconfirmed"),
  check({ section, state, report }) {
    for (const found of lineLoadDevices(section)) {
      if (!found.lineLive || !found.loadLive) continue;
      const { device, enclosure } = found;
      const behind = outletsBehind(section, found);
      const live = behind.filter(({ staysLive }) => staysLive);
      const around = wayAround(section, found);
      report({
        subjects: [subject("device", device)],
        message: fillIn(messages.around, {
          device: device.name,
          box: enclosure.name,
          path: around.length === 0 ? "" : wording.by(listed(around.map((step) => nameOfStep(section, step)))),
          outlets: live.length === 0 ? wording.loadTerminals : listed(live.map(({ name }) => name)),
        }),
        ...basisOf(
          marksOn(device, "type"),
          marksOnWay(section, section.wayFrom("ungrounded", found.loadHot, device.id)),
        ),
        ...(state === "proposed" && { offers: withoutOffers(section, around, state) }),
        hides: CONSEQUENCES.map((rule) => ({ rule, subjects: behind.map(({ key }) => key) })),
      });
    }
  },
});

/**
 * What belongs to LOAD although its hot is reached: the neutral alone tells it from what is on LINE, as both hots are
 * one net.
 */
const outletsBehind = (section: Section, { device, open }: LineLoadDevice) =>
  section
    .outlets()
    .filter(
      (standing) =>
        standing.outlet.device.id === device.id ||
        (open.isLive(hotOf(standing)) && !open.isGrounded(neutralOf(standing))),
    )
    .map((standing) => ({
      key: standing.outlet.key,
      name: standing.outlet.name,
      staysLive: open.isLive(hotOf(standing)),
    }));

/** What goes round the contacts, piece by piece, without what lies before it on LINE and behind it on LOAD. */
function wayAround(section: Section, { device, loadHot }: LineLoadDevice): readonly PathStep[] {
  const first = section.hotsAround(device.id, "LINE").map(({ by }) => by);
  const keys = new Set(first.map(stepKey));
  const lastKeys = new Set(section.hotsAround(device.id, "LOAD").map(({ by }) => stepKey(by)));
  const way = section.wayFrom("ungrounded", loadHot, device.id) ?? [];
  const from = way.findIndex((step) => keys.has(stepKey(step)));
  const to = way.findLastIndex((step) => lastKeys.has(stepKey(step)));
  return first.length === 1 && from >= 0 && to >= from ? way.slice(from, to + 1) : first;
}

/** Where one jumper of the way round is its only way, it can be taken out. */
function withoutOffers(section: Section, around: readonly PathStep[], state: StateName): readonly Fix[] {
  return around.flatMap((by) => {
    const fix = by.kind === "jumper" ? withoutJumper(section, by, state) : undefined;
    return fix === undefined ? [] : [fix];
  });
}

const stepKey = (step: PathStep): string =>
  step.kind === "device"
    ? `${step.device}|${[step.from, step.to].sort().join("|")}`
    : [step.from, step.to].sort().join("|");
