import { findDeviceType } from "../catalog/device-types.ts";
import { type Problem, problem } from "../lib/result.ts";
import type { Cable } from "../model/cable.ts";
import type { Enclosure, PassThrough } from "../model/enclosure.ts";
import { type CableId, cableEnd, type EnclosureId, type EndKey, jumperEnd } from "../model/ids.ts";
import type { Place } from "../model/place.ts";
import type { Installation, Project, StateName } from "../model/project.ts";
import { cablesInto } from "./cables-into.ts";
import { getInstallation } from "./installation-of.ts";
import { wording } from "./invariants-words.ts";
import { checkReferences, checkUniqueId, checkUniqueIds } from "./reference-invariants.ts";
import { findTerminal } from "./terminals-of.ts";

/**
 * What must hold after every command and on load, whatever is drawn: ends, places and references agree. Rules judge
 * wiring; this judges bookkeeping, so a problem here is a program error or a damaged file, never a finding.
 */
export function invariantProblems(project: Project): readonly Problem[] {
  const problems: Problem[] = [];
  checkInstallation(project, project.asFound, "/asFound", problems);
  if (project.proposed !== undefined) checkInstallation(project, project.proposed, "/proposed", problems);
  return problems;
}

/** What of one state may have been broken by an edit. */
export interface InvariantPart {
  /** Enclosures that changed, came or went. */
  readonly enclosures: ReadonlySet<EnclosureId>;
  /** Cables that did. */
  readonly cables: ReadonlySet<CableId>;
  /** Ids of what came. */
  readonly newIds: ReadonlySet<string>;
  /** Something that others may name went, or what names it changed. */
  readonly references: boolean;
}

/** As `invariantProblems`, of a part of one state, so that it costs the part. Nothing else may have changed since all was well. */
export function invariantProblemsIn(project: Project, state: StateName, part: InvariantPart): readonly Problem[] {
  const problems: Problem[] = [];
  const installation = getInstallation(project, state);
  const path = state === "as-found" ? "/asFound" : "/proposed";
  const cables = new Set(part.cables);
  for (const id of part.enclosures) {
    for (const { cable } of cablesInto(installation.cables, id)) cables.add(cable.id);
    const enclosure = installation.enclosures[id];
    if (enclosure !== undefined) checkEnclosure(project, installation, enclosure, `${path}/enclosures/${id}`, problems);
  }
  for (const id of cables) {
    const cable = installation.cables[id];
    if (cable !== undefined) checkCable(installation, cable, path, problems);
    else checkPassThroughsOf(installation, id, part.enclosures, path, problems);
  }
  for (const id of part.newIds) checkUniqueId(installation, id, path, problems);
  if (part.references) checkReferences(installation, path, problems);
  return problems;
}

/** A cable that is gone runs through nothing any more. Enclosures of the part were looked at already. */
function checkPassThroughsOf(
  installation: Installation,
  cable: CableId,
  done: ReadonlySet<EnclosureId>,
  path: string,
  problems: Problem[],
): void {
  for (const enclosure of Object.values(installation.enclosures)) {
    if (done.has(enclosure.id)) continue;
    for (const pass of Object.values(enclosure.passThroughs))
      if (pass.cable === cable)
        checkPassThrough(installation, enclosure, pass, `${path}/enclosures/${enclosure.id}`, problems);
  }
}

function checkInstallation(project: Project, installation: Installation, path: string, problems: Problem[]): void {
  checkTables(installation, path, problems);
  checkCables(installation, path, problems);
  for (const [id, enclosure] of Object.entries(installation.enclosures)) {
    checkEnclosure(project, installation, enclosure, `${path}/enclosures/${id}`, problems);
  }
  checkUniqueIds(installation, path, problems);
  checkReferences(installation, path, problems);
}

function checkTables(installation: Installation, path: string, problems: Problem[]): void {
  /** By their order: every table has keys of its own, and a look-up in each would start anew. */
  const look = (at: string, name: string, table: Readonly<Record<string, { readonly id: string }>>): void => {
    const keys = Object.keys(table);
    if (keys.length === 0) return;
    const items = Object.values(table);
    for (let i = 0; i < keys.length; i++) {
      const key = keys[i];
      const id = items[i]?.id;
      if (id === key) continue;
      const message = wording.filedUnder(String(key), String(id));
      problems.push(problem("id-differs-from-key", `${at}/${name}/${key}/id`, message));
    }
  };
  look(path, "enclosures", installation.enclosures);
  look(path, "cables", installation.cables);
  look(path, "loads", installation.loads);
  look(path, "labels", installation.labels);
  for (const [id, enclosure] of Object.entries(installation.enclosures)) {
    const at = `${path}/enclosures/${id}`;
    look(at, "entries", enclosure.entries);
    look(at, "devices", enclosure.devices);
    look(at, "splices", enclosure.splices);
    look(at, "jumpers", enclosure.jumpers);
    look(at, "passThroughs", enclosure.passThroughs);
    if (enclosure.kind === "box") look(at, "rings", enclosure.rings);
  }
}

function checkCables(installation: Installation, path: string, problems: Problem[]): void {
  for (const cable of Object.values(installation.cables)) checkCable(installation, cable, path, problems);
}

function checkCable(installation: Installation, cable: Cable, path: string, problems: Problem[]): void {
  for (const side of ["a", "b"] as const) {
    const where = cable.sides[side];
    if (!("enclosure" in where)) continue;
    const at = `${path}/cables/${cable.id}/sides/${side}`;
    const enclosure = installation.enclosures[where.enclosure];
    if (enclosure === undefined)
      problems.push(problem("unknown-enclosure", at, wording.endsIn(cable.name, where.enclosure)));
    else if (!(where.entry in enclosure.entries))
      problems.push(problem("unknown-entry", at, wording.entersBy(cable.name, enclosure.name, where.entry)));
  }
}

