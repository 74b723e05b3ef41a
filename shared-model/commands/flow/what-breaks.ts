import { type Problem, problem } from "../../lib/result.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { CableId, EnclosureId } from "../../model/ids.ts";
import { parseOutlet } from "../../model/ids.ts";
import type { Installation, Project } from "../../model/project.ts";
import { findDevice } from "../../queries/find-item.ts";
import { type InvariantPart, invariantProblemsIn } from "../../queries/invariants.ts";
import { findOutlet } from "../../queries/outlets-of.ts";
import { sentenceOf } from "./sentence-of.ts";
import type { Write } from "./writing.ts";

/**
 * What some writes would break in proposed, as a sentence: an invariant, or what every command keeps true besides.
 * `project` has the writes in its proposed state, `theirs` is that state without them. What was wrong before does not
 * count. Looks only at what the writes touch.
 */
export function whatBreaks(
  project: Project & { readonly proposed: Installation },
  theirs: Installation,
  writes: readonly Write[],
): string | undefined {
  const part = partOf(project.proposed, theirs, writes);
  const broken = problemsIn(project, part);
  if (broken.length === 0) return undefined;
  const before = new Set(problemsIn({ ...project, proposed: theirs }, part).map(keyOf));
  // The first by its place in the document: keys of a table come in another order after opening.
  const [first] = broken
    .filter((one) => !before.has(keyOf(one)))
    .sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0));
  return first === undefined ? undefined : sentenceOf(first, [project.proposed, theirs, project.asFound]);
}

const keyOf = ({ code, path }: Problem): string => `${code} ${path}`;

type Proposed = Project & { readonly proposed: Installation };

const problemsIn = (project: Proposed, part: InvariantPart): readonly Problem[] => [
  ...invariantProblemsIn(project, "proposed", part),
  ...unsound(project.proposed, part),
];

const WITH_OWN_IDS: ReadonlySet<string> = new Set(["devices", "splices", "jumpers"]);

function partOf(now: Installation, theirs: Installation, writes: readonly Write[]): InvariantPart {
  const enclosures = new Set<EnclosureId>();
  const cables = new Set<CableId>();
  const newIds = new Set<string>();
  let references = false;
  for (const { path, value } of writes) {
    const [table, key = "", inner, id = ""] = path;
    if (table === "enclosures") enclosures.add(key as EnclosureId);
    else if (table === "cables") cables.add(key as CableId);
    else {
      references = true;
      if (table === "intent" && key === "boxes" && inner !== undefined) enclosures.add(inner as EnclosureId);
    }
    const whole = path.length === 2 && (table === "enclosures" || table === "cables");
    const part = path.length === 4 && table === "enclosures" && inner !== undefined && WITH_OWN_IDS.has(inner);
    if (value === undefined) references ||= whole || (part && inner === "devices");
    else if (whole) for (const one of idsOf(key, value)) newIds.add(one);
    else if (part) newIds.add(id);
  }
  for (const id of cables)
    for (const installation of [now, theirs])
      for (const side of Object.values(installation.cables[id]?.sides ?? {}))
        if ("enclosure" in side) enclosures.add(side.enclosure);
  return { enclosures, cables, newIds, references };
}

const idsOf = (id: string, thing: unknown): readonly string[] => {
  const { devices = {}, splices = {}, jumpers = {} } = thing as Partial<Enclosure>;
  return [id, ...[devices, splices, jumpers].flatMap((table) => Object.keys(table))];
};

/** What no command lets happen, though a drawing could bear it. Each message is the sentence for a person. */
function unsound(installation: Installation, part: InvariantPart): readonly Problem[] {
  const found: Problem[] = [];
  for (const id of part.enclosures) {
    const enclosure = installation.enclosures[id];
    if (enclosure !== undefined) unsoundEnclosure(installation, enclosure, found);
  }
  for (const id of part.cables) unsoundCable(installation, id, found);
  if (part.references || part.enclosures.size > 0) unsoundOutlets(installation, part, found);
  return found;
}

