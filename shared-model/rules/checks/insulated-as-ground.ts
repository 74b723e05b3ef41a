import type { Severity } from "../../answers/finding.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { EndKey, SpliceId } from "../../model/ids.ts";
import { findEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { membersOf } from "../../queries/landings.ts";
import { findTerminal, nameOfTerminal } from "../../queries/terminals-of.ts";
import type { Section } from "../../solver/section.ts";
import type { Colour } from "../../units/colour.ts";
import { COLOUR_WORDS } from "../../units/colour-words.ts";
import { compareWireSize } from "../../units/wire-size.ts";
import { type ConductorUse, conductorUses, isWhite, type PlacedEnd, shownColour } from "../conductor-uses.ts";
import { defineRule, type Report, type SectionContext } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn } from "../rule-parts.ts";
import { isSupplyDrawn } from "../supply-not-drawn.ts";

const messages = templates({
  live: "{what} is live and {where}: what is metal there is live with it. Switch off, and part the two.",
  neutral:
    "{what} is on the neutral and {where}: return current runs on what is metal there. Part the two before the power comes on.",
  unknown:
    "{what} is {where}, and no supply is drawn that would tell what it carries. If it is hot, metal parts become live. Find out which conductor it is before the power comes on, and take it off the grounds.",
  unknownWhite:
    "{what} is {where}, and no supply is drawn that would tell what it carries. If it is the neutral, return current runs on metal parts; if it is hot, as in a switch loop, they become live. Find out which it is before the power comes on, and take it off the grounds.",
  unfed:
    "{what} is {where}, and nothing that is drawn reaches it. As soon as a hot does, metal parts are live. Find out where it leads, and take it off the grounds.",
  ground:
    "{what} serves as the ground: it is {where}. Whoever opens the box takes it for a conductor of the circuit. A ground of {limit} AWG or thinner must be bare, green, or green with yellow by make: use the bare or green wire of the cable, or another cable.",
  taped:
    "{what} is marked as a ground, and {where}. Tape makes a ground of conductors that are thicker than {limit} AWG alone; a thinner one must be bare, green, or green with yellow by make.",
});

const wording = catalogue({
  ofCable: (colour: Part, cable: Part) => `The ${colour} of ${cable}`,
  ofJumper: (jumper: Part, colour: Part) => `Jumper ${jumper}, which is ${colour},`,
  onTerminal: (terminal: Part, box: Part) => `on ${terminal} in ${box}`,
  onBar: (panel: Part) => `on the ground bar of ${panel}`,
  onMetal: (box: Part) => `on the metal of ${box}`,
  withGround: (others: Part, box: Part) => `joined with ${others} in ${box}`,
});

type Kind = keyof typeof messages;

const SEVERITIES: Partial<Record<Kind, Severity>> = { live: "danger", taped: "caution" };

/**
 * It needs no supply. Where a supply that is drawn tells the same of the same conductor, a hot or a neutral on the ground, it
 * is folded under that; a bare wire in the joint of a hot or a neutral terminal is told as that.
 */
export const insulatedAsGround = defineRule({
  id: "insulated-as-ground",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary:
    "On a ground screw, on the metal of a box and among the grounds there must be bare or green conductors only.",
  why: "A black or a red on the green screw is one slip of the hand in a full box, and the box works until the power comes on: then its metal is live, and that of everything that is plugged in. Where such a conductor was made the ground on purpose, because the cable had none, whoever opens the box next takes it for a hot or a spare.",
  messages,
  sections: everyEdition("250.119", "from-memory"),
  values: ["greenByMakeToAwg"],
  check(context) {
    const told = new Set<SpliceId>();
    for (const use of conductorUses(context.section)) {
      if (isGroundColour(use.colour) || use.grounding) continue;
      const report = reportOf(context, use, told);
      if (report !== undefined) context.report(report);
    }
  },
});

const isGroundColour = (colour: Colour): boolean => colour === "bare" || colour === "green";

