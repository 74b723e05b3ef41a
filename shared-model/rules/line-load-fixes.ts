import type { CommandCall } from "../answers/command-call.ts";
import type { Fix } from "../answers/finding.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { EndKey, SpliceId, TerminalName } from "../model/ids.ts";
import type { StateName } from "../model/project.ts";
import { farEnd, findEndFacts, nameOfEnd } from "../queries/end-facts.ts";
import { landedAt } from "../queries/landings.ts";
import { findTerminal } from "../queries/terminals-of.ts";
import type { PathStep, Section } from "../solver/section.ts";
import { fixTogether } from "./fix-parts.ts";
import { isCure } from "./fix-trial.ts";
import { MakeUpPlan } from "./make-up-plan.ts";
import { enclosuresOfStep, nameOfSide } from "./path-words.ts";
import { type LineLoadDevice, nameOfStep, neutralOf } from "./section-parts.ts";

const wording = catalogue({
  moveToSplice: (name: Part, splice: Part) => `Move ${name} to splice ${splice}`,
  and: " and ",
  exchange: (device: Part) => `Exchange the conductors of LINE and LOAD at ${device}`,
  exchangeHot: (device: Part) => `Exchange the hot conductors of LINE and LOAD at ${device}`,
  exchangeNeutral: (device: Part) => `Exchange the neutral conductors of LINE and LOAD at ${device}`,
  hot: "hot",
  moveTo: (name: Part, side: Part, pole: Part, device: Part) => `Move ${name} to the ${side} ${pole} of ${device}`,
  moveToLine: (poles: Part, device: Part) => `Move what is on the LOAD ${poles} of ${device} to LINE`,
  neutral: "neutral",
  remove: (jumper: Part, from: Part, to: Part) => `Remove ${jumper} between ${from} and ${to}`,
});

export type Pole = "hot" | "neutral";
export type DeviceSide = "LINE" | "LOAD";

const POLES: Readonly<Record<Pole, string>> = { hot: wording.hot, neutral: wording.neutral };

const EXCHANGE: Readonly<Record<Pole, (device: string) => string>> = {
  hot: wording.exchangeHot,
  neutral: wording.exchangeNeutral,
};

/** Every end on LINE goes to LOAD and the other way round, hole by hole, for some of the poles. */
export function exchangeFix(
  section: Section,
  { device, enclosure }: LineLoadDevice,
  poles: readonly Pole[],
  state: StateName,
): Fix | undefined {
  const calls: CommandCall[] = [];
  for (const pole of poles) {
    const line = terminalOf(device, "LINE", pole);
    const load = terminalOf(device, "LOAD", pole);
    if (line === undefined || load === undefined) return undefined;
    for (const [from, to] of [
      [line, load],
      [load, line],
    ] as const)
      for (const { end, hole } of landedAt(enclosure, device.id, from)) {
        const at = { kind: "terminal", device: device.id, terminal: to, hole };
        calls.push({ command: "land-end", args: { state, enclosure: enclosure.id, end, at } });
      }
  }
  if (calls.length === 0) return undefined;
  const isExchange = poles.some((pole) => {
    const line = terminalOf(device, "LINE", pole);
    return line !== undefined && landedAt(enclosure, device.id, line).length > 0;
  });
  const title = isExchange
    ? (poles.length > 1 ? wording.exchange : EXCHANGE[poles[0] ?? "hot"])(device.name)
    : wording.moveToLine(poles.map((pole) => POLES[pole]).join(wording.and), device.name);
  return cured(section, fixTogether(title, calls));
}

/** An end in the box of a device, brought to one pole of one of its sides. */
export function bringFix(
  section: Section,
  { device, enclosure }: LineLoadDevice,
  end: EndKey,
  side: DeviceSide,
  pole: Pole,
  state: StateName,
): Fix | undefined {
  // A ground wire that carries current is to be replaced, not moved.
  if (findEndFacts(section.installation, enclosure, end)?.grounding !== false) return undefined;
  const plan = new MakeUpPlan(section.installation, enclosure, state);
  if (!bring(plan, enclosure, device, end, side, pole)) return undefined;
  const name = nameOfEnd(section.installation, enclosure, end);
  const fix = plan.fix((words) => titled(wording.moveTo(name, side, POLES[pole], device.name), words));
  return fix === undefined ? undefined : cured(section, fix);
}

