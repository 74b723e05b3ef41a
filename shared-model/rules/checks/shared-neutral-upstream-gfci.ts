import type { Fix } from "../../answers/finding.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { EndKey } from "../../model/ids.ts";
import type { StateName } from "../../model/project.ts";
import { sensingClass } from "../../solver/protection.ts";
import type { OutletStanding, Section, Spot } from "../../solver/section.ts";
import { CLASS_A_TRIPS, NOMINAL } from "../editions/product-values.ts";
import { isCure } from "../fix-trial.ts";
import { titled } from "../line-load-fixes.ts";
import { bringAll, isCurrentCarrying, namesOfEnds } from "../line-side-fix.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { feedOf, otherCircuit } from "../other-circuit.ts";
import { REQUIREMENT_VALUES, requirementOf } from "../required-protection.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import {
  hotOf,
  isFedRightWay,
  lastCableStep,
  lineLoadDevices,
  marksOnWay,
  NOT_PROTECTED,
  neutralOf,
} from "../section-parts.ts";
import { listedShort } from "../trip-parts.ts";

const messages = templates({
  atDevice:
    "{device} in {box} measures one leg of a shared neutral: the neutral of {outlets} runs through it, {hots} {come} from {breakers}. It trips with any load over about {watts} W there, and after a trip {outlets} {keep} a live hot and no neutral. Put {device} after the point where the neutrals part, or use a two-pole device before it.",
  atBreaker:
    "{device} in {box} measures one leg of a shared neutral: the neutral of {outlets} is on it, {hots} {come} from {breakers}. It trips with any load over about {watts} W there. A shared neutral needs a two-pole ground-fault breaker for both legs, or devices after the point where the neutrals part.",
});

const wording = catalogue({
  bring: (ends: Part, device: Part) => `Bring ${ends} from the LINE neutral of ${device}`,
  come: (count: number) => (count === 1 ? "comes" : "come"),
  hots: (count: number) => (count === 1 ? "its hot" : "their hots"),
  keep: (count: number) => (count === 1 ? "keeps" : "keep"),
  otherLegOf: (breaker: Part) => `the other leg of ${breaker}`,
});

/** What comes back through the sensor of a device went out on another circuit. */
export const sharedNeutralUpstreamGfci = defineRule({
  id: "shared-neutral-upstream-gfci",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "A ground-fault device must not carry the neutral of an outlet whose hot comes from another circuit.",
  why: "On a multiwire circuit the white carries the difference of two legs. A one-pole device before the split sees the current of its own leg and of both neutrals: it trips whenever the other leg works, and nothing at its own outlets is wrong. A receptacle-type device then opens the white of both: the other leg stays live without its neutral, and whatever is switched on there makes the white live. A breaker leaves the white joined, so that it is a nuisance and no protection for the other leg.",
  messages,
  sections: everyEdition("110.3(B)", "unconfirmed"),
  values: REQUIREMENT_VALUES,
  check({ section, project, edition, state, report }) {
    if (!hasTwoCircuits(section)) return;
    const watts = (CLASS_A_TRIPS / 1000) * (project.supply.nominalV ?? NOMINAL);
    for (const found of measuring(section)) {
      const foreign = foreignReturns(section, found);
      if (foreign.length === 0) continue;
      const { device, enclosure, atBreaker } = found;
      const outlets = foreign.map(({ standing }) => standing);
      const breakers = new Map(foreign.map(({ breaker }) => [breaker.id, breaker]));
      const isRequired = outlets.some((one) => requirementOf(project, one, edition).required === true);
      report({
        subjects: [subject("device", device)],
        severity: !atBreaker ? "danger" : isRequired ? "violation" : "caution",
        message: fillIn(atBreaker ? messages.atBreaker : messages.atDevice, {
          device: device.name,
          box: enclosure.name,
          outlets: listedShort(outlets.map(({ outlet }) => outlet.name)),
          breakers: listed([
            ...new Set(
              foreign.map(({ breaker, otherLeg }) => (otherLeg ? wording.otherLegOf(breaker.name) : breaker.name)),
            ),
          ]),
          hots: wording.hots(outlets.length),
          come: wording.come(outlets.length),
          keep: wording.keep(outlets.length),
          watts: watts.toFixed(1),
        }),
        data: { tripsAboveW: Number(watts.toFixed(2)), outlets: outlets.length },
        ...basisOf(
          marksOn(device, "type"),
          outlets.flatMap((one) => marksOnWay(section, section.wayFrom("grounded", neutralOf(one)))),
        ),
        ...(state === "proposed" && { offers: offersFor(section, found, outlets, state) }),
        hides: [
          ...["downstream-hot-on-line", ...NOT_PROTECTED].map((rule) => ({
            rule,
            subjects: outlets.map(({ outlet }) => outlet.key),
          })),
          { rule: "gfci-breaker-neutral-on-bar", subjects: [...breakers.keys()] },
        ],
      });
    }
  },
});

