import type { MadeFinding, MadeGroup, MadeJumper, MadeMove, MadeUp } from "../answers/make-up.ts";
import { findConnector } from "../catalog/connectors.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { type DeviceId, type EndKey, jumperEnd } from "../model/ids.ts";
import type { Installation, Project, StateName } from "../model/project.ts";
import { nameOfEnd } from "../queries/end-facts.ts";
import { inOrder } from "../queries/in-order.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { fillLedger } from "../rules/fill/fill-ledger.ts";
import { fillEdition } from "../rules/fill-edition.ts";
import { sectionOf } from "../solver/sections.ts";
import { pointKey } from "./box-nets.ts";
import { protectionOf } from "./fit-device.ts";
import type { MakeUpFinding } from "./joint-group.ts";
import type { JointPlan } from "./joint-plan.ts";
import { nameOfPort } from "./landing.ts";
import { scopeDifference } from "./scope/difference.ts";
import { placeWords } from "./scope/scope-words.ts";
import type { TriedMakeUp } from "./try-make-up.ts";

interface Proposal extends TriedMakeUp {
  readonly started: Project;
  readonly plan: JointPlan;
  readonly replaced: ReadonlyMap<DeviceId, DeviceId>;
}

/** What is told of a make-up before it is run, as plain data. */
export function madeUp(
  { call, project, started, judged, plan, replaced }: Proposal,
  state: StateName,
  before: Enclosure,
): MadeUp {
  const installation = getInstallation(project, state);
  const was = getInstallation(started, state);
  const after = installation.enclosures[before.id];
  if (after === undefined) throw new Error("A make-up takes no box away.");
  const sectionBefore = sectionOf(was, before.id);
  const sectionAfter = sectionOf(installation, before.id);
  const edition = fillEdition(started);
  const scope = scopeDifference(was, installation, edition).boxes.find(({ enclosure }) => enclosure === before.id);
  return {
    call,
    box: before.id,
    groups: groupsOf(installation, before, after, plan),
    jumpers: inOrder(after.jumpers).map(
      ({ id, name, awg, colour }): MadeJumper => ({
        name,
        awg,
        colour,
        from: wordsAt(after, jumperEnd(id, "a")),
        to: wordsAt(after, jumperEnd(id, "b")),
        isNew: !(id in before.jumpers),
      }),
    ),
    moves: { ...plan.moves, ends: movedEnds(installation, before, after) },
    replaced: [...replaced].map(([id, old]) => ({
      old: before.devices[old]?.name ?? old,
      by: after.devices[id]?.name ?? id,
    })),
    introduces: [...judged.introduces, ...judged.notes].map(told),
    repairs: judged.repairs.map(told),
    unprotects: judged.unprotects,
    fill: { before: fillLedger(was, before, edition), after: fillLedger(installation, after, edition) },
    protection: {
      before: sectionBefore === undefined ? [] : protectionOf(sectionBefore),
      after: sectionAfter === undefined ? [] : protectionOf(sectionAfter),
    },
    labels: Object.keys(installation.labels).filter((id) => !(id in was.labels)).length,
    ...(scope !== undefined && { scope }),
  };
}

const wordsAt = (enclosure: Enclosure, end: EndKey): string =>
  placeWords(enclosure, enclosure.places[end]?.at ?? { kind: "loose" });

export const told = ({ rule, severity, message }: MakeUpFinding): MadeFinding => ({ rule, severity, message });

function groupsOf(
  installation: Installation,
  before: Enclosure,
  after: Enclosure,
  { landings, splices }: JointPlan,
): readonly MadeGroup[] {
  const spliceAt = (end: EndKey | undefined) => {
    const at = end === undefined ? undefined : after.places[end]?.at;
    return at?.kind === "splice" ? after.splices[at.splice] : undefined;
  };
  const byJumper = (name: string, group: string) => {
    // A joint of pigtails alone has no end of a cable to be known by.
    const found = Object.values(after.splices).find((one) => one.name === name || one.name.startsWith(`${group}-`));
    return found;
  };
  return landings.map(({ group, landing, splices: numbers }) => ({
    name: group.name,
    landing: landing.kind,
    members: group.ends.map((end) => nameOfEnd(installation, after, end)),
    ports: group.ports.map((port) => nameOfPort(after, port)),
    splices: numbers.flatMap((number) => {
      const planned = splices[number];
      if (planned === undefined) return [];
      const made =
        (planned.home === undefined ? undefined : after.splices[planned.home]) ??
        spliceAt(planned.ends[0]) ??
        byJumper(planned.word, group.name);
      const connector = made?.connector ?? planned.connector;
      return [
        {
          word: planned.word,
          name: made?.name ?? planned.word,
          count: planned.count,
          connector: findConnector(connector)?.title ?? connector,
          isNew: made === undefined || !(made.id in before.splices),
          connectorChanges: planned.connectorChanges,
        },
      ];
    }),
  }));
}

/** Every end of a cable or of a jumper that stays, with where it was and where it goes. */
function movedEnds(installation: Installation, before: Enclosure, after: Enclosure): readonly MadeMove[] {
  return (Object.keys(after.places) as EndKey[]).sort().flatMap((end) => {
    const [was, is] = [before.places[end]?.at, after.places[end]?.at];
    // A joint that only has another name now is the same place.
    if (was === undefined || is === undefined || pointKey(was) === pointKey(is)) return [];
    const [from, to] = [placeWords(before, was), placeWords(after, is)];
    return [{ name: nameOfEnd(installation, after, end), from, to }];
  });
}
