import type {
  DeviceHereAnswer,
  FitAlternative,
  FitAnswer,
  FitAsk,
  FitQuestion,
  MadeOrNot,
  MakeUpAnswer,
  MakeUpAsk,
  OtherDevice,
} from "../answers/make-up.ts";
import type { MakeUpIntent } from "../answers/make-up-intent.ts";
import { findDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Device } from "../model/device.ts";
import type { Box } from "../model/enclosure.ts";
import type { CableId, DeviceId } from "../model/ids.ts";
import type { Project } from "../model/project.ts";
import { cablesInto } from "../queries/cables-into.ts";
import { findDevice } from "../queries/find-item.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { outletsOf } from "../queries/outlets-of.ts";
import type { Section } from "../solver/section.ts";
import { sectionOf } from "../solver/sections.ts";
import { beyondCable } from "./beyond-cable.ts";
import { aboutBox, guardTypes } from "./box-about.ts";
import { type FitProposal, type FitRequest, fitDevice, sidesAt } from "./fit-device.ts";
import type { FitSide } from "./fit-sides.ts";
import { whyUnfit } from "./fit-types.ts";
import type { MakeUpRefusal, Planned } from "./joint-group.ts";
import { madeUp, told } from "./made-up.ts";
import { makeUp } from "./make-up.ts";
import { SIDE_WORDS } from "./side-words.ts";
import { started } from "./start-proposed.ts";

const wording = catalogue({
  place: (device: Part, box: Part, outlets: Part) => `${device} in ${box}, protecting ${outlets}`,
});

const refusedAs = ({ code, message, path, findings }: MakeUpRefusal): MadeOrNot => ({
  refused: {
    code,
    message,
    ...(path !== undefined && { path }),
    ...(findings !== undefined && { findings: findings.map(told) }),
  },
});

/** What a box is, and the make-up of it, as asked for or as the drawing knows it; undefined where there is no such box. */
export function answerMakeUp(
  document: Project,
  { state, box: id, intent, ...wishes }: MakeUpAsk,
): MakeUpAnswer | undefined {
  const { project } = started(document, state);
  const box = getInstallation(project, state).enclosures[id];
  if (box?.kind !== "box") return undefined;
  const about = aboutBox(project, state, box);
  const wanted = intent ?? about.intent;
  const made = makeUp(document, state, id, wanted, wishes);
  return {
    name: box.name,
    cables: about.cables,
    devices: about.devices,
    intent: wanted,
    ...(about.supplyGuess !== undefined && { supplyGuess: about.supplyGuess }),
    rooms: (made.ok ? made.value : made.refusal).rooms ?? [],
    ...(made.ok && made.value.room !== undefined && { room: made.value.room }),
    result: made.ok ? { made: madeUp(made.value, state, made.value.before) } : refusedAs(made.refusal),
    alternatives: made.ok
      ? []
      : otherDevices(about.devices, wanted, (other) => makeUp(document, state, id, other, wishes).ok),
  };
}

/** Other devices in the place of one that was asked for: only those with which the make-up can be made. */
function otherDevices(
  devices: readonly DeviceHereAnswer[],
  wanted: MakeUpIntent,
  isMade: (intent: MakeUpIntent) => boolean,
): readonly OtherDevice[] {
  return wanted.replace.flatMap((own) => {
    const old = devices.find(({ id }) => id === own.device);
    // A blank face takes the outlet away: nobody is led to that.
    const others = old?.mayBecome.filter(({ id }) => id !== own.type && id !== "gfci-blank") ?? [];
    return others.flatMap(({ id: type, name: title }): readonly OtherDevice[] => {
      const replace = wanted.replace.map((one) => (one === own ? { ...own, type } : one));
      return old !== undefined && isMade({ ...wanted, replace })
        ? [{ device: own.device, name: old.name, type, title }]
        : [];
    });
  });
}

/** So many other places are tried where a device cannot be fitted: each is a whole make-up. */
const MOST_PLACES = 4;

/**
 * The questions of fitting a ground-fault device, and what came of the answers; undefined where there is no such outlet.
 * Where it is refused, what else would do has been tried.
 */