function unsoundEnclosure(installation: Installation, enclosure: Enclosure, found: Problem[]): void {
  const at = `/proposed/enclosures/${enclosure.id}`;
  const { name } = enclosure;
  const say = (code: string, path: string, message: string): void => {
    found.push(problem(code, `${at}/${path}`, message));
  };
  if (enclosure.kind === "box" && enclosure.material === "nonmetallic")
    if (Object.values(enclosure.places).some((place) => place.at.kind === "bond"))
      say("no-metal-to-bond", "material", `Proposed uses the bond point of ${name}, which a nonmetallic box has not.`);
  for (const device of Object.values(enclosure.devices)) {
    if (device.tiedTo !== undefined && !(device.tiedTo in enclosure.devices))
      say(
        "tied-to-nothing",
        device.id,
        `In proposed, ${device.name} would be tied to a breaker that is not in ${name}.`,
      );
    if (enclosure.kind === "panel" && device.slot !== undefined && device.slot > enclosure.spaces)
      say(
        "no-such-space",
        device.id,
        `In proposed, ${device.name} is in space ${device.slot}, which ${name} would not have.`,
      );
  }
  for (const pass of Object.values(enclosure.passThroughs)) {
    const cable = installation.cables[pass.cable];
    const sides = cable === undefined ? [] : [cable.sides.a, cable.sides.b];
    if (sides.some((side) => "enclosure" in side && side.enclosure === enclosure.id))
      say("ends-and-passes", pass.id, `In proposed, ${cable?.name} would end in ${name} and run through it too.`);
  }
  const intent = installation.intent.boxes[enclosure.id];
  for (const id of [intent?.supply ?? [], Object.keys(intent?.protect ?? {})].flat() as CableId[]) {
    const cable = installation.cables[id];
    const enters = Object.values(cable?.sides ?? {}).some(
      (side) => "enclosure" in side && side.enclosure === enclosure.id,
    );
    if (cable !== undefined && !enters)
      say(
        "intent-elsewhere",
        id,
        `Proposed says what ${name} is meant to do with ${cable.name}, which would not enter it.`,
      );
  }
}

function unsoundCable(installation: Installation, id: CableId, found: Problem[]): void {
  const cable = installation.cables[id];
  if (cable === undefined) return;
  const { a, b } = cable.sides;
  const at = `/proposed/cables/${id}/sides`;
  if ("outside" in a && "outside" in b)
    found.push(problem("both-sides-outside", at, `In proposed, neither side of ${cable.name} would be in a box.`));
  else if ("enclosure" in a && "enclosure" in b && a.enclosure === b.enclosure) {
    const name = installation.enclosures[a.enclosure]?.name ?? "one box";
    found.push(problem("same-enclosure", at, `In proposed, both sides of ${cable.name} would be in ${name}.`));
  }
}

/** What is plugged in or wished for is about an outlet as the device has it now. */
function unsoundOutlets(installation: Installation, part: InvariantPart, found: Problem[]): void {
  const { loads, intent } = installation;
  for (const load of Object.values(loads))
    if (!hasOutlet(installation, part, load.plug)) {
      const message = `In proposed, ${load.name} would be plugged into an outlet that is not there.`;
      found.push(problem("no-outlet", `/proposed/loads/${load.id}/plug`, message));
    }
  for (const key of Object.keys(intent.outlets) as (keyof typeof intent.outlets)[])
    if (!hasOutlet(installation, part, key)) {
      const name = findDevice(installation, parseOutlet(key).device)?.device.name ?? "a device";
      const message = `In proposed, what was decided for ${name} would be about an outlet that is not there.`;
      found.push(problem("no-outlet", `/proposed/intent/outlets/${key}`, message));
    }
}

/** True as well where nothing that bears on it changed, and where the whole device is missing, which others notice. */
function hasOutlet(installation: Installation, part: InvariantPart, key: Parameters<typeof parseOutlet>[0]): boolean {
  const { device } = parseOutlet(key);
  const enclosure = part.references
    ? findDevice(installation, device)?.enclosure
    : [...part.enclosures]
        .map((id) => installation.enclosures[id])
        .find((one) => one !== undefined && device in one.devices);
  return enclosure === undefined || findOutlet(enclosure, key) !== undefined;
}
