import { catalogue, type Part } from "../../lib/catalogue.ts";
import { type Problem, problem } from "../../lib/result.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { CableId, EnclosureId } from "../../model/ids.ts";
import { parseOutlet } from "../../model/ids.ts";
import type { Installation, Project } from "../../model/project.ts";
import { findDevice } from "../../queries/find-item.ts";
import { type InvariantPart, invariantProblemsIn } from "../../queries/invariants.ts";
import { findOutlet } from "../../queries/outlets-of.ts";
import { unnamed } from "../item-words.ts";
import { sentenceOf } from "./sentence-of.ts";
import type { Write } from "./writing.ts";

const wording = catalogue({
  bond: (box: Part) => `Proposed uses the bond point of ${box}, which a nonmetallic box has not.`,
  bothSides: (cable: Part, box: Part) => `In proposed, both sides of ${cable} would be in ${box}.`,
  decided: (device: Part) => `In proposed, what was decided for ${device} would be about an outlet that is not there.`,
  intent: (box: Part, cable: Part) =>
    `Proposed says what ${box} is meant to do with ${cable}, which would not enter it.`,
  load: (load: Part) => `In proposed, ${load} would be plugged into an outlet that is not there.`,
  oneBox: "one box",
  outside: (cable: Part) => `In proposed, neither side of ${cable} would be in a box.`,
  passes: (cable: Part, box: Part) => `In proposed, ${cable} would end in ${box} and run through it too.`,
  space: (breaker: Part, space: Part, panel: Part) =>
    `In proposed, ${breaker} is in space ${space}, which ${panel} would not have.`,
  tie: (breaker: Part, panel: Part) => `In proposed, ${breaker} would be tied to a breaker that is not in ${panel}.`,
});

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
      say("no-metal-to-bond", "material", wording.bond(name));
  for (const device of Object.values(enclosure.devices)) {
    if (device.tiedTo !== undefined && !(device.tiedTo in enclosure.devices))
      say("tied-to-nothing", device.id, wording.tie(device.name, name));
    if (enclosure.kind === "panel" && device.slot !== undefined && device.slot > enclosure.spaces)
      say("no-such-space", device.id, wording.space(device.name, device.slot, name));
  }
  for (const pass of Object.values(enclosure.passThroughs)) {
    const cable = installation.cables[pass.cable];
    if (cable === undefined) continue;
    if ([cable.sides.a, cable.sides.b].some((side) => "enclosure" in side && side.enclosure === enclosure.id))
      say("ends-and-passes", pass.id, wording.passes(cable.name, name));
  }
  const intent = installation.intent.boxes[enclosure.id];
  for (const id of [intent?.supply ?? [], Object.keys(intent?.protect ?? {})].flat() as CableId[]) {
    const cable = installation.cables[id];
    const enters = Object.values(cable?.sides ?? {}).some(
      (side) => "enclosure" in side && side.enclosure === enclosure.id,
    );
    if (cable !== undefined && !enters) say("intent-elsewhere", id, wording.intent(name, cable.name));
  }
}

function unsoundCable(installation: Installation, id: CableId, found: Problem[]): void {
  const cable = installation.cables[id];
  if (cable === undefined) return;
  const { a, b } = cable.sides;
  const at = `/proposed/cables/${id}/sides`;
  if ("outside" in a && "outside" in b) found.push(problem("both-sides-outside", at, wording.outside(cable.name)));
  else if ("enclosure" in a && "enclosure" in b && a.enclosure === b.enclosure) {
    const name = installation.enclosures[a.enclosure]?.name ?? wording.oneBox;
    found.push(problem("same-enclosure", at, wording.bothSides(cable.name, name)));
  }
}

/** What is plugged in or wished for is about an outlet as the device has it now. */
function unsoundOutlets(installation: Installation, part: InvariantPart, found: Problem[]): void {
  const { loads, intent } = installation;
  for (const load of Object.values(loads))
    if (!hasOutlet(installation, part, load.plug)) {
      const message = wording.load(load.name);
      found.push(problem("no-outlet", `/proposed/loads/${load.id}/plug`, message));
    }
  for (const key of Object.keys(intent.outlets) as (keyof typeof intent.outlets)[])
    if (!hasOutlet(installation, part, key)) {
      const name = findDevice(installation, parseOutlet(key).device)?.device.name ?? unnamed.device;
      const message = wording.decided(name);
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
