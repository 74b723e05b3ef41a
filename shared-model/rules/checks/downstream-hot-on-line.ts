import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import { type EndKey, type OutletKey, parseEnd } from "../../model/ids.ts";
import type { Installation, StateName } from "../../model/project.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import { sectionProof } from "../../solver/circuit/section-proof.ts";
import type { OutletStanding, Section } from "../../solver/section.ts";
import { bringFix } from "../line-load-fixes.ts";
import { otherCircuit } from "../other-circuit.ts";
import { REQUIREMENT_VALUES, requirementOf } from "../required-protection.ts";
import { defineRule, type Report } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";
import {
  hotOf,
  isFedRightWay,
  type LineLoadDevice,
  lastCableStep,
  lineLoadDevices,
  marksOnWay,
  NOT_PROTECTED,
  neutralOf,
} from "../section-parts.ts";

const messages = templates({
  onLine:
    "{outlet} in {box}: its neutral is behind {device}, its hot is not. {device} trips when it is used, and after a trip its hot is still live, with the neutral open. Bring {ends} from the same side of {device}.",
  otherCircuit:
    "{outlet} in {box}: its neutral comes back through {device}, its hot from another circuit ({breaker}). {device} trips when it is used, and after a trip its hot is still live, with the neutral open. Use a device that senses both legs, or bring its neutral past {device}.",
});

const wording = catalogue({
  both: "both of its conductors",
  hotAndNeutral: (hot: Part, neutral: Part) => `${hot} and ${neutral}`,
});

/** With the contacts open the outlet has kept its hot and lost its neutral. */
export const downstreamHotOnLine = defineRule({
  id: "downstream-hot-on-line",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "An outlet whose neutral is behind a ground-fault device must have its hot behind the same device.",
  why: "The device trips as soon as the outlet is used, and then it looks as if all were dead: but the hot does not pass its contacts, and through whatever is switched on the neutral behind the device is live as well. Its own TEST passes.",
  messages,
  sections: everyEdition("110.3(B)", "unconfirmed"),
  values: REQUIREMENT_VALUES,
  check({ section, project, edition, installation, state, report }) {
    for (const found of lineLoadDevices(section)) {
      if (!found.lineLive || !found.lineGrounded || found.loadGrounded || !isFedRightWay(found)) continue;
      const uncovered = outletsUncovered(section, found);
      for (const standing of section.outlets()) {
        if (!isSplitRound(section, found, standing)) continue;
        const { outlet, enclosure } = standing;
        const other = otherCircuit(section, found.device.id, found.lineHot, hotOf(standing));
        const ends = endsLeaving(section, found, standing);
        const shown = { outlet: outlet.name, box: enclosure.name, device: found.device.name };
        report({
          subjects: [subject("outlet", { id: outlet.key, name: outlet.name })],
          message:
            other === undefined
              ? fillIn(messages.onLine, { ...shown, ends: endWords(section, found, ends) })
              : fillIn(messages.otherCircuit, { ...shown, breaker: other.name }),
          data: { device: found.device.name },
          ...basisOf(
            marksOn(outlet.device, "type"),
            marksOnWay(section, section.wayFrom("ungrounded", hotOf(standing), found.device.id)),
          ),
          ...(state === "proposed" &&
            other === undefined &&
            bringTogether(section, found, ends, {
              behind:
                requirementOf(project, standing, edition).required === true ||
                decided(installation, found, outlet.key, ends),
              state,
            })),
          hides: NOT_PROTECTED.map((rule) => ({ rule, subjects: [outlet.key, ...uncovered] })),
        });
      }
    }
  },
});

function isSplitRound(section: Section, { device, open }: LineLoadDevice, standing: OutletStanding): boolean {
  if (standing.outlet.device.id === device.id) return false;
  const neutral = neutralOf(standing);
  return open.isLive(hotOf(standing)) && section.reach().isGrounded(neutral) && !open.isGrounded(neutral);
}

/** Outlets that the device would protect, were it not for a load that brings the hot round it. */
const outletsUncovered = (section: Section, { device }: LineLoadDevice): readonly string[] =>
  sectionProof(section)
    .outlets.filter(({ devices }) =>
      devices.some(
        (test) => test.device === device.id && test.reachedThroughLoad && !test.hotReached && !test.neutralReached,
      ),
    )
    .map(({ standing }) => standing.outlet.key);

interface Leaving {
  readonly hot?: EndKey;
  readonly neutral?: EndKey;
}

/** The ends by which the conductors of an outlet leave the box of the device. */
function endsLeaving(section: Section, { device, enclosure }: LineLoadDevice, standing: OutletStanding): Leaving {
  const end = (source: "ungrounded" | "grounded"): EndKey | undefined => {
    const spot = source === "ungrounded" ? hotOf(standing) : neutralOf(standing);
    const way = section.wayFrom(source, spot, source === "ungrounded" ? device.id : undefined);
    return lastCableStep(way, "fromEnclosure", enclosure.id)?.from;
  };
  const hot = end("ungrounded");
  const neutral = end("grounded");
  return { ...(hot !== undefined && { hot }), ...(neutral !== undefined && { neutral }) };
}

/** Whether a person has decided that an outlet, or the cable to it, is to be behind a device; undefined where nobody has. */
function decided(
  { intent }: Installation,
  { enclosure }: LineLoadDevice,
  outlet: OutletKey,
  { hot, neutral }: Leaving,
): boolean | undefined {
  const wish = intent.outlets[outlet]?.wish;
  if (wish !== undefined) return wish === "protect";
  const protect = intent.boxes[enclosure.id]?.protect ?? {};
  for (const end of [hot, neutral]) {
    const parsed = end === undefined ? undefined : parseEnd(end);
    const isMeant = parsed?.of === "cable" ? protect[parsed.cable] : undefined;
    if (isMeant !== undefined) return isMeant;
  }
  return undefined;
}

/** Its hot comes behind the device too, or its neutral goes back to LINE. Where nobody has decided, that is a choice. */
function bringTogether(
  section: Section,
  found: LineLoadDevice,
  { hot, neutral }: Leaving,
  { behind, state }: { readonly behind: boolean | undefined; readonly state: StateName },
): Pick<Report, "fix" | "offers"> {
  const toLoad = hot && bringFix(section, found, hot, "LOAD", "hot", state);
  const toLine = neutral && bringFix(section, found, neutral, "LINE", "neutral", state);
  if (behind === undefined) return { offers: [toLoad, toLine].flatMap((fix) => fix ?? []) };
  const fix = behind ? (toLoad ?? toLine) : (toLine ?? toLoad);
  return fix === undefined ? {} : { fix };
}

function endWords(section: Section, { enclosure }: LineLoadDevice, { hot, neutral }: Leaving): string {
  if (hot === undefined || neutral === undefined) return wording.both;
  const { installation } = section;
  return wording.hotAndNeutral(nameOfEnd(installation, enclosure, hot), nameOfEnd(installation, enclosure, neutral));
}
