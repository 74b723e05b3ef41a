import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Cable } from "../../model/cable.ts";
import type { RoomId } from "../../model/ids.ts";
import type { Room } from "../../model/room.ts";
import { defineRule, type SectionContext } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  covered:
    "Open wiring on knobs and tubes ({runs}) runs where the cavities of {room} are filled with insulation: it cannot shed its heat there. Take the insulation off it, or rewire that part.",
  unknown:
    "Cannot tell whether open wiring on knobs and tubes ({runs}) is covered with insulation at {room}: whether its cavities are insulated is not recorded. Look from the attic or the cellar, and record it.",
});

const wording = catalogue({
  andMore: (runs: Part, more: Part) => `${runs} and ${more} more`,
  whetherInsulated: (room: Part) => `whether the cavities of ${room} are insulated`,
});

/** How many runs are named before the rest are counted. */
const NAMED = 6;

/** Asked once a room, of rooms in which such wiring ends; a box without a room says nothing of cavities. */
export const knobTubeInInsulation = defineRule({
  id: "knob-tube-in-insulation",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "Open wiring on knobs and tubes is not covered with insulation.",
  why: "This wiring was made for free air: blown or blanket insulation in the cavity keeps its heat in, and its old rubber chars. The insulation usually came decades after the wiring, and nobody who ordered it asked. The wiring may stay and be extended where it is open; it may not be buried.",
  messages,
  sections: everyEdition("394.12", "from-memory"),
  check(context) {
    for (const [room, cables] of runsByRoom(context)) {
      if (room.insulatedCavity === false) continue;
      const runs = runWords(cables);
      const subjects = [subject("room", room), ...cables.map((cable) => subject("cable", cable))];
      if (room.insulatedCavity === undefined) {
        context.cannotTell({
          subjects,
          message: fillIn(messages.unknown, { runs, room: room.name }),
          missing: wording.whetherInsulated(room.name),
          enterAt: subject("room", room),
        });
        continue;
      }
      context.report({
        subjects,
        message: fillIn(messages.covered, { runs, room: room.name }),
        data: { runs: cables.length },
        ...basisOf(cables.flatMap((cable) => marksOn(cable, "construction"))),
      });
    }
  },
});

function runsByRoom({ section, project }: SectionContext): ReadonlyMap<Room, readonly Cable[]> {
  const found = new Map<Room, Cable[]>();
  for (const cable of section.cables) {
    if (cable.construction !== "knob-and-tube") continue;
    const rooms = new Set<RoomId>();
    for (const side of [cable.sides.a, cable.sides.b]) {
      const box = "enclosure" in side ? section.installation.enclosures[side.enclosure] : undefined;
      // A panel may stand in another section's room; its own wiring is judged where it ends.
      if (box?.kind === "box" && box.roomId !== undefined) rooms.add(box.roomId);
    }
    for (const id of rooms) {
      const room = project.rooms[id];
      if (room === undefined) continue;
      const cables = found.get(room);
      if (cables === undefined) found.set(room, [cable]);
      else cables.push(cable);
    }
  }
  return found;
}

function runWords(cables: readonly Cable[]): string {
  const names = cables.map(({ name }) => name);
  const more = names.length - NAMED;
  return more < 2 ? listed(names) : wording.andMore(names.slice(0, NAMED).join(", "), more);
}
