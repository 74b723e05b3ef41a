import type { CommandCall } from "../answers/command-call.ts";
import { runCommand } from "../commands/run-command.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import { LONGEST_TITLE, shorten } from "../lib/shorten.ts";
import type { Box, Enclosure } from "../model/enclosure.ts";
import type { DeviceId, EndKey, OutletKey } from "../model/ids.ts";
import type { Project, StateName } from "../model/project.ts";
import { severityRank } from "../model/severity.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { ungroundedReceptacles } from "../rules/no-ground.ts";
import { labelCalls, missingLabels } from "../rules/no-ground-labels.ts";
import { takesGroundPin } from "../rules/receptacle-kinds.ts";
import { sectionProof } from "../solver/circuit/section-proof.ts";
import { sectionOf } from "../solver/sections.ts";
import { boxNets, pointKey } from "./box-nets.ts";
import { type Judged, judge, type Replacements } from "./introduced.ts";
import { type JointGroup, type Planned, planned, refused } from "./joint-group.ts";

const wording = catalogue({
  bringsDanger: (message: Part, more: Part) => `It would bring a danger: ${message}${more}`,
  bringsViolation: (message: Part, more: Part) => `It would bring a violation: ${message}${more}`,
  more: (count: Part) => ` And ${count} more at danger or violation.`,
  notApart: (box: Part) =>
    `Something in ${box} joins what is to be apart, or is on a terminal that is to be free. Mend that first: what the drawing finds there tells what it is.`,
  notProved: (outlets: Part, box: Part) =>
    `${outlets} would hang on LOAD and not be proved protected: something beyond ${box} is wired otherwise. Prove the circuit first, or leave the cable on LINE.`,
  tooMuch: (count: Part, most: Part) =>
    `It would take ${count} steps, and one change holds ${most}. Make the box up in parts.`,
});

/** A make-up that was tried on a copy: one step, what the document is then, and what rules and proof say. */
export interface TriedMakeUp {
  readonly call: CommandCall;
  readonly project: Project;
  readonly judged: Judged;
}

interface ToTry {
  readonly project: Project;
  readonly state: StateName;
  readonly box: Box;
  readonly title: string;
  readonly calls: readonly CommandCall[];
  readonly groups: readonly JointGroup[];
  readonly replaced: Replacements;
  /** The ground-fault device that was put in or wired, whose outlets may need labels. */
  readonly guard: DeviceId | undefined;
  /** Outlets that must be proved protected then, whatever the rules ask. */
  readonly mustProtect: (after: Project) => readonly OutletKey[];
}

const MOST_CALLS = 200;

/**
 * Runs a make-up on a copy and judges it: the nets of the box are the groups, what is to be protected is proved to be, and
 * no danger or violation is there that was not. Otherwise it is refused with the reason.
 */
export function tryMakeUp(toTry: ToTry): Planned<TriedMakeUp> {
  const { project, state, box, title, groups, replaced, mustProtect } = toTry;
  const bare = run(project, title, toTry.calls);
  if (!bare.ok) return bare;
  const labels = labelsFor(bare.value, toTry);
  const calls = [...toTry.calls, ...labels];
  const done = labels.length === 0 ? bare : run(project, title, calls);
  if (!done.ok) return done;
  const after = done.value;
  const enclosure = getInstallation(after, state).enclosures[box.id];
  if (enclosure === undefined) throw new Error("A make-up takes no box away.");
  if (!netsAreGroups(enclosure, groups)) return refused("not-apart", wording.notApart(box.name));
  const judged = judge(project, after, state, box.id, replaced);
  const [worst, ...others] = [...judged.introduces].sort((a, b) => severityRank(a.severity) - severityRank(b.severity));
  if (worst !== undefined) {
    const more = others.length === 0 ? "" : wording.more(others.length);
    const brings = worst.severity === "danger" ? wording.bringsDanger : wording.bringsViolation;
    const message = brings(worst.message, more);
    return { ok: false, refusal: { code: "introduces", message, findings: [worst, ...others] } };
  }
  const open = unprotectedOf(after, state, box, mustProtect(after));
  if (open.length > 0) return refused("not-proved", wording.notProved(open.join(", "), box.name));
  const call: CommandCall = { command: "run-together", args: { title: shorten(title, LONGEST_TITLE), calls } };
  return planned({ call, project: after, judged });
}