/** On one pole of one breaker there is no other circuit. */
function hasTwoCircuits(section: Section): boolean {
  const [first, ...more] = section.breakers();
  if (first === undefined || more.length > 0) return first !== undefined;
  return getDeviceType(first.device.type).terminals.filter(({ purpose }) => purpose === "hot").length > 1;
}

interface Measuring {
  readonly device: Device;
  readonly enclosure: Enclosure;
  readonly atBreaker: boolean;
  /** Where its own hot comes in; a breaker has it from the bus. */
  readonly lineHot?: Spot;
}

/** Devices that trip on a ground fault and are fed the right way round. */
function measuring(section: Section): readonly Measuring[] {
  const fitted = lineLoadDevices(section)
    .filter((found) => found.lineLive && found.lineGrounded && !found.loadGrounded && isFedRightWay(found))
    .map(({ device, enclosure, lineHot }) => ({ device, enclosure, lineHot, atBreaker: false }));
  const breakers = section
    .sensingDevices()
    .filter(({ enclosure }) => enclosure.kind === "panel")
    .map(({ device, enclosure }) => ({ device, enclosure, atBreaker: true }));
  return [...fitted, ...breakers].filter(({ device }) => {
    const { sensing } = getDeviceType(device.type);
    return sensing !== undefined && sensingClass(device, sensing) === "personnel";
  });
}

interface Foreign {
  readonly standing: OutletStanding;
  readonly breaker: Device;
  /** The device is on the same breaker, by another of its poles. */
  readonly otherLeg: boolean;
}

/** Outlets whose neutral comes back through a device and no other way, with the breaker of their hot, which is another one. */
function foreignReturns(section: Section, { device, lineHot }: Measuring): readonly Foreign[] {
  const cut = section.sensorCut(device.id);
  return section.outlets().flatMap((standing) => {
    const [hot, neutral] = [hotOf(standing), neutralOf(standing)];
    if (standing.outlet.device.id === device.id || !standing.live) return [];
    if (cut.isGrounded(neutral) || !section.reach().isGrounded(neutral)) return [];
    const breaker =
      lineHot === undefined
        ? feedOf(section, section.wayFrom("ungrounded", hot, device.id))?.breaker
        : otherCircuit(section, device.id, lineHot, hot);
    if (breaker === undefined) return [];
    const own = lineHot && feedOf(section, section.wayFrom("ungrounded", lineHot, device.id))?.breaker;
    return { standing, breaker, otherLeg: breaker === own };
  });
}

/** The neutrals of the other circuit taken off LOAD, in the box of the device, where they leave it by ends of their own. */
function offersFor(
  section: Section,
  { device, enclosure, atBreaker }: Measuring,
  outlets: readonly OutletStanding[],
  state: StateName,
): readonly Fix[] {
  if (atBreaker) return [];
  const ends = new Set<EndKey>();
  for (const standing of outlets) {
    const way = section.wayFrom("grounded", neutralOf(standing));
    const end = lastCableStep(way, "fromEnclosure", enclosure.id)?.from;
    if (end === undefined || !isCurrentCarrying(section.installation, enclosure, end)) return [];
    ends.add(end);
  }
  const all = [...ends].sort();
  const plan = new MakeUpPlan(section.installation, enclosure, state);
  if (!bringAll(plan, section.installation, [enclosure, device], all, ["LINE", "neutral"])) return [];
  const title = wording.bring(namesOfEnds(section.installation, enclosure, all), device.name);
  const fix = plan.fix((words) => titled(title, words));
  return fix !== undefined && isCure(section, fix) ? [fix] : [];
}
