import { findDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import { type Problem, problem } from "../lib/result.ts";
import type { Device } from "../model/device.ts";
import type { Installation, Project } from "../model/project.ts";
import { invariantProblems } from "../queries/invariants.ts";
import { onOneLine } from "./json-path.ts";

const wording = catalogue({
  belongsTo: (id: Part) => `It belongs to "${id}", which does not exist. Remove it.`,
  filed: (key: Part, id: Part) => `The item is filed under "${key}" but calls itself "${id}". Make the two equal.`,
  kept: (old: Part) => `It replaces "${old}", which is still there. Remove one of the two, or the replacement.`,
  otherState: (old: Part) => `It replaces "${old}", which the other state does not have. Remove the replacement.`,
  replacements: (ring: Part) => `The replacements lead round in a circle: ${ring}. Remove one.`,
  tieGone: (other: Part) => `It is tied to "${other}", which does not exist. Remove the tie.`,
  ties: (ring: Part) => `The ties lead round in a circle: ${ring}. Remove one.`,
  tiedToItself: "A breaker is tied to itself. Remove the tie.",
  usualRemedy: "Name one that exists, or remove this entry.",
});

/**
 * What in a document of the right shape does not agree with itself: the invariants of the model, and references that
 * no command but only a damaged file can leave dangling. A reading is a record of its time: what it was taken at may be
 * gone.
 */
export function referenceProblems(project: Project): readonly Problem[] {
  const problems = [...invariantProblems(project).map(withRemedy), ...tableProblems(project)];
  checkSplices(project, problems);
  return problems;
}

/** Whether every device is of the catalogue: none other can be drawn. */
export function knowsItsDevices({ asFound, proposed }: Project): boolean {
  for (const installation of proposed === undefined ? [asFound] : [asFound, proposed])
    for (const [, { type }] of everyDevice(installation)) if (findDeviceType(type) === undefined) return false;
  return true;
}

/**
 * Of these what the tables of the whole document and the devices among each other say: circles among them. It looks into
 * no table of a box but that of its devices.
 */
export function tableProblems(project: Project): readonly Problem[] {
  const problems: Problem[] = [];
  checkTables(project, problems);
  for (const [path, installation] of installationsOf(project)) checkTies(installation, path, problems);
  checkReplacements(project, problems);
  checkShared(project, problems);
  return problems;
}

const installationsOf = ({ asFound, proposed }: Project): readonly (readonly [path: string, of: Installation])[] =>
  proposed === undefined
    ? [["/asFound", asFound]]
    : [
        ["/asFound", asFound],
        ["/proposed", proposed],
      ];

const REMEDIES: Readonly<Record<string, string>> = catalogue({
  "id-differs-from-key": "Make the two equal.",
  "end-without-place": 'Add a place, such as {"at": {"kind": "capped"}}.',
  "place-without-end": "Remove the place.",
  "unknown-device-type": "Put a device type of the catalogue.",
  "device-in-wrong-enclosure": "Move it to an enclosure of that kind.",
  "jumper-to-itself": "Put one end elsewhere.",
  "duplicate-id": "Give one of the two an id of its own.",
});

const withRemedy = ({ code, path, message }: Problem): Problem =>
  problem(code, path, `${onOneLine(message)} ${REMEDIES[code] ?? wording.usualRemedy}`);

function checkTables(project: Project, problems: Problem[]): void {
  const { rooms, readings, attachments } = project;
  for (const [name, table] of Object.entries({ rooms, readings, attachments })) {
    for (const [key, { id }] of Object.entries<{ readonly id: string }>(table)) {
      if (id === key) continue;
      problems.push(problem("id-differs-from-key", `/${name}/${key}/id`, wording.filed(key, id)));
    }
  }
}

function checkTies(installation: Installation, path: string, problems: Problem[]): void {
  const tied = new Map<string, string>();
  for (const [, device] of everyDevice(installation))
    if (device.tiedTo !== undefined) tied.set(device.id, device.tiedTo);
  if (tied.size === 0) return;
  const at = new Map<string, string>();
  for (const [box, { id }] of everyDevice(installation)) at.set(id, `${path}/enclosures/${box}/devices/${id}/tiedTo`);
  for (const [id, other] of tied) {
    const where = at.get(id) as string;
    if (other === id) problems.push(problem("tied-to-itself", where, wording.tiedToItself));
    else if (!at.has(other)) problems.push(problem("unknown-device", where, wording.tieGone(other)));
  }
  // Two breakers may each name the other; a longer ring has no breaker that the others are tied to.
  for (const ring of ringsOf(tied)) {
    if (ring.length <= 2) continue;
    const where = at.get(ring[0] as string) as string;
    problems.push(problem("ring-of-ties", where, wording.ties(ring.join(", "))));
  }
}

/** A device replaces one of the other state, and no chain of replacements comes back to where it began. */
function checkReplacements(project: Project, problems: Problem[]): void {
  const { asFound, proposed } = project;
  const replaces = new Map<string, string>();
  const at = new Map<string, string>();
  for (const [path, installation] of installationsOf(project)) {
    const other = installation === asFound ? proposed : asFound;
    const replacing = [...everyDevice(installation)].filter(([, device]) => device.replaces !== undefined);
    if (replacing.length === 0) continue;
    const others = new Set(other === undefined ? [] : [...everyDevice(other)].map(([, device]) => device.id));
    const own = new Set([...everyDevice(installation)].map(([, device]) => device.id));
    for (const [box, { id, replaces: old }] of replacing) {
      if (old === undefined) continue;
      const where = `${path}/enclosures/${box}/devices/${id}/replaces`;
      replaces.set(id, old);
      at.set(id, where);
      if (own.has(old)) {
        problems.push(problem("kept-and-replaced", where, wording.kept(old)));
      } else if (!others.has(old)) {
        problems.push(problem("unknown-device", where, wording.otherState(old)));
      }
    }
  }
  for (const ring of ringsOf(replaces)) {
    const message = wording.replacements(ring.join(", "));
    problems.push(problem("ring-of-replacements", at.get(ring[0] as string) as string, message));
  }
}

/** What both states share, positions on the sheet and pictures, belongs to something that one of them has. */
function checkShared({ asFound, proposed, rooms, layout, attachments }: Project, problems: Problem[]): void {
  const states = proposed === undefined ? [asFound] : [asFound, proposed];
  const unknown = (code: string, path: string, id: string): void => {
    problems.push(belongsToNone(code, path, id));
  };
  const hasEnclosure = (id: string) => states.some(({ enclosures }) => id in enclosures);
  for (const id in layout.enclosures)
    if (!hasEnclosure(id)) unknown("unknown-enclosure", `/layout/enclosures/${id}`, id);
  for (const id in layout.pinned) if (!hasEnclosure(id)) unknown("unknown-enclosure", `/layout/pinned/${id}`, id);
  for (const id in layout.cables)
    if (!states.some(({ cables }) => id in cables)) unknown("unknown-cable", `/layout/cables/${id}`, id);
  for (const id in layout.rooms) if (!(id in rooms)) unknown("unknown-room", `/layout/rooms/${id}`, id);
  for (const { id, enclosure } of Object.values(attachments))
    if (enclosure !== undefined && !hasEnclosure(enclosure))
      unknown("unknown-enclosure", `/attachments/${id}/enclosure`, enclosure);
}

function checkSplices({ asFound, proposed, layout }: Project, problems: Problem[]): void {
  const splices = new Set<string>();
  for (const { enclosures } of proposed === undefined ? [asFound] : [asFound, proposed])
    for (const enclosure of Object.values(enclosures)) for (const id in enclosure.splices) splices.add(id);
  for (const id in layout.splices)
    if (!splices.has(id)) problems.push(belongsToNone("unknown-splice", `/layout/splices/${id}`, id));
}

const belongsToNone = (code: string, path: string, id: string): Problem => problem(code, path, wording.belongsTo(id));

function* everyDevice(installation: Installation): Generator<readonly [box: string, device: Device]> {
  for (const [box, enclosure] of Object.entries(installation.enclosures))
    for (const device of Object.values(enclosure.devices)) yield [box, device];
}

/** Circles of a relation in which each names at most one other; each circle once, from its least member. */
function ringsOf(next: ReadonlyMap<string, string>): readonly (readonly string[])[] {
  const rings: string[][] = [];
  const settled = new Set<string>();
  for (const start of next.keys()) {
    const trail: string[] = [];
    const onTrail = new Map<string, number>();
    let walk: string | undefined = start;
    while (walk !== undefined && !settled.has(walk) && !onTrail.has(walk)) {
      onTrail.set(walk, trail.length);
      trail.push(walk);
      walk = next.get(walk);
    }
    const back = walk === undefined ? undefined : onTrail.get(walk);
    if (back !== undefined) rings.push(trail.slice(back));
    for (const each of trail) settled.add(each);
  }
  return rings;
}
