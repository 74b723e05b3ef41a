import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { DeviceId } from "../../model/ids.ts";
import type { Project } from "../../model/project.ts";
import type { RoomKind } from "../../model/room.ts";
import { sectionProof } from "../../solver/circuit/section-proof.ts";
import type { OutletStanding } from "../../solver/section.ts";
import { fedPast } from "../fed-past.ts";
import { workAt } from "../new-work.ts";
import { type OfCause, oncePerCause } from "../one-cause.ts";
import { placeWords } from "../place-words.ts";
import { decisiveProof, gapOf } from "../proof-words.ts";
import { isOtherFault, othersWords, protectionWords } from "../protection-words.ts";
import { REQUIREMENT_VALUES, requirementOf } from "../required-protection.ts";
import { defineRule, type SectionContext } from "../rule.ts";
import { basisOf, everyJudgedEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import { protectionOffers } from "../section-offers.ts";
import { hotOf, isPolaritySwapped, marksOnWay } from "../section-parts.ts";
import { supplyNotDrawn } from "../supply-not-drawn.ts";
import { listedShort } from "../trip-parts.ts";
import { type OpenOutlet, unprotectedTogether } from "../unprotected-together.ts";

const messages = templates({
  open: "{outlet} in {box} ({places}) needs ground-fault protection, but {reason}.{others} {option}",
  roomUnknown: "Cannot tell whether {outlets} {need} ground-fault protection: {boxes} in no room. Put {them}.",
  notLive:
    "Cannot tell whether {outlet} in {box} ({places}) has its ground-fault protection: no source reaches it in this drawing. Draw its supply.",
  tooManySettings:
    "Cannot tell whether {outlet} in {box} ({places}) is protected in every switch position: more switches bear on it than are tried.",
});

const wording = catalogue({
  areInNoRoom: (boxes: Part) => `${boxes} are`,
  drawSupply: (outlet: Part) => `Draw where ${outlet} gets its supply.`,
  exchanged: "its hot and neutral are exchanged",
  inBox: (outlets: Part, box: Part) => `${outlets} in ${box}`,
  inItsRoom: "it in its room",
  inTheirRooms: "them in their rooms",
  judge: "Judge it by hand.",
  need: (count: number) => (count === 1 ? "needs" : "need"),
  placeAndKinds: (place: Part, kinds: Part) => `${place}: ${kinds}`,
  positionsOf: (outlet: Part) => `the switch positions that bear on ${outlet}`,
  protectionOf: (outlet: Part) => `the ground-fault protection of ${outlet}`,
  roomOf: (box: Part) => `the room of ${box}`,
  roomsOf: (boxes: Part) => `the rooms of ${boxes}`,
  supplyOf: (outlet: Part) => `the supply of ${outlet}`,
  theBoxIs: "the box is",
  when: (positions: Part, gap: Part) => `${positions} ${gap}`,
});

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
  check(context) {
    const { section, project, installation, edition, state, report, cannotTell } = context;
    const open: OpenOutlet[] = [];
    const roomless: OutletStanding[] = [];
    for (const proof of sectionProof(section).outlets) {
      const { standing, verdict } = proof;
      const { outlet, enclosure } = standing;
      const need = requirementOf(project, standing, edition);
      if (need.required === false) continue;
      if (verdict === "all" || verdict === "by-setting") continue;
      const subjects = [subject("outlet", { id: outlet.key, name: outlet.name })];
      const shown = { outlet: outlet.name, box: enclosure.name };
      if (need.required === "room-unknown") {
        roomless.push(standing);
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
          : supplyNotDrawn(section, installation, wording.protectionOf(outlet.name));
        cannotTell({
          subjects,
          message: fillIn(messages[kind], placed),
          missing: standing.live ? wording.positionsOf(outlet.name) : wording.supplyOf(outlet.name),
          toDo: standing.live ? wording.judge : wording.drawSupply(outlet.name),
          ...(shared !== undefined && { shared }),
        });
        continue;
      }
      const work = workAt(context, enclosure, outlet.device).kind;
      open.push({ standing, need, placed, decisive, isSwapped, work });
    }
    const past = open.length === 0 ? new Map() : fedPast(section, installation);
    const found = unprotectedTogether(section, open).map(({ one, cause, isFirst, others }): OfCause => {
      const { standing, need, placed, decisive, isSwapped } = one;
      const { outlet, enclosure } = standing;
      const gap = gapOf(section, standing, decisive);
      const reason = gap.when === "" ? gap.words : wording.when(gap.when, gap.words);
      const message = fillIn(messages.open, {
        ...placed,
        reason: isSwapped ? wording.exchanged : reason,
        others: othersWords(others),
        option: protectionWords(section, standing, decisive, others),
      });
      return {
        cause,
        report: {
          subjects: [subject("outlet", { id: outlet.key, name: outlet.name })],
          section: need.section,
          message,
          data: {
            places: need.places.join(" "),
            ...(gap.test !== undefined && { test: gap.test }),
            ...(others.length > 0 && { others: others.length }),
          },
          hides: [{ rule: "gfci-load-empty-tape", subjects: leftOnLine(past, standing) }],
          ...(state === "proposed" &&
            isFirst && {
              offers: isSwapped ? [] : protectionOffers(section, { project, installation }, standing, state),
            }),
          ...basisOf(
            marksOn(enclosure, "roomId"),
            marksOn(outlet.device, "type", "zones"),
            marksOnWay(section, section.wayFrom("ungrounded", hotOf(standing))),
          ),
        },
      };
    });
    for (const one of oncePerCause("outlet-not-protected", found)) report(one);
    askRooms(roomless, cannotTell);
  },
});

/** The device with nothing on LOAD where the one cable that was left on LINE leads to this outlet. */
const leftOnLine = (past: ReturnType<typeof fedPast>, { outlet }: OutletStanding): readonly DeviceId[] =>
  [...past].flatMap(([{ device }, fed]) => {
    const [first, ...others] = fed;
    const isOneCable = first !== undefined && others.every(({ cable }) => cable === first.cable);
    return isOneCable && fed.some(({ standing }) => standing.outlet.key === outlet.key) ? device.id : [];
  });

/** One question for a section: whoever places one box places those beside it. */
function askRooms(standings: readonly OutletStanding[], cannotTell: SectionContext["cannotTell"]): void {
  const boxes = [...new Set(standings.map(({ enclosure }) => enclosure))];
  const [first] = boxes;
  if (first === undefined) return;
  const names = listedShort(standings.map(({ outlet }) => outlet.name));
  const inBoxes = listedShort(boxes.map(({ name }) => name));
  const isOne = boxes.length === 1;
  cannotTell({
    subjects: [subject("enclosure", first)],
    message: fillIn(messages.roomUnknown, {
      outlets: isOne ? wording.inBox(names, inBoxes) : names,
      need: wording.need(standings.length),
      boxes: isOne ? wording.theBoxIs : wording.areInNoRoom(inBoxes),
      them: isOne ? wording.inItsRoom : wording.inTheirRooms,
    }),
    missing: (isOne ? wording.roomOf : wording.roomsOf)(inBoxes),
  });
}

/** "Laundry: unfinished basement", "Porch: outdoors", "Basement, unfinished". */
function placedIn(project: Project, { enclosure }: OutletStanding, places: readonly RoomKind[]): string {
  const room = enclosure.roomId === undefined ? undefined : project.rooms[enclosure.roomId];
  const { name, kinds } = placeWords(room, places);
  if (name === undefined) return listed(kinds);
  return kinds.length === 0 ? name : wording.placeAndKinds(name, listed(kinds));
}
