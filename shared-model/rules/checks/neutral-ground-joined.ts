import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Enclosure, Panel } from "../../model/enclosure.ts";
import { cableEnd, type EnclosureId, type EndKey } from "../../model/ids.ts";
import { cableOfEnd, findEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { sectionProof } from "../../solver/circuit/section-proof.ts";
import { panelNets } from "../../solver/panel-nets.ts";
import type { Joining, PathStep, Section, Spot } from "../../solver/section.ts";
import { cablesOnWays } from "../../solver/sections.ts";
import { fixIn } from "../fix-parts.ts";
import { keysOf } from "../ground-leads.ts";
import { joinedOutsidePanels, outletsWithNeutralForGround } from "../neutral-for-ground.ts";
import { familyAt, isFromPanel, partFix, toBarFix, withoutPanelJumperFix } from "../neutral-ground-fixes.ts";
import { enclosuresOfStep, joinWords, positionWords } from "../path-words.ts";
import { type BoxContext, defineRule, type SectionContext } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, sectionIn, subject } from "../rule-parts.ts";
import { marksOnWay, NOT_PROTECTED, nameOfStep, neutralOf } from "../section-parts.ts";

const messages = templates({
  joined:
    "Neutral and ground touch{when}: {piece}. Part of every return current runs on the ground wires and on metal parts from there on, and a ground-fault device before it trips. Part the two.",
  bootleg:
    "Neutral used as ground{when}: {piece}, and no ground is joined to it. If the neutral opens, metal parts become live. Part the two, and join a ground to it; an outlet that has none needs two slots, or ground-fault protection and its labels.",
  inPanel:
    "Neutral and ground are joined in {panel}, where the main bond is not: by {pieces}. Return current runs on the ground wires and on metal parts. Part the two bars; they are joined at the main bond alone.",
  groundOnNeutralBar:
    "{end} is on the neutral bar of {panel}, where the main bond is not: return current runs on the ground wires that it serves. Land it on the ground bar.",
  neutralOnGroundBar:
    "{end} is on the ground bar of {panel}: the return current of {outlets} runs over the main bond and the metal of the panel. Land it on the neutral bar.",
  secondBond:
    "The bonding screw or strap of {panel} is in, and {end} brings it a ground from the panel that feeds it: neutral and ground are joined a second time, and return current runs on the ground of the feeder. Take it out; the two bars are joined at the main bond alone.",
  bondUnknown:
    "Cannot tell whether neutral and ground may be joined in {panel}: it is not recorded whether the main bond is there. Look for the bonding screw or strap, and record it.",
});

const wording = catalogue({
  jumper: (jumper: Part) => `jumper ${jumper}`,
  landedOnBoth: "what is landed on both",
  when: (positions: Part) => ` with ${positions}`,
  whenForInstance: (positions: Part) => `, for instance with ${positions}`,
  whetherBond: (panel: Part) => `whether the main bond is in ${panel}`,
});

/** Found where the least has to be taken out to part the two. The main bond itself is a fact of the panel. */
export const neutralGroundJoined = defineRule({
  id: "neutral-ground-joined",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "Neutral and ground must be joined at the main bond and nowhere else.",
  why: "Behind such a joint the ground wires carry load current, boxes and appliances may be at voltage to earth, and a broken neutral makes them live. It trips every ground-fault device before it, also by loads that are not behind it. Commonly a bare wire touches a neutral terminal, somebody made a ground out of the neutral, or the two bars of a second panel were left joined.",
  messages,
  sections: everyEdition("250.142(B), 250.24(A)(5)", "doubtful"),
  check(context) {
    const { section } = context;
    for (const joining of joinedOutsidePanels(section)) reportJoint(context, joining);
    reportGroundBars(context);
  },
  checkPanel(context) {
    const { enclosure: panel, state, report, cannotTell } = context;
    if (panel.kind !== "panel") return;
    if (panel.mainBond === "here") {
      const end = feederGround(context, panel);
      if (end === undefined) return;
      report({
        subjects: [subject("enclosure", panel)],
        message: fillIn(messages.secondBond, {
          panel: panel.name,
          end: nameOfEnd(context.installation, panel, end),
        }),
        ...basisOf(marksOn(panel, "mainBond"), marksOn(panel.places[end] ?? {}, "at")),
      });
      return;
    }
    const { jumpers, grounds, joined, isGrounded } = joinedIn(context, panel);
    if (!joined && grounds.length === 0) return;
    const subjects = [subject("enclosure", panel)];
    if (panel.mainBond === "unknown") {
      const message = fillIn(messages.bondUnknown, { panel: panel.name });
      cannotTell({ subjects, message, missing: wording.whetherBond(panel.name) });
      return;
    }
    if (joined) {
      const pieces =
        jumpers.length === 0 ? wording.landedOnBoth : listed(jumpers.map(({ name }) => wording.jumper(name)));
      report({
        subjects,
        message: fillIn(messages.inPanel, { panel: panel.name, pieces }),
        ...fixIn(state, () =>
          jumpers.length === 1 && isGrounded ? withoutPanelJumperFix(panel, jumpers[0], state) : undefined,
        ),
        ...basisOf(marksOn(panel, "mainBond")),
      });
      return;
    }
    for (const end of grounds) {
      const cable = cableOfEnd(context.installation, end);
      if (cable === undefined) continue;
      report({
        subjects: [subject("cable", cable), ...subjects],
        message: fillIn(messages.groundOnNeutralBar, {
          end: nameOfEnd(context.installation, panel, end),
          panel: panel.name,
        }),
        ...fixIn(state, () => (isGrounded ? toBarFix(context.installation, panel, end, "ground", state) : undefined)),
        ...basisOf(marksOn(panel, "mainBond"), marksOn(panel.places[end] ?? {}, "at")),
      });
    }
  },
});