export function answerFit(document: Project, ask: FitAsk): FitAnswer | undefined {
  const { project } = started(document, "proposed");
  const installation = getInstallation(project, "proposed");
  const found = findDevice(installation, ask.outlet.split("/")[0] as DeviceId);
  if (found === undefined || found.enclosure.kind !== "box") return undefined;
  const { device, enclosure: box } = found;
  const section = sectionOf(installation, box.id);
  if (section === undefined) throw new Error("A box is in a section.");
  const decided = new Map(ask.decided ?? []);
  const request: FitRequest = {
    outlet: ask.outlet,
    decided,
    ...(ask.type !== undefined && { type: ask.type }),
    ...(ask.room !== undefined && { room: ask.room }),
    ...(ask.left !== undefined && { leftOnLine: ask.left }),
  };
  const unfit = whyUnfit(device, box.kind);
  const asked = unfit === undefined ? sidesAt(project, section, box as Box, device, decided) : undefined;
  const fitted: Planned<FitProposal> = fitDevice(document, request);
  const types = unfit === undefined ? guardTypes(project, box as Box, device) : [];
  const notOffered = fitted.ok ? fitted.value.notOffered : [];
  const room = fitted.ok ? fitted.value.room : undefined;
  const type = fitted.ok ? fitted.value.device.type : ask.type;
  return {
    old: { id: device.id, name: device.name },
    box: { id: box.id, name: box.name },
    questions: asked?.ok
      ? asked.value.sides.filter(({ isSupply }) => !isSupply).map((side) => questionOf(section, box as Box, side))
      : [],
    types,
    ...(type !== undefined && { type }),
    notOffered: notOffered.map((one) => ({ ...one, title: findDeviceType(one.type)?.title ?? one.type })),
    rooms: (fitted.ok ? fitted.value : fitted.refusal).rooms ?? [],
    ...(room !== undefined && { room }),
    result: fitted.ok ? { made: madeUp(fitted.value, "proposed", fitted.value.box) } : refusedAs(fitted.refusal),
    alternatives: fitted.ok ? [] : alternatives(document, section, device, types, ask, fitted.refusal),
  };
}

function questionOf(section: Section, box: Box, side: FitSide): FitQuestion {
  const { installation } = section;
  const into = cablesInto(installation.cables, box.id).filter(({ cable }) => side.cables.includes(cable.id));
  // Behind another device of the box nothing runs by a cable of its own: what the walk found is all that is known.
  const boxes = new Set(into.flatMap((one) => beyondCable(installation, one).boxes.map(({ id }) => id)));
  const names = section
    .outlets()
    .filter(
      ({ outlet, enclosure }) => boxes.has(enclosure.id) || side.outlets.some((one) => one.outlet.key === outlet.key),
    )
    .map(({ outlet }) => outlet.name);
  return {
    cables: side.cables.map((id: CableId) => ({ id, name: installation.cables[id]?.name ?? id })),
    others: side.terminals.map((item) => {
      const [device = "", terminal = ""] = item.split(".");
      return `${box.devices[device as DeviceId]?.name ?? device} ${terminal}`;
    }),
    feeds: names,
    side: side.side,
    why: side.why,
    fixed: side.fixed,
    wanting: side.wanting.map(({ standing, by }) => SIDE_WORDS.by(standing.outlet.name, by)),
  };
}

/** Other types at the same place, then other receptacles of the circuit, nearest to the panel first: only what was tried. */
function alternatives(
  document: Project,
  section: Section,
  device: Device,
  types: readonly { readonly id: string; readonly name: string }[],
  ask: FitAsk,
  { code }: MakeUpRefusal,
): readonly FitAlternative[] {
  if (code === "protected-already" || code === "is-one-already") return [];
  const others = types.filter(({ id }) => id !== ask.type && id !== "gfci-blank");
  const byType = others.flatMap(({ id, name }): readonly FitAlternative[] =>
    ask.type !== undefined &&
    fitDevice(document, { outlet: ask.outlet, type: id, decided: new Map(ask.decided ?? []) }).ok
      ? [{ kind: "type", type: id, title: name }]
      : [],
  );
  const places: FitAlternative[] = [];
  let tried = 0;
  for (const { outlet, enclosure, live } of upstreamFirst(section)) {
    const { device: other } = outlet;
    if (other.id === device.id || !live || whyUnfit(other, enclosure.kind) !== undefined) continue;
    if (tried++ >= MOST_PLACES) break;
    const key = outletsOf(other)[0]?.key ?? outlet.key;
    const done = fitDevice(document, { outlet: key });
    if (!done.ok) continue;
    const behind = done.value.protection.after.filter(({ by }) => by.includes(done.value.device.name));
    const names = behind.map(({ name }) => name).join(", ");
    places.push({ kind: "place", outlet: key, title: wording.place(other.name, enclosure.name, names) });
  }
  return [...byType, ...places];
}

const upstreamFirst = (section: Section) =>
  [...section.outlets()]
    .filter(({ outlet }) => outlet.receptacle)
    .map((standing) => ({
      standing,
      far:
        section.wayFrom("ungrounded", { device: standing.outlet.device.id, node: standing.outlet.hot })?.length ??
        Number.POSITIVE_INFINITY,
    }))
    .sort((a, b) => a.far - b.far)
    .map(({ standing }) => standing);
