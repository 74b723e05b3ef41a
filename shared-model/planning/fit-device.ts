import type { CommandCall } from "../answers/command-call.ts";
import type { FillLedger } from "../answers/fill.ts";
import type { LeftOnLine, RoomWay } from "../answers/make-up.ts";
import { findDeviceType, getDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Device } from "../model/device.ts";
import type { Box } from "../model/enclosure.ts";
import type { CableId, DeviceId, EndKey, OutletKey } from "../model/ids.ts";
import type { Project } from "../model/project.ts";
import { findDevice } from "../queries/find-item.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { outletsOf } from "../queries/outlets-of.ts";
import { fillLedger } from "../rules/fill/fill-ledger.ts";
import { fillEdition } from "../rules/fill-edition.ts";
import { sectionProof } from "../solver/circuit/section-proof.ts";
import type { Section } from "../solver/section.ts";
import { sectionOf } from "../solver/sections.ts";
import { boxNets } from "./box-nets.ts";
import { cableOf, groupsOfFit } from "./fit-groups.ts";
import { roomFix } from "./fit-room.ts";
import { type Decisions, type FitSide, fitSides, type ReceptacleNets, receptacleNets, supplyOf } from "./fit-sides.ts";
import { noTypeWords, notABox, typesFor, whyUnfit } from "./fit-types.ts";
import { type MakeUpRefusal, type Planned, planned, refused, USUAL_STYLE } from "./joint-group.ts";
import type { JointPlan } from "./joint-plan.ts";
import { leftCalls } from "./left-on-line.ts";
import { asItWas, replaceDevices } from "./make-up.ts";
import { makeUpCalls } from "./make-up-calls.ts";
import { planJoints } from "./plan-joints.ts";
import { started, withFirst } from "./start-proposed.ts";
import { type TriedMakeUp, tryMakeUp } from "./try-make-up.ts";

const wording = catalogue({
  already: (device: Part, by: Part) =>
    `${device} is protected already, by ${by}. A second ground-fault device behind the first only makes it harder to tell which one tripped.`,
  fit: (device: Part, old: Part) => `Fit ${device} in place of ${old}`,
  hotGround: "hot and ground",
  hotNeutral: "hot and neutral",
  joined: (device: Part, box: Part, what: Part) =>
    `At ${device} in ${box} ${what} are joined by a splice or a jumper. Part them first: a ground-fault device there would trip at once or protect nobody.`,
  neutralGround: "neutral and ground",
  noOutlet: (outlet: Part) => `Proposed has no outlet "${outlet}".`,
  notFed: (device: Part, box: Part) =>
    `${device} is not fed with hot and neutral in ${box}, so that a ground-fault device there could not work. Mend its circuit first, or fit one where the supply comes in.`,
  notGroundFault: (type: Part, others: Part) => `"${type}" is no ground-fault receptacle of the stock. Use ${others}.`,
  or: " or ",
  unprotects: (outlets: Part) => `It would leave ${outlets} without the protection that is there now.`,
});

export interface FitRequest {
  readonly outlet: OutletKey;
  /** Device type to fit; absent: the first of those for the place that brings nothing new at danger or violation. */
  readonly type?: string;
  readonly name?: string;
  /** By cable, what a person decided; it goes before wishes and requirements. */
  readonly decided?: Decisions;
  /** Title of the way to give the box the room that it needs then; absent: the least work. */
  readonly room?: string;
  /** Cables that are left on LINE on purpose, with who decided so. */
  readonly leftOnLine?: readonly LeftOnLine[];
}

/** An outlet with what protects it, by name. */
export interface ProtectedOutlet {
  readonly key: OutletKey;
  readonly name: string;
  readonly by: readonly string[];
}

