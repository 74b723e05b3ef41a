import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { EvidenceMark } from "../../model/evidence.ts";
import type { Installation } from "../../model/project.ts";
import type { OutletStanding } from "../../solver/section.ts";
import { type OfCause, oncePerCause } from "../one-cause.ts";
import { OWN_CHECK } from "../own-check.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import { hotOf, marksOnWay } from "../section-parts.ts";
import { listedShort, pluggedAt, priorityOf, type TripsWith, tripsOf } from "../trip-parts.ts";

const messages = templates({
  system: "{alarm} is a fire alarm system, and its power comes through {devices}: a trip there silences it. {todo}",
  dwelling:
    "{alarm} loses its power when {devices} trips{cause}. {todo}, unless its place asks for the protection; a battery bridges only hours.",
});

const wording = catalogue({
  alsoForFault: (outlets: Part) => `, also for a fault at ${outlets}`,
  anotherBreaker: "Feed it from another breaker, or use an arc-fault breaker without ground-fault protection",
  anotherBreakerOfSystem: "Feed it from another breaker, one without ground-fault or arc-fault protection.",
  at: (load: Part, outlet: Part) => `${load} at ${outlet}`,
  before: (devices: Part) => `Feed it before ${devices}`,
  beforeOfSystem: (devices: Part) =>
    `Feed it before ${devices}, from a circuit without ground-fault or arc-fault protection.`,
  inBox: (device: Part, box: Part) => `${device} in ${box}`,
});

/** Its hot comes through a device that trips. */
export const alarmBehindGfci = defineRule({
  id: "alarm-behind-gfci",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "An alarm must not lose its power when a ground-fault device trips for something else.",
  why: "Whoever sleeps hears nothing of a trip. The power of a fire alarm system may come through neither ground-fault nor arc-fault protection: that is a violation. Smoke and other alarms of a dwelling are another matter: arc-fault protection of their circuit is often required, so it is not mentioned; a ground-fault device before them is a caution. What a system is must be recorded, as what must not go dark: nothing else tells it from an alarm.",
  messages,
  sections: everyEdition("760.41(B), 760.121(B)", "unconfirmed"),
  check({ section, installation, report }) {
    const trips = tripsOf(section);
    if (trips.length === 0) return;
    const found: OfCause[] = [];
    for (const standing of section.outlets()) {
      const { outlet } = standing;
      for (const { name, isSystem, marks } of alarmsAt(installation, standing)) {
        const before = trips.filter((one) => (isSystem || one.isPersonnel) && one.outlets.includes(standing));
        if (before.length === 0) continue;
        const others = new Set(
          before.flatMap(({ outlets }) => outlets.map((one) => one.outlet.name)).filter((one) => one !== outlet.name),
        );
        const devices = listed(before.map(({ device, enclosure }) => wording.inBox(device.name, enclosure.name)));
        const cause = others.size === 0 ? "" : wording.alsoForFault(listedShort([...others]));
        const report = {
          subjects: [subject("outlet", { id: outlet.key, name: outlet.name })],
          message: fillIn(isSystem ? messages.system : messages.dwelling, {
            alarm: name,
            devices,
            cause,
            todo: wayOut(before, devices, isSystem),
          }),
          ...(!isSystem && ({ severity: "caution", section: { section: OWN_CHECK, confidence: "own-rule" } } as const)),
          data: { devices: before.map(({ device }) => device.name).join(" ") },
          ...basisOf(marks, marksOnWay(section, section.wayFrom("ungrounded", hotOf(standing)))),
        };
        found.push({ cause: isSystem ? undefined : before.map(({ device }) => device.id).join(), report });
        break;
      }
    }
    for (const one of oncePerCause("alarm-behind-gfci", found)) report(one);
  },
});

/** Nothing is fed before a breaker. */
function wayOut(before: readonly TripsWith[], devices: string, isSystem: boolean): string {
  const atBreaker = before.some(({ enclosure }) => enclosure.kind === "panel");
  if (isSystem) return atBreaker ? wording.anotherBreakerOfSystem : wording.beforeOfSystem(devices);
  return atBreaker ? wording.anotherBreaker : wording.before(devices);
}

interface Alarm {
  readonly name: string;
  readonly isSystem: boolean;
  readonly marks: readonly EvidenceMark[];
}

/** Systems first: one finding an outlet says the graver thing. */
function alarmsAt(installation: Installation, standing: OutletStanding): readonly Alarm[] {
  const { device, name, receptacle } = standing.outlet;
  const loads = pluggedAt(installation, standing);
  if (receptacle && loads.length === 0) return [];
  const own = {
    name,
    isSystem: device.priority === "fire-alarm-system",
    isAlarm: getDeviceType(device.type).family === "alarm" || device.priority === "alarm",
    marks: marksOn(device, "type", "priority"),
  };
  const plugged = loads.map((load) => ({
    name: wording.at(load.name, name),
    isSystem: priorityOf(load) === "fire-alarm-system",
    isAlarm: priorityOf(load) === "alarm",
    marks: marksOn(load, "priority", "plug"),
  }));
  return [...(receptacle ? [] : [own]), ...plugged]
    .filter(({ isSystem, isAlarm }) => isSystem || isAlarm)
    .sort((a, b) => Number(b.isSystem) - Number(a.isSystem));
}
