import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, templates } from "../../lib/catalogue.ts";
import type { EnclosureId, RoomId } from "../../model/ids.ts";
import type { Installation, Project } from "../../model/project.ts";
import type { RoomKind } from "../../model/room.ts";
import { roomKindsOf } from "../../queries/outlets-of.ts";
import type { OutletStanding, Section } from "../../solver/section.ts";
import { OWN_CHECK } from "../own-check.ts";
import { REQUIREMENT_VALUES, requirementOf } from "../required-protection.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import { hotOf, lastCableStep, marksOnWay } from "../section-parts.ts";
import { tripsOf } from "../trip-parts.ts";

const messages = templates({
  dark: "A trip of {device} in {box} leaves {room} dark: {lights} {is} behind it. If that is agreed, wish the protection of {lights}; else feed {it} from LINE of {device}.",
});

const wording = catalogue({
  is: (count: number) => (count === 1 ? "is" : "are"),
  it: (count: number) => (count === 1 ? "it" : "them"),
});

/** Where somebody stands in the dark on steps or wet tiles. */
const PLACES: readonly RoomKind[] = ["stair", "bathroom"];
/** There the instructions of the luminaire often ask for the protection. */
const WANTED: readonly RoomKind[] = ["tub-shower-zone"];

/** All luminaires of the room that this circuit feeds go out with the device. */
export const lightingBehindGfciEgress = defineRule({
  id: "lighting-behind-gfci-egress",
  status: "stable",
  scope: "section",
  severity: "advice",
  summary: "The light of a stair or a bathroom should not go out with a ground-fault device unless that is wanted.",
  why: "A kettle that leaks in the laundry puts out the stair light, and somebody falls. Lights are not on the list of what needs the protection, crawl spaces apart, so this is the customer's choice: it is said once, and a wish for the protection of the light, or of the cable that feeds it, answers it. Another light of the room that stays on answers it too, as far as it hangs on the same circuit. A luminaire over a tub or shower is left out: its instructions often ask for the protection.",
  messages,
  sections: everyEdition(OWN_CHECK, "own-rule"),
  values: REQUIREMENT_VALUES,
  check({ section, project, installation, edition, report }) {
    for (const { device, enclosure, isPersonnel, outlets } of tripsOf(section)) {
      if (!isPersonnel || enclosure.kind === "panel") continue;
      const lights = outlets.filter(
        (standing) =>
          isLuminaire(standing) &&
          isIn(project, standing, PLACES) &&
          !isIn(project, standing, WANTED) &&
          requirementOf(project, standing, edition).required !== true &&
          !isWanted(section, installation, standing, enclosure.id),
      );
      for (const [place, own] of byPlace(lights)) {
        const stays = section
          .outlets()
          .some((one) => placeOf(one) === place && isLuminaire(one) && one.live && !outlets.includes(one));
        if (stays) continue;
        const names = listed(own.map(({ outlet }) => outlet.name));
        const [first] = own;
        const room = first?.enclosure.roomId === undefined ? undefined : project.rooms[first.enclosure.roomId];
        report({
          subjects: own.map(({ outlet }) => subject("outlet", { id: outlet.key, name: outlet.name })),
          message: fillIn(messages.dark, {
            device: device.name,
            box: enclosure.name,
            room: room?.name ?? first?.enclosure.name ?? "",
            lights: names,
            is: wording.is(own.length),
            it: wording.it(own.length),
          }),
          data: { device: device.name },
          ...basisOf(
            own.flatMap((one) => marksOn(one.enclosure, "roomId")),
            own.flatMap((one) => marksOnWay(section, section.wayFrom("ungrounded", hotOf(one)))),
          ),
        });
      }
    }
  },
});

const isLuminaire = ({ outlet }: OutletStanding): boolean => getDeviceType(outlet.device.type).family === "luminaire";

function isIn(project: Project, { enclosure, outlet }: OutletStanding, places: readonly RoomKind[]): boolean {
  const kinds = roomKindsOf(project, enclosure, outlet.device);
  return places.some((place) => kinds.has(place));
}

/** A person wished for it, or meant the cable that leads to it from the box of the device to be behind the device. */
function isWanted(section: Section, { intent }: Installation, standing: OutletStanding, home: EnclosureId): boolean {
  const wish = intent.outlets[standing.outlet.key]?.wish;
  if (wish !== undefined) return wish === "protect";
  const protect = intent.boxes[home]?.protect;
  if (protect === undefined) return false;
  const cable = lastCableStep(section.wayFrom("ungrounded", hotOf(standing)), "fromEnclosure", home)?.cable;
  return cable !== undefined && protect[cable] === true;
}

const placeOf = ({ enclosure }: OutletStanding): RoomId | EnclosureId => enclosure.roomId ?? enclosure.id;

function byPlace(lights: readonly OutletStanding[]): ReadonlyMap<RoomId | EnclosureId, readonly OutletStanding[]> {
  const places = new Map<RoomId | EnclosureId, OutletStanding[]>();
  const byName = [...lights].sort((a, b) => a.outlet.name.localeCompare(b.outlet.name, "en", { numeric: true }));
  for (const light of byName) places.set(placeOf(light), [...(places.get(placeOf(light)) ?? []), light]);
  return places;
}