export interface FitProposal extends TriedMakeUp {
  readonly old: Device;
  readonly device: Device;
  /** The document as it was, proposed started where the fitting starts it. */
  readonly started: Project;
  /** By the id of the new device. */
  readonly replaced: ReadonlyMap<DeviceId, DeviceId>;
  readonly box: Box;
  readonly plan: JointPlan;
  readonly sides: readonly FitSide[];
  /** Words for what is done to the box itself so that it holds what is in it; absent where nothing is. */
  readonly room?: string;
  /** All ways to give it that room. */
  readonly rooms: readonly RoomWay[];
  readonly fill: { readonly before: FillLedger; readonly after: FillLedger };
  readonly protection: { readonly before: readonly ProtectedOutlet[]; readonly after: readonly ProtectedOutlet[] };
  /** Device types that were tried first, and why they are not offered. */
  readonly notOffered: readonly { readonly type: string; readonly why: string }[];
}

const STATE = "proposed";

/**
 * Puts a ground-fault device in the place of an ordinary receptacle with the fewest moves, in proposed, which is started
 * where it was not. What needs protection by the code or a wish goes to LOAD, hot and neutral together; all else stays on
 * LINE. Refused with the reason, and what would help, where that cannot be.
 */
export function fitDevice(document: Project, request: FitRequest): Planned<FitProposal> {
  const { project, first } = started(document, STATE);
  const installation = getInstallation(project, STATE);
  const id = request.outlet.split("/")[0] as DeviceId;
  const found = findDevice(installation, id);
  if (found === undefined) return refused("no-such-outlet", wording.noOutlet(request.outlet));
  const { device, enclosure: box } = found;
  const unfit = whyUnfit(device, box.kind);
  if (unfit !== undefined || box.kind !== "box") return { ok: false, refusal: unfit ?? notABox(device) };
  const section = sectionOf(installation, box.id);
  if (section === undefined) throw new Error("A box is in a section.");
  const already = sectionProof(section).of(outletsOf(device)[0]?.key ?? request.outlet)?.protectedBy ?? [];
  if (already.length > 0 && request.type === undefined)
    return refused("protected-already", wording.already(device.name, namesOf(section, already).join(", ")));
  const notOffered: { type: string; why: string }[] = [];
  let last: MakeUpRefusal | undefined;
  for (const type of request.type === undefined ? typesFor(project, box, device) : [request.type]) {
    const tried = fitType(project, section, box, device, type, request);
    if (tried.ok) {
      return planned({ ...tried.value, call: withFirst(first, tried.value.call), notOffered });
    }
    last = tried.refusal;
    notOffered.push({ type, why: tried.refusal.message });
    if (tried.refusal.code !== "introduces") break;
  }
  return { ok: false, refusal: last ?? { code: "no-type", message: noTypeWords(device) } };
}

function fitType(
  project: Project,
  section: Section,
  before: Box,
  old: Device,
  type: string,
  { name, decided, room: wantedRoom, leftOnLine = [] }: FitRequest,
): Planned<FitProposal> {
  const { sensing } = findDeviceType(type) ?? {};
  if (sensing?.class !== "personnel" || getDeviceType(type).where !== "box")
    return refused("not-ground-fault", wording.notGroundFault(type, typesFor(project, before, old).join(wording.or)));
  const asked = sidesAt(project, section, before, old, decided);
  if (!asked.ok) return asked;
  const { supply, own, sides } = asked.value;
  const joined = joinedAlready(own);
  if (joined !== undefined) return refused("joined-already", wording.joined(old.name, before.name, joined));
  const staged = replaceDevices(project, STATE, before, [
    { device: old.id, type, ...(name !== undefined && { name }) },
  ]);
  if (!staged.ok) return staged;
  const box = getInstallation(staged.value.project, STATE).enclosures[before.id] as Box;
  const [newId] = staged.value.replaced.keys();
  const device = box.devices[newId as DeviceId] as Device;
  const groups = groupsOfFit(project, section, before, old, device, own, sides, supply);
  const plan = planJoints(section.installation, asItWas(before, box), groups, [], USUAL_STYLE);
  if (!plan.ok) return plan;
  const intent = [...rememberedIntent(before, supply.hot, sides), ...leftCalls(project, STATE, before.id, leftOnLine)];
  const calls = [...staged.value.calls, ...makeUpCalls(box, STATE, plan.value), ...intent];
  const behind = sides.filter(({ side }) => side === "LOAD").flatMap(({ outlets }) => outlets);
  const attempt = (more: readonly CommandCall[]) =>
    tryMakeUp({
      project,
      state: STATE,
      box: before,
      title: wording.fit(device.name, old.name),
      calls: [...calls, ...more],
      groups,
      replaced: staged.value.replaced,
      guard: device.id,
      mustProtect: () => [...outletsOf(device).map(({ key }) => key), ...behind.map(({ outlet }) => outlet.key)],
    });
  const room = roomFix(project, STATE, before, calls, wantedRoom);
  const tried = attempt(room.calls);
  if (!tried.ok) return { ok: false, refusal: { ...tried.refusal, rooms: room.ways } };
  if (tried.value.judged.unprotects.length > 0)
    return refused("unprotects", wording.unprotects(tried.value.judged.unprotects.join(", ")));
  const after = getInstallation(tried.value.project, STATE);
  const edition = fillEdition(project);
  const boxAfter = after.enclosures[before.id] ?? box;
  return planned({
    ...tried.value,
    old,
    device,
    started: project,
    replaced: staged.value.replaced,
    box: before,
    plan: plan.value,
    sides,
    ...(room.words !== undefined && { room: room.words }),
    rooms: room.ways,
    fill: {
      before: fillLedger(section.installation, before, edition),
      after: fillLedger(after, boxAfter, edition),
    },
    protection: { before: protectionOf(section), after: protectionOf(sectionOf(after, before.id) ?? section) },
    notOffered: [],
  });
}