function checkEnclosure(
  project: Project,
  installation: Installation,
  enclosure: Enclosure,
  path: string,
  problems: Problem[],
): void {
  checkEnds(installation, enclosure, path, problems);
  const places = Object.values(enclosure.places);
  for (let at = 0; at < places.length; at++) {
    const wrong = placeProblem(enclosure, places[at] as Place);
    if (wrong === undefined) continue;
    // A path is put together only where it is needed: there are ten places to an enclosure.
    problems.push(problem(wrong[0], `${path}/places/${Object.keys(enclosure.places)[at]}`, wrong[1]));
  }
  for (const device of Object.values(enclosure.devices)) {
    const type = findDeviceType(device.type);
    if (type === undefined)
      problems.push(
        problem("unknown-device-type", `${path}/devices/${device.id}/type`, wording.noDeviceType(device.type)),
      );
    else if (type.where !== enclosure.kind)
      problems.push(
        problem(
          "device-in-wrong-enclosure",
          `${path}/devices/${device.id}`,
          (type.where === "box" ? wording.belongsInBox : wording.belongsInPanel)(device.name, type.title),
        ),
      );
  }
  for (const jumper of Object.values(enclosure.jumpers)) {
    const a = enclosure.places[jumperEnd(jumper.id, "a")];
    const b = enclosure.places[jumperEnd(jumper.id, "b")];
    if (a && b && samePoint(a, b))
      problems.push(problem("jumper-to-itself", `${path}/jumpers/${jumper.id}`, wording.jumperToItself(jumper.name)));
  }
  for (const pass of Object.values(enclosure.passThroughs))
    checkPassThrough(installation, enclosure, pass, path, problems);
  if (enclosure.roomId !== undefined && !(enclosure.roomId in project.rooms)) {
    problems.push(problem("unknown-room", `${path}/roomId`, wording.standsInRoom(enclosure.name, enclosure.roomId)));
  }
}

function checkPassThrough(
  installation: Installation,
  enclosure: Enclosure,
  pass: PassThrough,
  path: string,
  problems: Problem[],
): void {
  const at = `${path}/passThroughs/${pass.id}`;
  const cable = installation.cables[pass.cable];
  if (cable === undefined || pass.conductors.some((key) => !(key in cable.conductors)))
    problems.push(problem("unknown-conductor", at, wording.noCableOrConductor));
  if (!(pass.entryIn in enclosure.entries) || !(pass.entryOut in enclosure.entries))
    problems.push(problem("unknown-entry", at, wording.noEntry));
}

/** Every end that lies here has a place, and every place an end. Where all do and the counts agree, nothing is over. */
function checkEnds(installation: Installation, enclosure: Enclosure, path: string, problems: Problem[]): void {
  const expected = expectedEnds(installation, enclosure);
  const { places } = enclosure;
  const missing = expected.filter((end) => places[end] === undefined);
  for (const end of missing)
    problems.push(problem("end-without-place", `${path}/places`, wording.endWithoutPlace(end, enclosure.name)));
  const placed = Object.keys(places);
  if (placed.length === expected.length - missing.length) return;
  const known = new Set<string>(expected);
  for (const end of placed) {
    if (!known.has(end))
      problems.push(
        problem("place-without-end", `${path}/places/${end}`, wording.placeWithoutEnd(enclosure.name, end)),
      );
  }
}

/** All different, because a cable lies in an enclosure with each side once at most. */
function expectedEnds(installation: Installation, enclosure: Enclosure): readonly EndKey[] {
  const ends: EndKey[] = [];
  for (const { cable, side } of cablesInto(installation.cables, enclosure.id)) {
    for (const key in cable.conductors) ends.push(cableEnd(cable.id, key as keyof typeof cable.conductors, side));
  }
  for (const id in enclosure.jumpers) {
    ends.push(
      jumperEnd(id as keyof typeof enclosure.jumpers, "a"),
      jumperEnd(id as keyof typeof enclosure.jumpers, "b"),
    );
  }
  return ends;
}

/** Code and sentence. */
function placeProblem(enclosure: Enclosure, { at }: Place): readonly [string, string] | undefined {
  if (at.kind === "splice" && !(at.splice in enclosure.splices))
    return ["unknown-splice", wording.namesSplice(at.splice, enclosure.name)];
  if (at.kind !== "terminal") return undefined;
  const device = enclosure.devices[at.device];
  if (device === undefined) return ["unknown-device", wording.namesDevice(at.device, enclosure.name)];
  if (findDeviceType(device.type) === undefined) return undefined;
  const terminal = findTerminal(device, at.terminal);
  if (terminal === undefined) return ["unknown-terminal", wording.noTerminal(device.name, at.terminal)];
  if (Number.isInteger(at.hole) && at.hole >= 1 && at.hole <= terminal.holes) return undefined;
  const unknownHole = terminal.holes === 1 ? wording.notItsHole : wording.notOneOfHoles;
  return ["unknown-hole", unknownHole(device.name, at.terminal, terminal.holes, at.hole)];
}

/** A splice or a terminal counts as one point: both holes of a clamp plate are the same node. */
function samePoint(a: Place, b: Place): boolean {
  if (a.at.kind === "splice" && b.at.kind === "splice") return a.at.splice === b.at.splice;
  if (a.at.kind === "terminal" && b.at.kind === "terminal")
    return a.at.device === b.at.device && a.at.terminal === b.at.terminal;
  return a.at.kind === "bond" && b.at.kind === "bond";
}
