import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { CableId, EnclosureId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { sectionProof } from "../../solver/circuit/section-proof.ts";
import type { OutletStanding, Section } from "../../solver/section.ts";
import { OWN_CHECK } from "../own-check.ts";
import { decisiveProof, gapOf } from "../proof-words.ts";
import { isOtherFault, protectionWords } from "../protection-words.ts";
import { REQUIREMENT_VALUES, requirementOf } from "../required-protection.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";
import { protectionOffers } from "../section-offers.ts";
import { hotOf, isPolaritySwapped, marksOnWay } from "../section-parts.ts";
import { supplyNotDrawn } from "../supply-not-drawn.ts";

const messages = templates({
  open: "{outlet} in {box} is to be protected{by}, and is not: {reason}. This is a wish, not a requirement. {option}",
  notLive:
    "Cannot tell whether {outlet} in {box} is protected as is wished{by}: no source reaches it in this drawing. Draw its supply.",
  tooManySettings:
    "Cannot tell whether {outlet} in {box} is protected in every switch position, as is wished{by}: more switches bear on it than are tried.",
});

const wording = catalogue({
  askedForBy: (person: Part) => ` (asked for by ${person})`,
  drawSupply: (outlet: Part) => `Draw where ${outlet} gets its supply.`,
  exchanged: "its hot and neutral are exchanged",
  judge: "Judge it by hand.",
  positionsOf: (outlet: Part) => `the switch positions that bear on ${outlet}`,
  protectionOf: (outlet: Part) => `the ground-fault protection of ${outlet}`,
  supplyOf: (outlet: Part) => `the supply of ${outlet}`,
  when: (positions: Part, gap: Part) => `${positions} ${gap}`,
  withWhatFeeds: (cable: Part, box: Part) => ` with what ${cable} feeds from ${box}`,
});

/** Proved as required protection is; told where no rule requires it and a person asked for it. */
export const wishNotProtected = defineRule({
  id: "wish-not-protected",
  status: "stable",
  scope: "section",
  severity: "caution",
  summary: "An outlet that somebody wished to be protected must be behind a ground-fault device by both conductors.",
  why: "The customer asked for the hall receptacle to be protected, the card says LOAD, and one white stayed in the LINE bundle. A wish is entered for an outlet, or for a cable of a box that is meant to be behind the device there; a decision against it for one outlet goes before what is said of its cable. Where an edition requires the protection that is told instead, as a violation.",
  messages,
  sections: everyEdition(OWN_CHECK, "own-rule"),
  values: REQUIREMENT_VALUES,
  check({ section, project, installation, edition, state, report, cannotTell }) {
    const meant = cablesMeant(section, installation);
    if (meant.length === 0 && Object.keys(installation.intent.outlets).length === 0) return;
    for (const proof of sectionProof(section).outlets) {
      const { standing, verdict } = proof;
      if (verdict === "all" || verdict === "by-setting") continue;
      const wish = wishOf(section, installation, standing, meant);
      if (wish === undefined || requirementOf(project, standing, edition).required === true) continue;
      const { outlet, enclosure } = standing;
      const isSwapped = outlet.receptacle && isPolaritySwapped(section, standing);
      const decisive = isSwapped ? undefined : decisiveProof(section, proof);
      if (!isSwapped && isOtherFault(section, standing, decisive)) continue;
      const subjects = [subject("outlet", { id: outlet.key, name: outlet.name })];
      const shown = { outlet: outlet.name, box: enclosure.name, by: wish.words };
      if (!isSwapped && verdict !== "none") {
        const shared = standing.live
          ? undefined
          : supplyNotDrawn(section, installation, wording.protectionOf(outlet.name));
        cannotTell({
          subjects,
          message: fillIn(standing.live ? messages.tooManySettings : messages.notLive, shown),
          missing: standing.live ? wording.positionsOf(outlet.name) : wording.supplyOf(outlet.name),
          toDo: standing.live ? wording.judge : wording.drawSupply(outlet.name),
          ...(shared !== undefined && { shared }),
        });
        continue;
      }
      const gap = gapOf(section, standing, decisive);
      const reason = gap.when === "" ? gap.words : wording.when(gap.when, gap.words);
      report({
        subjects,
        message: fillIn(messages.open, {
          ...shown,
          reason: isSwapped ? wording.exchanged : reason,
          option: protectionWords(section, standing, decisive),
        }),
        data: gap.test === undefined || isSwapped ? {} : { test: gap.test },
        ...(state === "proposed" && {
          offers: isSwapped ? [] : protectionOffers(section, { project, installation }, standing, state),
        }),
        ...basisOf(marksOn(outlet.device, "type"), marksOnWay(section, section.wayFrom("ungrounded", hotOf(standing)))),
      });
    }
  },
});

interface MeantCable {
  readonly box: EnclosureId;
  readonly cable: CableId;
}

/** Cables that a person meant to be behind the ground-fault device of a box. */
const cablesMeant = ({ enclosures }: Section, { intent }: Installation): readonly MeantCable[] =>
  enclosures.flatMap(({ id }) =>
    Object.entries(intent.boxes[id]?.protect ?? {}).flatMap(([cable, isMeant]) =>
      isMeant ? { box: id, cable: cable as CableId } : [],
    ),
  );

/** Who asked for the protection of an outlet: its own wish goes before the cable by which its hot leaves a box. */
function wishOf(
  section: Section,
  { intent, cables, enclosures }: Installation,
  standing: OutletStanding,
  meant: readonly MeantCable[],
): { readonly words: string } | undefined {
  const own = intent.outlets[standing.outlet.key];
  if (own !== undefined) {
    if (own.wish === "decided-not") return undefined;
    return { words: own.by === undefined ? "" : wording.askedForBy(own.by) };
  }
  if (meant.length === 0) return undefined;
  const way = section.wayFrom("ungrounded", hotOf(standing)) ?? [];
  const found = meant.find(({ box, cable }) =>
    way.some((step) => step.kind === "cable" && step.cable === cable && step.fromEnclosure === box),
  );
  if (found === undefined) return undefined;
  const cable = cables[found.cable]?.name ?? found.cable;
  return { words: wording.withWhatFeeds(cable, enclosures[found.box]?.name ?? found.box) };
}
