import type { Project } from "../../model/project.ts";
import type { RoomKind } from "../../model/room.ts";
import { sectionProof } from "../../solver/circuit/section-proof.ts";
import type { OutletStanding } from "../../solver/section.ts";
import { placeWords } from "../place-words.ts";
import { decisiveProof, gapOf } from "../proof-words.ts";
import { isOtherFault, protectionWords } from "../protection-words.ts";
import { REQUIREMENT_VALUES, requirementOf } from "../required-protection.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyJudgedEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import { protectionOffers } from "../section-offers.ts";
import { hotOf, isPolaritySwapped, marksOnWay } from "../section-parts.ts";
import { supplyNotDrawn } from "../supply-not-drawn.ts";

const messages = {
  open: "{outlet} in {box} ({places}) needs ground-fault protection, but {reason}. {option}",
  roomUnknown:
    "Cannot tell whether {outlet} in {box} needs ground-fault protection: the box is in no room. Put it in its room.",
  notLive:
    "Cannot tell whether {outlet} in {box} ({places}) has its ground-fault protection: no source reaches it in this drawing. Draw its supply.",
  tooManySettings:
    "Cannot tell whether {outlet} in {box} ({places}) is protected in every switch position: more switches bear on it than are tried.",
};

/**
 * Proved by the circuit, in every switch position: with a device open no source reaches the outlet, the device is fed on LINE
 * and has power, and its sensor sees all of a leak and nothing of what the outlet uses.
 */
export const outletNotProtected = defineRule({
  id: "outlet-not-protected",
  status: "draft",
  scope: "section",
  severity: "violation",
  summary: "Every outlet in a listed place must be behind a ground-fault device, by both of its conductors.",
  why: "An outlet is protected only when both its hot and its neutral come from the LOAD side. Being the next box along proves nothing: a cable spliced to LINE in the same box as the device is not behind it. Lights and hall receptacles are not on the list; protecting them is a wish. Exceptions of the editions (snow melting, alarms, hung loads) are not held, nor is what is listed by its kind and not by its place, as a dishwasher that is wired in: judge them by hand.",
  messages,
  sections: everyJudgedEdition("210.8(A)", "sourced"),
  values: REQUIREMENT_VALUES,
  check({ section, project, installation, edition, state, report, cannotTell }) {
    for (const proof of sectionProof(section).outlets) {
      const { standing, verdict } = proof;
      const { outlet, enclosure } = standing;
      const need = requirementOf(project, standing, edition);
      if (need.required === false) continue;
      if (verdict === "all" || verdict === "by-setting") continue;
      const subjects = [subject("outlet", { id: outlet.key, name: outlet.name })];
      const shown = { outlet: outlet.name, box: enclosure.name };
      if (need.required === "room-unknown") {
        cannotTell({
          subjects,
          message: fillIn(messages.roomUnknown, shown),
          missing: `the room of ${enclosure.name}`,
          enterAt: subject("enclosure", enclosure),
        });
        continue;
      }
      const isSwapped = outlet.receptacle && isPolaritySwapped(section, standing);
      const decisive = isSwapped ? undefined : decisiveProof(section, proof);
      if (!isSwapped && isOtherFault(section, standing, decisive)) continue;
      const placed = { ...shown, places: placedIn(project, standing, need.places) };
      if (!isSwapped && (verdict === "not-live" || verdict === "cannot-tell")) {
        const kind = standing.live ? "tooManySettings" : "notLive";
        const shared = standing.live
          ? undefined
          : supplyNotDrawn(section, installation, `the ground-fault protection of ${outlet.name}`);
        cannotTell({
          subjects,
          message: fillIn(messages[kind], placed),
          missing: standing.live ? `the switch positions that bear on ${outlet.name}` : `the supply of ${outlet.name}`,
          toDo: standing.live ? "Judge it by hand." : `Draw where ${outlet.name} gets its supply.`,
          ...(shared !== undefined && { shared }),
        });
        continue;
      }
      const gap = gapOf(section, standing, decisive);
      const when = gap.when === "" ? "" : `${gap.when} `;
      report({
        subjects,
        section: need.section,
        message: fillIn(messages.open, {
          ...placed,
          reason: isSwapped ? "its hot and neutral are exchanged" : `${when}${gap.words}`,
          option: protectionWords(section, standing, decisive),
        }),
        data: { places: need.places.join(" "), ...(gap.test !== undefined && { test: gap.test }) },
        ...(state === "proposed" && {
          offers: isSwapped ? [] : protectionOffers(section, { project, installation }, standing, state),
        }),
        ...basisOf(
          marksOn(enclosure, "roomId"),
          marksOn(outlet.device, "type", "zones"),
          marksOnWay(section, section.wayFrom("ungrounded", hotOf(standing))),
        ),
      });
    }
  },
});

/** "Laundry: unfinished basement", "Porch: outdoors", "Basement, unfinished". */
function placedIn(project: Project, { enclosure }: OutletStanding, places: readonly RoomKind[]): string {
  const room = enclosure.roomId === undefined ? undefined : project.rooms[enclosure.roomId];
  const { name, kinds } = placeWords(room, places);
  if (name === undefined) return listed(kinds);
  return kinds.length === 0 ? name : `${name}: ${listed(kinds)}`;
}
