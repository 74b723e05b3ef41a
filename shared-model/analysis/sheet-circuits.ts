import type { BoxRoles } from "../answers/circuit.ts";
import type { CircuitFeeds } from "../answers/circuit-feeds.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { cableEnd, type DeviceId, type EnclosureId } from "../model/ids.ts";
import type { Installation, Project, StateName } from "../model/project.ts";
import { inOrder } from "../queries/in-order.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { directoryLine } from "../rules/directory-words.ts";
import { boxRoles } from "../solver/circuit/section-answers.ts";
import type { OutletStanding, Section } from "../solver/section.ts";
import { allSections, panelRoles, sectionOf } from "../solver/sections.ts";

/** What every breaker of a state feeds, for the page on the panel door. A breaker that no conductor leaves is not among them. */
export function circuitFeeds(project: Project, state: StateName): readonly CircuitFeeds[] {
  const installation = getInstallation(project, state);
  return allSections(installation).flatMap((section) => {
    const boxesOf = boxesByBreaker(section);
    return section.breakers().map(({ device: { id: breaker }, panel }) => {
      const circuit = section.circuitOf(breaker);
      const keys = new Set(circuit.outlets);
      const hotEnds = new Set<string>(circuit.hotEnds);
      const fed = section.outlets().filter(({ outlet }) => keys.has(outlet.key));
      return {
        breaker,
        panel: panel.id,
        feeds: directoryLine(project, installation, fed),
        rooms: [...new Set(fed.map((standing) => placeOf(project, standing)))],
        outlets: fed.length,
        leadsOutside: leadsOutside(section, hotEnds),
        boxes: boxesOf.get(breaker) ?? [],
      };
    });
  });
}

/** Of each breaker of a section the boxes that it must be opened for. */
function boxesByBreaker(section: Section): ReadonlyMap<DeviceId, readonly EnclosureId[]> {
  const breakers = section.breakers().map(({ device }) => device.id);
  const ends = breakers.map((breaker) => {
    const { hotEnds, neutralEnds } = section.circuitOf(breaker);
    return new Set<string>([...hotEnds, ...neutralEnds]);
  });
  const found = new Map<DeviceId, EnclosureId[]>(breakers.map((breaker) => [breaker, []]));
  for (const enclosure of section.enclosures) {
    const own = endsIn(enclosure);
    const coming = breakers.filter((_, i) => own.some((end) => ends[i]?.has(end)));
    for (const breaker of coming.length > 0 ? coming : breakers) found.get(breaker)?.push(enclosure.id);
  }
  return found;
}

/** Ends in an enclosure, and those of conductors that pass through it unbroken. */
const endsIn = ({ places, passThroughs }: Enclosure): readonly string[] => [
  ...Object.keys(places),
  ...Object.values(passThroughs).flatMap(({ cable, conductors }) =>
    conductors.flatMap((key) => [cableEnd(cable, key, "a"), cableEnd(cable, key, "b")]),
  ),
];

const placeOf = ({ rooms }: Project, { enclosure }: OutletStanding): string => {
  const room = enclosure.roomId === undefined ? undefined : rooms[enclosure.roomId];
  return room?.name ?? enclosure.note ?? enclosure.name;
};

const leadsOutside = (section: Section, hotEnds: ReadonlySet<string>): boolean =>
  section.cables.some(
    ({ id, sides, conductors }) =>
      ("outside" in sides.a || "outside" in sides.b) &&
      Object.keys(conductors).some((key) => hotEnds.has(`${id}.${key}.a`) || hotEnds.has(`${id}.${key}.b`)),
  );

/** Roles of every end and splice of a state, by enclosure. */
export function rolesOf(installation: Installation): Readonly<Record<EnclosureId, BoxRoles>> {
  const roles: Record<EnclosureId, BoxRoles> = {};
  for (const enclosure of inOrder(installation.enclosures)) {
    const { id } = enclosure;
    if (enclosure.kind === "panel") roles[id] = panelRoles(installation, enclosure);
    else {
      const section = sectionOf(installation, id);
      if (section !== undefined) roles[id] = boxRoles(section, id);
    }
  }
  return roles;
}
