import type { Project } from "../../model/project.ts";
import type { RoomKind } from "../../model/room.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import type { OutletStanding, ProtectionTest, Section } from "../../solver/section.ts";
import { placeWords } from "../place-words.ts";
import { REQUIREMENT_VALUES, requirementOf } from "../required-protection.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyJudgedEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import { protectionOffers } from "../section-offers.ts";
import { hotOf, isPolaritySwapped, lastCableStep, marksOnWay, neutralOf } from "../section-parts.ts";
import { supplyNotDrawn } from "../supply-not-drawn.ts";

const messages = {
  open: "{outlet} in {box} ({places}) needs ground-fault protection: {reason}. {option}",
  roomUnknown:
    "Cannot tell whether {outlet} in {box} needs ground-fault protection: the box is in no room. Put it in its room.",
  notLive:
    "Cannot tell whether {outlet} in {box} ({places}) has its ground-fault protection: no source reaches it in this drawing. Draw its supply.",
  tooManySettings:
    "Cannot tell whether {outlet} in {box} ({places}) is protected in every switch position: more switches bear on it than are tried.",
};

/** Proved by isolation and direction: with a device open, no source reaches the outlet, and the device is fed on LINE. */
export const outletNotProtected = defineRule({
  id: "outlet-not-protected",
  status: "draft",
  scope: "section",
  severity: "violation",
  summary: "Every outlet in a listed place must be behind a ground-fault device, by both of its conductors.",
  why: "An outlet is protected only when both its hot and its neutral come from the LOAD side. Being the next box along proves nothing: a cable spliced to LINE in the same box as the device is not behind it. Lights and hall receptacles are not on the list; protecting them is a wish. Exceptions of the editions (snow melting, alarms, hung loads) are not held: judge them by hand.",
  messages,
  sections: everyJudgedEdition("210.8(A)", "sourced"),
  values: REQUIREMENT_VALUES,
  check({ section, project, installation, edition, state, report, cannotTell }) {
    for (const standing of section.outlets()) {
      const { outlet, enclosure } = standing;
      const need = requirementOf(project, standing, edition);
      if (need.required === false) continue;
      const isProtected = standing.live && standing.protectedBy.length > 0;
      if (isProtected) continue;
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
      // A neutral without its hot, or a live one: these faults stand on their own.
      const atNeutral = neutralOf(standing);
      const isSwapped = outlet.receptacle && isPolaritySwapped(section, standing);
      if (!standing.live && !isSwapped && (section.reach().isLive(atNeutral) || section.reach().isGrounded(atNeutral)))
        continue;
      const placed = { ...shown, places: placedIn(project, standing, need.places) };
      if (!isSwapped && (!standing.live || !standing.certain)) {
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
      const nearest = isSwapped ? undefined : nearestTest(testsOnWay(section, standing));
      report({
        subjects,
        section: need.section,
        message: fillIn(messages.open, {
          ...placed,
          reason: isSwapped ? "its hot and neutral are exchanged" : reasonWords(section, standing, nearest),
          option: optionWords(section, standing, nearest),
        }),
        data: { places: need.places.join(" ") },
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

/** Devices that one of its conductors passes, that its hot passes by in their box, and its own. One on another branch says nothing. */
const testsOnWay = (section: Section, standing: OutletStanding): readonly ProtectionTest[] =>
  standing.tests.filter(
    (test) =>
      test.device === standing.outlet.device.id ||
      !test.hotReached ||
      !test.neutralReached ||
      leavingEnd(section, standing, test) !== undefined,
  );

/** The device that comes nearest to protecting it: of the right class first, then by what already passes. */
function nearestTest(tests: readonly ProtectionTest[]): ProtectionTest | undefined {
  const score = (test: ProtectionTest): number =>
    [
      test.personnelClass,
      !test.hotReached,
      !test.neutralReached,
      test.fedOnLine,
      test.powered,
      !test.reachedThroughLoad,
    ].filter(Boolean).length;
  return [...tests].sort((a, b) => score(b) - score(a) || (a.device < b.device ? -1 : 1))[0];
}

function reasonWords(section: Section, standing: OutletStanding, test: ProtectionTest | undefined): string {
  if (test === undefined) return "no ground-fault device stands before it";
  const name = nameOfDevice(section, test);
  if (test.device === standing.outlet.device.id && (test.hotReached || test.neutralReached)) {
    const poles =
      test.hotReached && test.neutralReached ? "its hot and its neutral" : test.hotReached ? "its hot" : "its neutral";
    return `a source reaches ${poles} without passing its own sensor`;
  }
  if (!test.personnelClass) return `${name} is not of the class that protects people`;
  if (test.hotReached && test.neutralReached) {
    const end = leavingEnd(section, standing, test);
    return `neither of its conductors is behind ${name}${end === undefined ? "" : `; its hot leaves unsensed by ${end}`}`;
  }
  if (test.hotReached) return `its neutral is behind ${name}, its hot is not`;
  if (test.neutralReached) return `its hot is behind ${name}, its neutral is not`;
  if (!test.fedOnLine) return `${name} is not fed on its LINE terminals`;
  if (!test.powered) return `${name} has no neutral on LINE to work with`;
  return `a load brings the source around ${name}`;
}

function optionWords(section: Section, standing: OutletStanding, test: ProtectionTest | undefined): string {
  const own = standing.outlet.receptacle
    ? `Fit a ground-fault receptacle at ${standing.outlet.name} with its supply on LINE`
    : `Put a ground-fault device before ${standing.outlet.name}`;
  if (test === undefined || !test.personnelClass) return `${own}, or put a device before it.`;
  if (test.device === standing.outlet.device.id)
    return `Land the supply on its LINE, and on its LOAD nothing but what it is to protect.`;
  if (leavingEnd(section, standing, test) === undefined) return `${own}.`;
  return `Bring both of its conductors from the LOAD side of ${nameOfDevice(section, test)}, or fit a device of its own.`;
}

const nameOfDevice = (section: Section, test: ProtectionTest): string =>
  section.sensingDevices().find(({ device }) => device.id === test.device)?.device.name ?? test.device;

/** Where the hot leaves the box of the device without passing its sensor. */
function leavingEnd(section: Section, standing: OutletStanding, test: ProtectionTest): string | undefined {
  const at = section.sensingDevices().find(({ device }) => device.id === test.device)?.enclosure;
  if (at === undefined || !test.hotReached) return undefined;
  const step = lastCableStep(section.wayFrom("ungrounded", hotOf(standing), test.device), "fromEnclosure", at.id);
  return step === undefined ? undefined : `${nameOfEnd(section.installation, at, step.from)} in ${at.name}`;
}