interface SidesAt {
  readonly supply: NonNullable<ReturnType<typeof supplyOf>>;
  readonly own: ReceptacleNets;
  readonly sides: readonly FitSide[];
}

/** What hangs on the joint of a receptacle, and which side each part goes to; refused where nothing feeds it. */
export function sidesAt(
  project: Project,
  section: Section,
  box: Box,
  device: Device,
  decided: Decisions | undefined,
): Planned<SidesAt> {
  const supply = supplyOf(section, box, device);
  if (supply === undefined) return refused("not-fed", wording.notFed(device.name, box.name));
  const own = receptacleNets(box, device, boxNets(box));
  const protect = section.installation.intent.boxes[box.id]?.protect ?? {};
  const remembered = Object.entries(protect) as [CableId, boolean][];
  const sides = fitSides({
    project,
    section,
    box,
    device,
    nets: own,
    supply,
    decided: new Map([...remembered, ...(decided ?? [])]),
  });
  return planned({ supply, own, sides });
}

/** Which two of hot, neutral and ground are one net in the box, in words; undefined where all are apart. */
function joinedAlready({ hot, neutral, ground }: ReceptacleNets): string | undefined {
  if (hot.some((net) => neutral.includes(net))) return wording.hotNeutral;
  if (neutral.some((net) => ground.includes(net))) return wording.neutralGround;
  return hot.some((net) => ground.includes(net)) ? wording.hotGround : undefined;
}

/** What was decided is kept with the box, so that nobody asks again. */
function rememberedIntent(box: Box, supply: EndKey, sides: readonly FitSide[]): readonly CommandCall[] {
  const cable = cableOf(supply);
  const protect = Object.fromEntries(
    sides.flatMap(({ cables, side }) => cables.filter((id) => id !== cable).map((id) => [id, side === "LOAD"])),
  );
  const intent = { ...(cable !== undefined && { supply: cable }), ...(Object.keys(protect).length > 0 && { protect }) };
  return [{ command: "set-box-intent", args: { state: STATE, enclosure: box.id, intent } }];
}

/** What protects each outlet of a section, by name. */
export function protectionOf(section: Section): readonly ProtectedOutlet[] {
  return sectionProof(section).outlets.map(({ standing: { outlet }, protectedBy }) => ({
    key: outlet.key,
    name: outlet.name,
    by: namesOf(section, protectedBy),
  }));
}

function namesOf(section: Section, devices: readonly DeviceId[]): readonly string[] {
  const known = new Map(section.sensingDevices().map(({ device }) => [device.id, device.name]));
  return devices.map((id) => known.get(id) ?? id);
}
