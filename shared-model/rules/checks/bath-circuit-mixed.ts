import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Project } from "../../model/project.ts";
import type { OutletStanding } from "../../solver/section.ts";
import { circuitsFor, namesOfOutlets, reportMixed } from "../dedicated-circuits.ts";
import { defineRule } from "../rule.ts";
import { everyEdition, listed } from "../rule-parts.ts";

const messages = templates({
  existing: "{breaker} in {panel} feeds {own} and also {placed}. It may stay; think before you hang more on it.",
  introduced:
    "{breaker} in {panel} feeds {own} and also {placed}. Bathroom receptacles get a 20 A circuit for themselves, or with the other outlets of a single bathroom. Feed {others} from elsewhere.",
});

const wording = catalogue({
  inBathroom: (outlets: Part) => `${outlets} in the bathroom`,
  inBathrooms: (outlets: Part) => `${outlets} in the bathrooms`,
  inRoom: (outlets: Part, room: Part) => `${outlets} in ${room}`,
});

/** One circuit may serve a single bathroom whole, its light and fan too; with another room on it, receptacles alone. */
export const bathCircuitMixed = defineRule({
  id: "bath-circuit-mixed",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "The 20 A circuit of bathroom receptacles must feed nothing else, or one bathroom only.",
  why: "A hair dryer takes most of 20 A by itself. Circuits of old houses often feed a bedroom as well; that is noted and need not be changed, but extending it makes it today's work. A breaker of another rating is not taken for the bathroom circuit, which must exist besides.",
  messages,
  sections: everyEdition("210.11(C)(3)", "from-memory"),
  check(context) {
    const circuits = circuitsFor(context, {
      isOwn: ({ outlet }, kinds) => outlet.receptacle && kinds.has("bathroom"),
      mayShare: () => false,
    });
    for (const circuit of circuits) {
      const { own, others } = circuit;
      if (others.length === 0 || isOneBathroom([...own, ...others])) continue;
      reportMixed(context, messages, circuit, {
        own: (roomsOf(own) > 1 ? wording.inBathrooms : wording.inBathroom)(namesOfOutlets(own)),
        placed: inRooms(context.project, others),
      });
    }
  },
});

const roomsOf = (outlets: readonly OutletStanding[]): number =>
  new Set(outlets.map(({ enclosure }) => enclosure.roomId)).size;

/** "R2 and R3 in Bedroom and L1 in Hall", each room once; without a room by the box. */
function inRooms({ rooms }: Project, outlets: readonly OutletStanding[]): string {
  const byPlace = new Map<string, OutletStanding[]>();
  for (const standing of outlets) {
    const { enclosure } = standing;
    const room = enclosure.roomId === undefined ? undefined : rooms[enclosure.roomId];
    const place = room?.name ?? enclosure.name;
    byPlace.set(place, [...(byPlace.get(place) ?? []), standing]);
  }
  return listed([...byPlace].map(([place, standings]) => wording.inRoom(namesOfOutlets(standings), place)));
}

function isOneBathroom(outlets: readonly OutletStanding[]): boolean {
  const [first, ...others] = outlets.map(({ enclosure }) => enclosure.roomId);
  return first !== undefined && others.every((room) => room === first);
}