/** Adds to a plan that an end comes to one pole of one side: into the splice that it is pigtailed to, or onto it. */
export function bring(
  plan: MakeUpPlan,
  enclosure: Enclosure,
  device: Device,
  end: EndKey,
  side: DeviceSide,
  pole: Pole,
): boolean {
  const name = terminalOf(device, side, pole);
  const terminal = name === undefined ? undefined : findTerminal(device, name);
  if (name === undefined || terminal === undefined) return false;
  const landed = landedAt(enclosure, device.id, name);
  for (const { end: onTerminal } of landed) {
    const there = enclosure.places[farEnd(onTerminal)]?.at;
    if (there?.kind !== "splice") continue;
    plan.join(end, there.splice);
    return true;
  }
  const taken = new Set(landed.map(({ hole }) => hole));
  for (let hole = 1; hole <= terminal.holes; hole += 1) {
    if (taken.has(hole)) continue;
    plan.land(end, { kind: "terminal", device: device.id, terminal: name, hole });
    return true;
  }
  plan.join(end, plan.pigtail(device.id, name));
  return true;
}

/** Parts the neutrals of LINE and LOAD where one piece alone joins them: by moving its end, or by taking a jumper out. */
export function partNeutralsFix(section: Section, found: LineLoadDevice, state: StateName): Fix | undefined {
  const [only, ...more] = section.neutralsAround(found.device.id).map(({ by }) => by);
  if (only === undefined || more.length > 0) return undefined;
  for (const fix of waysToPart(section, found, only, state)) if (fix !== undefined && isCure(section, fix)) return fix;
  return undefined;
}

function* waysToPart(
  section: Section,
  found: LineLoadDevice,
  by: PathStep,
  state: StateName,
): Generator<Fix | undefined> {
  const { device, enclosure } = found;
  if (by.kind === "device") return;
  const home = enclosuresOfStep(by);
  const ends = [by.from, by.to].filter((_, side) => home[side] === enclosure.id);
  for (const end of ends) {
    const at = enclosure.places[end]?.at;
    if (at?.kind === "terminal" && at.device === device.id) continue;
    const other = by.kind === "jumper" ? enclosure.places[farEnd(end)]?.at : undefined;
    for (const splice of neutralsBehind(section, found))
      if (other?.kind === "splice" && other.splice === splice) continue;
      else if (at?.kind !== "splice" || at.splice !== splice) {
        const plan = new MakeUpPlan(section.installation, enclosure, state).join(end, splice);
        const [name, to] = [nameOfEnd(section.installation, enclosure, end), enclosure.splices[splice]?.name ?? splice];
        yield plan.fix((words) => titled(wording.moveToSplice(name, to), words));
      }
  }
  if (by.kind !== "jumper") return;
  const box = section.installation.enclosures[by.enclosure];
  // A neutral that comes by the grounds is another fault: those stay.
  if (box === undefined || findEndFacts(section.installation, box, by.from)?.grounding !== false) return;
  const plan = new MakeUpPlan(section.installation, box, state).remove(by.jumper);
  yield plan.fix((words) =>
    titled(
      wording.remove(nameOfStep(section, by), nameOfSide(section, by, "from"), nameOfSide(section, by, "to")),
      words,
    ),
  );
}

/** Splices in the box of a device that hold the neutral of an outlet behind it. */
function neutralsBehind(section: Section, { device, enclosure, open }: LineLoadDevice): readonly SpliceId[] {
  const behind = section
    .outlets()
    .filter(
      ({ outlet, live }) =>
        live && outlet.device.id !== device.id && !open.isLive({ device: outlet.device.id, node: outlet.hot }),
    );
  return Object.values(enclosure.splices)
    .filter(({ id }) => behind.some((standing) => open.areJoined({ splice: id }, neutralOf(standing))))
    .map(({ id }) => id)
    .sort();
}

/** The terminal of a device for one pole of one side. */
export function terminalOf(device: Device, side: DeviceSide, pole: Pole): TerminalName | undefined {
  const sensing = getDeviceType(device.type).sensing;
  const nodes = side === "LINE" ? sensing?.line : sensing?.load;
  const node = pole === "hot" ? nodes?.hot[0] : nodes?.neutral;
  return node === undefined || node.startsWith("@") ? undefined : (node as TerminalName);
}

/** The title of a step, with what becomes of the connectors where something does. */
export const titled = (title: string, connectors: string): string =>
  connectors === "" ? title : `${title}; ${connectors}`;

const cured = (section: Section, fix: Fix): Fix | undefined => (isCure(section, fix) ? fix : undefined);