function run(project: Project, title: string, calls: readonly CommandCall[]): Planned<Project> {
  if (calls.length === 0) return planned(project);
  if (calls.length > MOST_CALLS) return refused("too-much", wording.tooMuch(calls.length, MOST_CALLS));
  const done = runCommand(project, { command: "run-together", args: { title: shorten(title, LONGEST_TITLE), calls } });
  if (!done.ok) return refused("refused", done.refusal.message);
  return planned(done.project);
}

/** Whether each group is one net with nothing else in it; jumpers and splices are how. */
export function netsAreGroups(enclosure: Enclosure, groups: readonly JointGroup[]): boolean {
  const nets = boxNets(enclosure);
  return groups.every(({ ends, ports, role }) => {
    if (ends.length === 0 && (ports.length < 2 || role === "ground")) return true;
    const points = ends.map((end) => {
      const at = enclosure.places[end]?.at;
      return at === undefined ? undefined : pointKey(at);
    });
    const [first] = ends.length > 0 ? points : ports.map((port) => portPoint(nets, port));
    if (first === undefined) return ends.length === 1 && ports.length === 0;
    const net = nets.get(first);
    if (net === undefined || !points.every((point) => point !== undefined && nets.get(point) === net)) return false;
    const wanted = new Set<EndKey>(ends);
    if (net.ends.length !== wanted.size || !net.ends.every((end) => wanted.has(end))) return false;
    if (!ports.every((port) => nets.get(portPoint(nets, port, net) ?? "") === net)) return false;
    const atPort = net.terminals.every((one) =>
      ports.some(
        (port) => port.kind === "terminal" && port.device === one.device && port.terminals.includes(one.terminal),
      ),
    );
    return atPort && (!net.bond || ports.some(({ kind }) => kind === "bond"));
  });
}

/** The point of a port that has something on it, in a net where it may. */
function portPoint(
  nets: ReturnType<typeof boxNets>,
  port: JointGroup["ports"][number],
  net?: unknown,
): string | undefined {
  const points = port.kind === "bond" ? ["b"] : port.terminals.map((name) => `t ${port.device}.${name}`);
  return points.find((point) => nets.has(point) && (net === undefined || nets.get(point) === net));
}

function unprotectedOf(after: Project, state: StateName, box: Box, must: readonly OutletKey[]): readonly string[] {
  const section = must.length === 0 ? undefined : sectionOf(getInstallation(after, state), box.id);
  if (section === undefined) return [];
  const keys = new Set(must);
  return sectionProof(section)
    .outlets.filter(
      ({ standing, protectedBy }) => keys.has(standing.outlet.key) && standing.live && protectedBy.length === 0,
    )
    .map(({ standing }) => standing.outlet.name);
}

/** The words that receptacles without a ground need once a ground-fault device protects them. */
function labelsFor(after: Project, { state, box, guard }: ToTry): readonly CommandCall[] {
  if (guard === undefined) return [];
  const installation = getInstallation(after, state);
  const section = sectionOf(installation, box.id);
  if (section === undefined) return [];
  const behind = new Set(
    sectionProof(section)
      .outlets.filter(({ protectedBy }) => protectedBy.includes(guard))
      .map(({ standing }) => standing.outlet.device.id),
  );
  const missing = ungroundedReceptacles(section)
    .filter(({ neverHad, device }) => neverHad && behind.has(device.id))
    .filter(({ device }) => device.id === guard || takesGroundPin(device))
    .map(({ device: { id }, box: { id: at } }) => [id, missingLabels(installation, id, at, id === guard)] as const);
  return labelCalls(installation, missing, state);
}
