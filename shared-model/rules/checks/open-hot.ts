import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { EnclosureId, EndKey } from "../../model/ids.ts";
import { cableOfEnd, nameOfEnd } from "../../queries/end-facts.ts";
import { throughLoads } from "../../solver/circuit/through-loads.ts";
import type { OutletStanding, Section, Spot, WrongPlace } from "../../solver/section.ts";
import { colourConsequences } from "../crossed-conductors.ts";
import { causeAt, type OfCause, oncePerCause } from "../one-cause.ts";
import { OWN_CHECK } from "../own-check.ts";
import { marksAtStop, stopWords } from "../path-words.ts";
import { defineRule } from "../rule.ts";
import { anyOf, basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import { cableLeadingOutside, hotOf, LeadingOutside, marksOnWay, needsNeutral, neutralOf } from "../section-parts.ts";

const messages = templates({
  open: "{outlet} in {box} has its neutral and no hot in any switch position{through}. {place} Find the break and join the hot.",
  onNeutral:
    "{outlet} in {box} has no hot: its hot terminal is joined to the neutral. Bring the hot of the circuit, and look where the two come together.",
  onGround:
    "{outlet} in {box} has no hot: its hot terminal is joined to the equipment ground. Part the two first: to bring the hot there as it is would be a ground fault.",
  oneLeg:
    "{outlet} in {box} has only one of its two hots, so that it is live and cannot work. {place} Find the break and join the other hot.",
  atPanel:
    "{end} is on no breaker in {panel}, and the neutral beside it is connected. So {outlets} have no hot. Land it on its breaker.",
  onBar:
    "{end} is on the {bar} bar of {panel}, and it is the hot of {outlets}, which therefore have none. Land it on its breaker.",
  outside:
    "Cannot tell whether {outlets} have a hot: cable {cable} leads out of the drawing, and nothing here says what is at its other end. Draw where it goes.",
});

const wording = catalogue({
  groundBar: "ground",
  liveThrough: (loads: Part) => `, but is live through ${loads}`,
  neutralBar: "neutral",
});

const CONSEQUENCES = ["outlet-not-protected", "wish-not-protected"];

/** Judged over all switch positions: a lamp that some position lights is none. */
export const openHot = defineRule({
  id: "open-hot",
  status: "stable",
  scope: "section",
  severity: "caution",
  summary: "An outlet that has its neutral must have a hot.",
  why: "It is dead and will be reported as such. The break is commonly a push-in contact, a joint or a capped end in the last box that is still live, and a dead outlet hides what else is wrong behind it. Outlets of a cable that is not landed on a breaker yet are named together.",
  messages,
  sections: everyEdition(OWN_CHECK, "own-rule"),
  check({ section, report, cannotTell }) {
    const outside = new LeadingOutside();
    const found: OfCause[] = [];
    const inPanels = new Map<EndKey, { readonly panel: EnclosureId; readonly standings: OutletStanding[] }>();
    for (const standing of section.outlets()) {
      const kind = kindOf(section, standing);
      if (kind === undefined) continue;
      const { outlet, enclosure } = standing;
      const hot = hotOf(standing);
      const cable = cableLeadingOutside(section, hot);
      if (cable !== undefined) {
        outside.add(cable, outlet.name);
        continue;
      }
      const isBreak = kind === "open" || kind === "oneLeg";
      const place = isBreak ? section.whereHotStops(outlet.key) : undefined;
      const where = stopWords(section, place, enclosure.id);
      if (isBreak && where === "being-surveyed") continue;
      const through = kind === "open" ? throughLoads(section, hot).names : [];
      const atPanel =
        kind === "onNeutral" ? endOnBar(section, standing) : kind === "open" ? endInPanel(section, place) : undefined;
      if (atPanel !== undefined) {
        const known = inPanels.get(atPanel.end);
        if (known === undefined) inPanels.set(atPanel.end, { panel: atPanel.panel, standings: [standing] });
        else known.standings.push(standing);
        continue;
      }
      const report = {
        subjects: [subject("outlet", { id: outlet.key, name: outlet.name })],
        message: fillIn(messages[kind], {
          outlet: outlet.name,
          box: enclosure.name,
          through: through.length === 0 ? "" : wording.liveThrough(anyOf(through)),
          place: where,
        }),
        ...basisOf(
          marksOn(outlet.device, "type"),
          kind === "onNeutral" ? marksOnWay(section, section.wayFrom("grounded", hot)) : marksAtStop(section, place),
        ),
        hides: [
          ...CONSEQUENCES.map((rule) => ({ rule, subjects: [outlet.key] })),
          ...(kind === "onNeutral" ? colourConsequences(section, standing) : []),
          { rule: "capped-neutral-forgotten", subjects: place?.ends ?? [] },
        ],
      };
      found.push({ cause: causeAt(place), report });
    }
    for (const one of oncePerCause("open-hot", found)) report(one);
    for (const [end, { panel: id, standings }] of inPanels) {
      const panel = section.installation.enclosures[id];
      const cable = cableOfEnd(section.installation, end);
      if (panel === undefined || cable === undefined) continue;
      const at = panel.places[end]?.at;
      const bar = at?.kind === "terminal" ? panel.devices[at.device] : undefined;
      const shown = {
        end: nameOfEnd(section.installation, panel, end),
        panel: panel.name,
        outlets: listed(standings.map(({ outlet }) => outlet.name)),
      };
      report({
        subjects: [subject("cable", cable), subject("enclosure", panel)],
        message:
          bar === undefined
            ? fillIn(messages.atPanel, shown)
            : fillIn(messages.onBar, {
                ...shown,
                bar: getDeviceType(bar.type).family === "ground-bar" ? wording.groundBar : wording.neutralBar,
              }),
        data: { outlets: standings.length },
        ...basisOf(marksAtStop(section, { enclosure: id, ends: [end] })),
        hides: [
          ...CONSEQUENCES.map((rule) => ({ rule, subjects: standings.map(({ outlet }) => outlet.key) })),
          { rule: "capped-neutral-forgotten", subjects: [end] },
        ],
      });
    }
    outside.ask(messages.outside, cannotTell);
  },
});

function kindOf(
  section: Section,
  standing: OutletStanding,
): Exclude<keyof typeof messages, "atPanel" | "onBar" | "outside"> | undefined {
  const reach = section.reach();
  const hot = hotOf(standing);
  const other = neutralOf(standing);
  if (!needsNeutral(standing)) return reach.isLive(hot) === reach.isLive(other) ? undefined : "oneLeg";
  if (standing.live || reach.isLive(other) || !reach.isGrounded(other)) return undefined;
  if (reach.isGrounded(hot)) return "onNeutral";
  return reach.isOnGround(hot) ? "onGround" : "open";
}

interface AtPanel {
  readonly end: EndKey;
  readonly panel: EnclosureId;
}

/** The one end of a cable by which the hot stops in a panel, capped or loose. */
function endInPanel({ installation }: Section, place: WrongPlace | undefined): AtPanel | undefined {
  const [end, ...more] = place?.ends ?? [];
  if (place === undefined || end === undefined || more.length > 0) return undefined;
  const enclosure = installation.enclosures[place.enclosure];
  const kind = enclosure?.places[end]?.at.kind;
  return enclosure?.kind === "panel" && (kind === "capped" || kind === "loose")
    ? { end, panel: place.enclosure }
    : undefined;
}

/** The end of a cable by which the hot lies on a bar of a panel; not where it comes by the same conductor as the neutral. */
function endOnBar(section: Section, standing: OutletStanding): AtPanel | undefined {
  const comesBy = (spot: Spot) =>
    section
      .wayFrom("grounded", spot)
      ?.findLast(
        (step) => step.kind === "cable" && section.installation.enclosures[step.fromEnclosure]?.kind === "panel",
      );
  const hot = comesBy(hotOf(standing));
  const neutral = comesBy(neutralOf(standing));
  if (hot?.kind !== "cable" || neutral?.kind !== "cable" || hot.from === neutral.from) return undefined;
  const panel = section.installation.enclosures[hot.fromEnclosure];
  const at = panel?.places[hot.from]?.at;
  const bar = at?.kind === "terminal" ? panel?.devices[at.device] : undefined;
  const family = bar === undefined ? undefined : getDeviceType(bar.type).family;
  return family === "neutral-bar" || family === "ground-bar" ? { end: hot.from, panel: hot.fromEnclosure } : undefined;
}
