import type { Fix } from "../../answers/finding.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { TerminalName } from "../../model/ids.ts";
import type { StateName } from "../../model/project.ts";
import { landedAt } from "../../queries/landings.ts";
import { nameOfTerminal } from "../../queries/terminals-of.ts";
import { type MultiwayFault, multiwayFaults } from "../../solver/multiway-switches.ts";
import type { Section } from "../../solver/section.ts";
import { fixTogether } from "../fix-parts.ts";
import { sectionsAfter } from "../fix-trial.ts";
import { isBeingSurveyed } from "../path-words.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  common:
    "{device} in {box} has a traveller on its common screw, and what belongs there on {terminal}: {turns}. Exchange the two.",
  travellers:
    "{switches} do not turn {light} over from every position: {turns}. A traveller is open or on a wrong screw: follow both from switch to switch.",
});

const wording = catalogue({
  alsoMoving: (device: Part, count: Part) => `moving ${device} in ${count}`,
  exchange: (one: Part, other: Part) => `Exchange what is on ${one} and on ${other}`,
  moving: (device: Part, light: Part, count: Part, positions: Part) =>
    `moving ${device} turns ${light} over in ${count} of ${positions} positions`,
});

/** Judged by what the handles do, position by position, whatever the wires are called. */
export const travellerMisused = defineRule({
  id: "traveller-misused",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "Each of several switches of one light must turn it over from every position.",
  why: "On a stair somebody is left in the dark halfway, and looks for the fault at the lamp. Nearly always a common and a traveller were exchanged when a switch was replaced, since the common screw is on another corner of the new one. A switch that takes the neutral instead is told as that.",
  messages,
  sections: everyEdition("404.2(A)", "sourced"),
  check({ section, state, report }) {
    const faults = multiwayFaults(section);
    // A traveller that goes to ground or neutral is told as that.
    if (faults.length === 0 || section.hotsOnGround().length + section.shorts().length > 0) return;
    for (const fault of faults) {
      const { switches, misplaced } = fault;
      const placed = switches.flatMap((device) => {
        const enclosure = boxOf(section, device);
        return enclosure === undefined ? [] : { device, enclosure };
      });
      if (placed.some(({ enclosure }) => isBeingSurveyed(section, enclosure.id))) continue;
      const [wrong, ...more] = misplaced;
      const box = wrong === undefined ? undefined : boxOf(section, wrong.device);
      const shown = { light: lightOf(section, fault), turns: turnWords(section, fault) };
      const first = wrong?.device.id;
      const ordered = [...switches].sort((a, b) => Number(b.id === first) - Number(a.id === first));
      report({
        subjects: ordered.map((device) => subject("device", device)),
        ...(wrong === undefined && { severity: "caution" }),
        message:
          wrong === undefined || box === undefined
            ? fillIn(messages.travellers, { ...shown, switches: listed(switches.map(({ name }) => name)) })
            : fillIn(messages.common, {
                ...shown,
                device: wrong.device.name,
                box: box.name,
                terminal: nameOfTerminal(wrong.device, wrong.traveller),
              }),
        data: { positions: fault.positions, turns: Math.min(...fault.turns.values()) },
        ...(state === "proposed" &&
          wrong !== undefined &&
          box !== undefined &&
          more.length === 0 && { offers: exchangeOffers(section, box, wrong.device, wrong.traveller, state) }),
        ...basisOf(
          placed.flatMap(({ device, enclosure }) => [
            ...marksOn(device, "type"),
            ...Object.values(enclosure.places).flatMap((place) =>
              place.at.kind === "terminal" && place.at.device === device.id ? marksOn(place, "at") : [],
            ),
          ]),
        ),
        hides: [{ rule: "switch-no-effect", subjects: switches.map(({ id }) => id) }],
      });
    }
  },
});

const boxOf = (section: Section, { id }: Device): Enclosure | undefined => {
  const home = section.enclosureOf(id);
  return home === undefined ? undefined : section.installation.enclosures[home];
};

const lightOf = (section: Section, { outlet }: MultiwayFault): string =>
  section.outlets().find((standing) => standing.outlet.key === outlet)?.outlet.name ?? outlet;

/** "moving SA turns L1 over in 2 of 4 positions, moving SB in 4". */
function turnWords(section: Section, fault: MultiwayFault): string {
  const { switches, turns, positions } = fault;
  return switches
    .map(({ id, name }, index) => {
      const count = turns.get(id) ?? 0;
      return index === 0
        ? wording.moving(name, lightOf(section, fault), count, positions)
        : wording.alsoMoving(name, count);
    })
    .join(", ");
}

/** What is on the common and what is on the traveller screw change places; offered where every position is right then. */
function exchangeOffers(
  section: Section,
  box: Enclosure,
  device: Device,
  traveller: TerminalName,
  state: StateName,
): readonly Fix[] {
  const common = getDeviceType(device.type).terminals.find(({ purpose }) => purpose === "common")?.name;
  if (common === undefined) return [];
  const calls = [
    [common, traveller],
    [traveller, common],
  ].flatMap(([from, to]) =>
    landedAt(box, device.id, from as TerminalName).map(({ end, hole }) => ({
      command: "land-end",
      args: { state, enclosure: box.id, end, at: { kind: "terminal", device: device.id, terminal: to, hole } },
    })),
  );
  const title = wording.exchange(nameOfTerminal(device, common), nameOfTerminal(device, traveller));
  const fix = fixTogether(title, calls);
  const isRight = sectionsAfter(section, fix).every((after) =>
    multiwayFaults(after).every(({ switches }) => switches.every(({ id }) => id !== device.id)),
  );
  return isRight ? [fix] : [];
}