/** @param told Joints that were told of by another conductor in them. */
function reportOf(
  { section, edition, installation }: SectionContext,
  use: ConductorUse,
  told: Set<SpliceId>,
): Report | undefined {
  const limit = edition.values.greenByMakeToAwg.value;
  const misplaced = use.ends.flatMap((placed) => {
    const where = whereOnGround(section, use, placed, told);
    return where === undefined ? [] : [{ ...placed, where }];
  });
  const [first] = misplaced;
  if (first === undefined) return undefined;
  const isMarked = misplaced.every((placed) => isGroundColour(shownColour(use, placed)));
  if (isMarked && compareWireSize(use.awg, limit) > 0) return undefined;
  const kind = kindOf(section, use, first.end, isMarked, isSupplyDrawn(section, installation));
  const colour = COLOUR_WORDS[use.colour];
  const { name } = use.subject;
  return {
    subjects: [
      use.subject,
      { kind: "end", id: first.end, name: nameOfEnd(section.installation, first.enclosure, first.end) },
    ],
    severity: SEVERITIES[kind] ?? "violation",
    message: fillIn(messages[kind], {
      what: use.cable === undefined ? wording.ofJumper(name, colour) : wording.ofCable(colour, name),
      where: listed(misplaced.map(({ where }) => where)),
      limit,
    }),
    data: { ends: misplaced.length },
    ...basisOf(misplaced.flatMap(({ end, enclosure }) => marksOn(enclosure.places[end] ?? {}, "at", "markedAs"))),
    hides: misplaced.flatMap(withoutGround),
  };
}

function kindOf(section: Section, use: ConductorUse, end: EndKey, isMarked: boolean, isDrawn: boolean): Kind {
  const reach = section.reach();
  // The jumper that joins the two is folded under the rules of hot or neutral on the ground; another is a ground pigtail.
  if (use.cable === undefined && isToldBetter(section, use, end)) return isMarked ? "taped" : "ground";
  if (reach.isLive({ end })) return "live";
  if (reach.isGrounded({ end })) return "neutral";
  if (isMarked) return "taped";
  if (reach.isOnGround({ end })) return "ground";
  if (isDrawn) return "unfed";
  return isWhite(use.colour) ? "unknownWhite" : "unknown";
}

/** "on R1 G in B1" where an end lies on what is made for the ground, or in a joint with grounds; else undefined. */
function whereOnGround(
  section: Section,
  use: ConductorUse,
  { end, enclosure }: PlacedEnd,
  told: Set<SpliceId>,
): string | undefined {
  const at = enclosure.places[end]?.at;
  switch (at?.kind) {
    case "bond":
      return wording.onMetal(enclosure.name);
    case "terminal": {
      const device = enclosure.devices[at.device];
      if (device === undefined || findTerminal(device, at.terminal)?.purpose !== "ground") return undefined;
      if (enclosure.kind === "box") return wording.onTerminal(nameOfTerminal(device, at.terminal), enclosure.name);
      // The neutrals of a service share its bars, and what is on the wrong one is told by the supply.
      return isWhite(use.colour) ? undefined : wording.onBar(enclosure.name);
    }
    case "splice": {
      const others = membersOf(enclosure, at.splice).filter((one) => one !== end);
      // Where the joint is that of a hot or a neutral, the bare wire is what is wrong in it.
      if (told.has(at.splice) || leadsToCircuit(use)) return undefined;
      const grounds = others.filter((one) => isGround(section, enclosure, one)).length;
      if (grounds === 0 || (grounds <= others.length / 2 && isToldBetter(section, use, end))) return undefined;
      told.add(at.splice);
      const names = others.map((one) => nameOfEnd(section.installation, enclosure, one));
      return wording.withGround(listed(names), enclosure.name);
    }
    default:
      return undefined;
  }
}

/** Where metal or a ground is reached, the rules of hot or neutral on the ground find the piece that joins the two. */
function isToldBetter(section: Section, { leadsTo }: ConductorUse, end: EndKey): boolean {
  const reach = section.reach();
  const isFed = reach.isLive({ end }) || reach.isGrounded({ end });
  return isFed && (leadsTo.ground || reach.isOnGround({ end }));
}

const isGround = ({ installation }: Section, enclosure: Enclosure, end: EndKey): boolean =>
  findEndFacts(installation, enclosure, end)?.grounding === true;

const leadsToCircuit = ({ leadsTo }: ConductorUse): boolean => (leadsTo.hot || leadsTo.neutral) && !leadsTo.ground;

/** They miss the ground that this conductor lies in the place of; to join grounds to it would make it lasting. */
function withoutGround({ end, enclosure }: PlacedEnd): NonNullable<Report["hides"]> {
  const at = enclosure.places[end]?.at;
  if (at?.kind === "bond") return [{ rule: "metal-box-unbonded", subjects: [enclosure.id] }];
  return at?.kind === "terminal" ? [{ rule: "device-egc-missing", subjects: [at.device] }] : [];
}
