import type { Fix } from "../../answers/finding.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { EndKey } from "../../model/ids.ts";
import type { StateName } from "../../model/project.ts";
import { farEnd } from "../../queries/end-facts.ts";
import { sectionProof } from "../../solver/circuit/section-proof.ts";
import { sensingClass } from "../../solver/protection.ts";
import type { OutletStanding, Section } from "../../solver/section.ts";
import { CLASS_A_TRIPS, NOMINAL } from "../editions/product-values.ts";
import { isHarmless, sectionsAfter } from "../fix-trial.ts";
import { titled } from "../line-load-fixes.ts";
import { bringAll, isCurrentCarrying, namesOfEnds } from "../line-side-fix.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { feedOf } from "../other-circuit.ts";
import { REQUIREMENT_VALUES, requirementOf } from "../required-protection.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import { hotOf, lastCableStep, marksOnWay, NOT_PROTECTED, needsNeutral, neutralOf } from "../section-parts.ts";
import { listedShort } from "../trip-parts.ts";

const messages = templates({
  groundFault:
    "{device} in {panel} has the hot of {outlets} and not their neutral: {ends} does not come back through it. It trips with any load over about {watts} W there. Land {ends} on {device}; only its own tail goes to the bar.",
  arcFault:
    "{device} in {panel} has the hot of {outlets} and not their neutral: {ends} does not come back through it, so that it cannot compare the two as it is listed to. Land {ends} on {device}; only its own tail goes to the bar.",
  shared:
    "{device} in {panel} has the hot of {outlets} and not their neutral: {ends} does not come back through it, and the circuit of {others} returns by it too. A one-pole breaker cannot sense one leg of a shared neutral: put both legs and their neutral on a two-pole one.",
  noTerminal:
    "{device} in {panel} is recorded as {function} and drawn as an ordinary breaker, which has no place for a neutral: {ends} does not come back through it. Draw it as the breaker that it is, and land {ends} on it.",
});

const wording = catalogue({
  land: (ends: Part, breaker: Part) => `Land ${ends} on the neutral of ${breaker}`,
  theNeutral: "the neutral",
});

const FUNCTIONS = catalogue({
  afci: "arc-fault",
  dual: "ground-fault and arc-fault",
  gfci: "ground-fault",
});

/** With the sensor of the breaker taken out, the hot of an outlet is gone and its neutral is still there. */
export const gfciBreakerNeutralOnBar = defineRule({
  id: "gfci-breaker-neutral-on-bar",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "The neutral of a circuit on a ground-fault or arc-fault breaker must be landed on that breaker.",
  why: "The breaker compares what goes out on its hot with what comes back on its neutral terminal. With the white of the circuit left on the bar, as it was on the ordinary breaker before, all of the load is missing, and it trips as soon as something is used. Somebody then takes the breaker for broken. It is a caution, and a violation where an outlet of the circuit must be protected and is not. Arc-fault breakers that need no neutral are not held: go by the marking.",
  messages,
  sections: everyEdition("110.3(B)", "unconfirmed"),
  values: REQUIREMENT_VALUES,
  check({ section, project, edition, state, report }) {
    const watts = (CLASS_A_TRIPS / 1000) * (project.supply.nominalV ?? NOMINAL);
    for (const found of sensingBreakers(section)) {
      const { device, panel, kind } = found;
      const outlets = outletsPast(section, found);
      if (outlets.length === 0) continue;
      const ends = endsOf(section, found, outlets);
      const others = kind === "noTerminal" ? [] : sharing(section, device, ends);
      const senses = kind === "groundFault" || device.function === "gfci" || device.function === "dual";
      const open = senses ? outlets.filter((one) => !isProtected(section, one)) : [];
      const isRequired = open.some((one) => requirementOf(project, one, edition).required === true);
      report({
        subjects: [subject("device", device)],
        severity: isRequired ? "violation" : "caution",
        message: fillIn(messages[others.length > 0 ? "shared" : kind], {
          device: device.name,
          panel: panel.name,
          outlets: listedShort(outlets.map(({ outlet }) => outlet.name)),
          ends: ends.length === 0 ? wording.theNeutral : namesOfEnds(section.installation, panel, ends),
          watts: watts.toFixed(1),
          others: listed(others.map(({ name }) => name)),
          function: FUNCTIONS[device.function as keyof typeof FUNCTIONS] ?? "",
        }),
        data: { outlets: outlets.length, ...(kind === "groundFault" && { tripsAboveW: Number(watts.toFixed(2)) }) },
        ...basisOf(
          marksOn(device, "type", "function"),
          outlets.flatMap((one) => marksOnWay(section, section.wayFrom("grounded", neutralOf(one)))),
        ),
        ...(state === "proposed" &&
          kind !== "noTerminal" &&
          others.length === 0 &&
          fixFor(section, found, ends, state)),
        hides: NOT_PROTECTED.map((rule) => ({ rule, subjects: open.map(({ outlet }) => outlet.key) })),
      });
    }
  },
});