function reportJoint({ section, state, report }: SectionContext, { by, when, alsoElse }: Joining): void {
  const { installation } = section;
  const [first] = enclosuresOfStep(by);
  const enclosure = installation.enclosures[first];
  if (enclosure === undefined) return;
  const jumper = by.kind === "jumper" ? enclosure.jumpers[by.jumper] : undefined;
  const cable = by.kind === "cable" ? installation.cables[by.cable] : undefined;
  const what =
    jumper !== undefined ? subject("jumper", jumper) : cable !== undefined ? subject("cable", cable) : undefined;
  const piece = joinWords(section, by, nameOfStep(section, by));
  const hidden = outletsUncovered(section);
  report({
    subjects: what === undefined ? [subject("enclosure", enclosure)] : [what],
    message: fillIn(isBootleg(section, by) ? messages.bootleg : messages.joined, {
      piece,
      when: when.length === 0 ? "" : (alsoElse ? wording.whenForInstance : wording.when)(positionWords(section, when)),
    }),
    ...(when.length > 0 && { data: { positions: positionWords(section, when) } }),
    ...basisOf(marksOnWay(section, [by])),
    ...fixIn(state, () => partFix(section, by, state)),
    hides: [
      ...NOT_PROTECTED.map((rule) => ({ rule, subjects: hidden })),
      { rule: "grounding-type-unprotected", subjects: outletsWithNeutralForGround(section) },
      { rule: "device-egc-missing", subjects: devicesAt(enclosure, by) },
      // To splice the grounds on its screw would make the joint lasting.
      { rule: "egc-broken-by-removal", subjects: devicesAt(enclosure, by) },
      { rule: "open-neutral", subjects: partedBy(section, by) },
      { rule: "insulated-as-ground", subjects: what === undefined ? [] : [what.id] },
    ],
  });
}

/** Outlets whose neutral stops in a box where the white that should feed it lies among the grounds, or has its bare wire instead. */
function partedBy(section: Section, by: PathStep): readonly string[] {
  if (by.kind !== "cable") return [];
  const boxes: readonly (EnclosureId | undefined)[] = enclosuresOfStep(by);
  const reach = section.reach();
  return section
    .outlets()
    .filter(
      (standing) =>
        boxes.includes(section.whereNeutralStops(standing.outlet.key)?.enclosure) ||
        (boxes.includes(standing.enclosure.id) && reach.isOnGround(neutralOf(standing))),
    )
    .map(({ outlet }) => outlet.key);
}

/** Devices with a terminal at the joint: one whose ground screw is on its neutral is not asked for a pigtail as well. */
function devicesAt(enclosure: Enclosure, by: PathStep): readonly string[] {
  if (by.kind === "device") return [by.device];
  return [by.from, by.to].flatMap((end) => {
    const at = enclosure.places[end]?.at;
    return at?.kind === "terminal" ? at.device : [];
  });
}

/** Whether no ground of the supply arrives at it. */
function isBootleg(section: Section, by: PathStep): boolean {
  const reach = section.reach();
  const spots: readonly Spot[] =
    by.kind === "device"
      ? [by.from, by.to].map((node) => ({ device: by.device, node }))
      : [by.from, by.to].map((end) => ({ end }));
  return spots.every((spot) => !reach.isOnGround(spot));
}

/** Outlets that a device would protect, were it not for the ground that reaches their neutral round it. */
const outletsUncovered = (section: Section): readonly string[] =>
  sectionProof(section)
    .outlets.filter(({ standing, devices }) =>
      devices.some(
        ({ device, hotReached, personnelClass, powered }) =>
          !hotReached &&
          personnelClass &&
          powered &&
          section.sensorCut(device).isOnGround(neutralOf(standing)) &&
          !section.sensorCut(device).isGrounded(neutralOf(standing)),
      ),
    )
    .map(({ standing }) => standing.outlet.key);

