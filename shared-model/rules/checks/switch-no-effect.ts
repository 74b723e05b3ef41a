import { templates } from "../../lib/catalogue.ts";
import type { TerminalName } from "../../model/ids.ts";
import { nameOfTerminal, terminalsOf } from "../../queries/terminals-of.ts";
import type { Section, Spot, WrongPlace } from "../../solver/section.ts";
import { type SwitchEffect, switchEffects } from "../../solver/switch-effects.ts";
import { OWN_CHECK } from "../own-check.ts";
import { isBeingSurveyed } from "../path-words.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";
import { cableLeadingOutside, LeadingOutside } from "../section-parts.ts";

const messages = templates({
  nothing:
    "{device} in {box} has its hot and controls nothing: in either position the same outlets are live. Look for a load that was put on the feed side, a tab that was left in, or a way round the switch.",
  outside:
    "Cannot tell whether {outlets} control anything: cable {cable} leads out of the drawing, and nothing here says what is at its other end. Draw where it goes.",
});

/** Judged by what its handle changes at any outlet; a switch that no hot reaches says nothing yet. */
export const switchNoEffect = defineRule({
  id: "switch-no-effect",
  status: "stable",
  scope: "section",
  severity: "caution",
  summary: "A switch must turn something on and off.",
  why: "Feed and load under one screw, a receptacle whose tab was not broken off, or a replaced receptacle on a circuit with a switched half: the switch moves and nothing happens. Where its load is only not wired yet the break is told instead, and in a box that is being surveyed nothing is said.",
  messages,
  sections: everyEdition(OWN_CHECK, "own-rule"),
  check({ section, report, cannotTell }) {
    const idle = switchEffects(section).filter(
      (effect) => effect.certain && effect.outlets.length === 0 && isFed(section, effect),
    );
    // A hot that goes to ground or neutral takes the load with it, and is told as that.
    if (idle.length === 0 || section.hotsOnGround().length + section.shorts().length > 0) return;
    const breaks = breaksOf(section);
    const outside = new LeadingOutside();
    for (const effect of idle) {
      const { device, enclosure, at } = effect;
      if (isBeingSurveyed(section, enclosure.id) || breaks.some((place) => isBehind(section, place, effect))) continue;
      const name = at === undefined ? device.name : nameOfTerminal(device, at as TerminalName);
      const cable = spotsOf(effect).flatMap((spot) => cableLeadingOutside(section, spot) ?? [])[0];
      if (cable !== undefined) {
        outside.add(cable, name);
        continue;
      }
      const node = at === undefined ? [] : [subject("terminal", { id: `${device.id}.${at}`, name })];
      report({
        subjects: [subject("device", device), ...node],
        message: fillIn(messages.nothing, { device: name, box: enclosure.name }),
        ...basisOf(marksOn(device, "type")),
      });
    }
    outside.ask(messages.outside, cannotTell);
  },
});

/** Terminals of the handle: all of a device with one, else the one that is switched and those it is fed by. */
function spotsOf({ device, at }: SwitchEffect): readonly Spot[] {
  return terminalsOf(device)
    .filter(({ purpose }) => purpose !== "ground" && purpose !== "neutral")
    .filter(({ name, purpose }) => at === undefined || name === at || purpose !== "switched")
    .map(({ name }) => ({ device: device.id, node: name }));
}

const isFed = (section: Section, effect: SwitchEffect): boolean =>
  spotsOf(effect).some((spot) => section.reach().isLive(spot));

/** Where the hots of dead outlets stop: what a switch there controls is told by that. */
const breaksOf = (section: Section): readonly WrongPlace[] =>
  section.outlets().flatMap(({ outlet, live }) => (live ? [] : (section.whereHotStops(outlet.key) ?? [])));

/** In its box, or at what its load side is joined to. */
function isBehind(section: Section, { enclosure, lastRight, ends }: WrongPlace, effect: SwitchEffect): boolean {
  if ([enclosure, lastRight].includes(effect.enclosure.id)) return true;
  const reach = section.reach();
  const load = spotsOf(effect).filter((spot) => !reach.isAlwaysLive(spot));
  return ends.some((end) => load.some((spot) => reach.areJoined(spot, { end })));
}