interface Sensing {
  readonly device: Device;
  readonly panel: Enclosure;
  readonly kind: "groundFault" | "arcFault" | "noTerminal";
}

/** Breakers that compare hot and neutral, and those that are only said to. */
function sensingBreakers(section: Section): readonly Sensing[] {
  return section.breakers().flatMap(({ device, panel }) => {
    const { sensing } = getDeviceType(device.type);
    if (sensing === undefined)
      return device.function !== undefined && device.function in FUNCTIONS ? { device, panel, kind: "noTerminal" } : [];
    const kind = sensingClass(device, sensing);
    if (kind === "personnel") return { device, panel, kind: "groundFault" };
    return kind === "arc-fault" ? { device, panel, kind: "arcFault" } : [];
  });
}

/** Outlets whose hot the breaker feeds alone, and whose neutral has a way that it does not sense. */
function outletsPast(section: Section, { device, kind }: Sensing): readonly OutletStanding[] {
  if (kind === "noTerminal") {
    const own = new Set(section.circuitOf(device.id).outlets);
    return section
      .outlets()
      .filter((one) => own.has(one.outlet.key) && one.live && section.reach().isGrounded(neutralOf(one)));
  }
  const cut = section.sensorCut(device.id);
  return section
    .outlets()
    .filter((one) => cut.isGrounded(neutralOf(one)) && one.live && !cut.isLive(hotOf(one)) && needsNeutral(one));
}

/** The ends of cables by which those neutrals leave the panel of the breaker, sorted. */
function endsOf(section: Section, { device, panel }: Sensing, outlets: readonly OutletStanding[]): readonly EndKey[] {
  const found = outlets.flatMap((one) => {
    const way = section.wayFrom("grounded", neutralOf(one), device.id);
    return lastCableStep(way, "fromEnclosure", panel.id)?.from ?? [];
  });
  return [...new Set(found)].sort();
}

/** Breakers of other outlets that return by the same cables: joined to them beyond the panel, where no bar is between. */
function sharing(section: Section, own: Device, ends: readonly EndKey[]): readonly Device[] {
  const found = new Map<string, Device>();
  const reach = section.reach();
  for (const standing of section.outlets()) {
    const returnsBy = (end: EndKey): boolean => reach.areJoined({ end: farEnd(end) }, neutralOf(standing));
    if (!standing.live || !ends.some(returnsBy)) continue;
    const breaker = feedOf(section, section.wayFrom("ungrounded", hotOf(standing)))?.breaker;
    if (breaker !== undefined && breaker.id !== own.id) found.set(breaker.id, breaker);
  }
  return [...found.values()];
}

function isProtected(section: Section, { outlet }: OutletStanding): boolean {
  const verdict = sectionProof(section).of(outlet.key)?.verdict;
  return verdict === "all" || verdict === "by-setting";
}

/** The neutrals landed on the breaker, where all of what it feeds then comes back through it. */
function fixFor(
  section: Section,
  { device, panel, kind }: Sensing,
  ends: readonly EndKey[],
  state: StateName,
): { readonly fix?: Fix } {
  if (!ends.every((end) => isCurrentCarrying(section.installation, panel, end))) return {};
  const plan = new MakeUpPlan(section.installation, panel, state);
  if (!bringAll(plan, section.installation, [panel, device], ends, ["LOAD", "neutral"])) return {};
  const title = wording.land(namesOfEnds(section.installation, panel, ends), device.name);
  const fix = plan.fix((words) => titled(title, words));
  if (fix === undefined || !isHarmless(section, fix)) return {};
  const isLeft = sectionsAfter(section, fix).some(
    (after) =>
      after.breakers().some((one) => one.device.id === device.id) &&
      outletsPast(after, { device, panel, kind }).length > 0,
  );
  return isLeft ? {} : { fix };
}