/** Neutrals of outlets that are landed on a ground bar where the main bond is: it works, by way of the bond. */
function reportGroundBars({ section, edition, state, report }: SectionContext): void {
  const { installation } = section;
  if (!hasOnGroundBar(section)) return;
  const onBar = new Map<EndKey, { readonly panel: Panel; readonly outlets: string[] }>();
  for (const standing of section.outlets()) {
    const first = section.wayFrom("grounded", neutralOf(standing))?.find((step) => step.kind === "cable");
    if (first?.kind !== "cable") continue;
    const panel = installation.enclosures[first.fromEnclosure];
    if (panel?.kind !== "panel" || !isOnGroundBar(panel, first.from)) continue;
    const known = onBar.get(first.from);
    if (known === undefined) onBar.set(first.from, { panel, outlets: [standing.outlet.name] });
    else known.outlets.push(standing.outlet.name);
  }
  for (const [end, { panel, outlets }] of onBar) {
    const cable = cableOfEnd(installation, end);
    if (cable === undefined) continue;
    report({
      subjects: [subject("cable", cable), subject("enclosure", panel)],
      severity: "violation",
      section: sectionIn(edition, "200.2(B), 408.40", "unconfirmed"),
      message: fillIn(messages.neutralOnGroundBar, {
        end: nameOfEnd(installation, panel, end),
        panel: panel.name,
        outlets: listed(outlets),
      }),
      ...fixIn(state, () => toBarFix(installation, panel, end, "neutral", state)),
      ...basisOf(marksOn(panel.places[end] ?? {}, "at")),
    });
  }
}

/** Whether any conductor is landed so that is no ground: nothing else is taken for a neutral there, so that ways need not be sought. */
const hasOnGroundBar = (section: Section): boolean =>
  cablesOnWays(section).some((cable) =>
    (["a", "b"] as const).some((side) => {
      const where = cable.sides[side];
      const panel = "enclosure" in where ? section.installation.enclosures[where.enclosure] : undefined;
      if (panel?.kind !== "panel") return false;
      return keysOf(cable).some(
        (key) => cable.conductors[key]?.grounding !== true && isOnGroundBar(panel, cableEnd(cable.id, key, side)),
      );
    }),
  );

/** Where the main bond is, or may be: elsewhere a neutral there is no neutral, which is told at the outlets. */
function isOnGroundBar(panel: Panel, end: EndKey): boolean {
  return panel.supply === "service" && panel.mainBond !== "elsewhere" && familyAt(panel, end) === "ground-bar";
}

/**
 * The ground by which a panel is fed from another. Without one, as in an outbuilding of old, its bond is where its
 * ground begins.
 */
const feederGround = ({ installation }: BoxContext, panel: Panel): EndKey | undefined =>
  panel.supply === "service"
    ? undefined
    : (Object.keys(panel.places) as EndKey[])
        .sort()
        .find(
          (end) =>
            panel.places[end]?.at.kind === "terminal" &&
            findEndFacts(installation, panel, end)?.grounding === true &&
            isFromPanel(installation, end),
        );

/** What joins the two bars inside a panel: jumpers between them, and grounds of cables that are on the neutral one. */
function joinedIn({ installation }: BoxContext, panel: Panel) {
  const nets = panelNets(panel);
  const barsAt = (end: EndKey): readonly string[] => {
    const net = nets.netOfEnd(end);
    return net === undefined ? [] : nets.barsOf(net);
  };
  const joined = Object.keys(panel.places).some((end) => {
    const bars = barsAt(end as EndKey);
    return bars.includes("@neutral") && bars.includes("@ground");
  });
  const jumpers = Object.values(panel.jumpers)
    .filter(({ id }) => {
      const bars = barsAt(`${id}.a` as EndKey);
      return bars.includes("@neutral") && bars.includes("@ground");
    })
    .sort((a, b) => (a.id < b.id ? -1 : 1));
  const grounds = (Object.keys(panel.places) as EndKey[])
    .filter((end) => barsAt(end).includes("@neutral") && findEndFacts(installation, panel, end)?.parsed.of === "cable")
    .filter((end) => findEndFacts(installation, panel, end)?.grounding === true)
    .sort();
  // Parting the bars must not leave the ground bar on nothing: it has a ground of its own by the feeder.
  const isGrounded =
    panel.supply === "service" ||
    (Object.keys(panel.places) as EndKey[]).some((end) => {
      const bars = familyAt(panel, end);
      return (
        bars === "ground-bar" &&
        findEndFacts(installation, panel, end)?.grounding === true &&
        isFromPanel(installation, end)
      );
    });
  return { jumpers, grounds, joined, isGrounded };
}
