import type { Fix } from "../answers/finding.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { type DeviceId, type EndKey, parseEnd } from "../model/ids.ts";
import type { Installation, StateName } from "../model/project.ts";
import { farEnd, findEndFacts, nameOfEnd } from "../queries/end-facts.ts";
import { landedAt } from "../queries/landings.ts";
import type { Section, Spot } from "../solver/section.ts";
import { isHarmless, sectionsAfter } from "./fix-trial.ts";
import { bring, type DeviceSide, type Pole, terminalOf, titled } from "./line-load-fixes.ts";
import { MakeUpPlan } from "./make-up-plan.ts";
import { listed } from "./rule-parts.ts";
import { type LineLoadDevice, lastCableStep, lineLoadDevices } from "./section-parts.ts";

const wording = catalogue({
  bring: (ends: Part, device: Part) => `Bring ${ends} from the LINE side of ${device}`,
});

/**
 * What hangs behind a device brought to its LINE, by the ends that lead from its box to a hot and a neutral. Undefined
 * where that cannot be done there, or where something else would then be wrong: an outlet without its protection, say.
 */
export function toLineFix(
  section: Section,
  id: DeviceId,
  [hot, neutral]: readonly [hot: Spot, neutral: Spot],
  state: StateName,
): Fix | undefined {
  const found = lineLoadDevices(section).find(({ device }) => device.id === id);
  if (found === undefined) return undefined;
  const { device, enclosure } = found;
  const hotEnd = endTowards(section, found, "ungrounded", hot);
  const neutralEnd = endTowards(section, found, "grounded", neutral);
  if (hotEnd === undefined || neutralEnd === undefined) return undefined;
  const plan = new MakeUpPlan(section.installation, enclosure, state);
  if (!bring(plan, enclosure, device, hotEnd, "LINE", "hot")) return undefined;
  if (!bring(plan, enclosure, device, neutralEnd, "LINE", "neutral")) return undefined;
  const what = namesOfEnds(section.installation, enclosure, [hotEnd, neutralEnd]);
  const fix = plan.fix((words) => titled(wording.bring(what, device.name), words));
  if (fix === undefined || !isHarmless(section, fix)) return undefined;
  const after = sectionsAfter(section, fix).find((one) => one.enclosureOf(id) !== undefined);
  return after?.sensorCut(id).isLive(hot) === true ? fix : undefined;
}

/** The end by which a conductor leaves the box of a device for a spot; inside that box, of the last jumper on the way. */
function endTowards(
  section: Section,
  { enclosure }: LineLoadDevice,
  source: "ungrounded" | "grounded",
  to: Spot,
): EndKey | undefined {
  const way = section.wayFrom(source, to);
  const cable = lastCableStep(way, "fromEnclosure", enclosure.id);
  const jumper = way?.findLast((step) => step.kind === "jumper" && step.enclosure === enclosure.id);
  const end = cable?.from ?? (jumper?.kind === "jumper" ? jumper.from : undefined);
  return end !== undefined && isCurrentCarrying(section.installation, enclosure, end) ? end : undefined;
}

/** A ground wire that carries current is to be replaced, not moved. */
export const isCurrentCarrying = (installation: Installation, enclosure: Enclosure, end: EndKey): boolean =>
  findEndFacts(installation, enclosure, end)?.grounding === false;

/**
 * Adds to a plan that several ends come to one pole of one side of a device: into the splice that it is pigtailed to, or
 * into a new one. One end alone goes as `bring` has it.
 */
export function bringAll(
  plan: MakeUpPlan,
  installation: Installation,
  [enclosure, device]: readonly [Enclosure, Device],
  ends: readonly EndKey[],
  [side, pole]: readonly [DeviceSide, Pole],
): boolean {
  const [first, ...more] = ends;
  if (first === undefined) return false;
  if (more.length === 0) return bring(plan, enclosure, device, first, side, pole);
  const terminal = terminalOf(device, side, pole);
  if (terminal === undefined) return false;
  const landed = landedAt(enclosure, device.id, terminal);
  const splice = landed.map(({ end }) => enclosure.places[farEnd(end)]?.at).find((at) => at?.kind === "splice");
  if (splice?.kind === "splice") {
    for (const end of ends) plan.join(end, splice.splice);
    return true;
  }
  if (landed.length > 0) {
    const made = plan.pigtail(device.id, terminal);
    for (const end of ends) plan.join(end, made);
    return true;
  }
  const facts = findEndFacts(installation, enclosure, first);
  if (facts === undefined) return false;
  const made = plan.splice(ends);
  const at = { kind: "terminal", device: device.id, terminal, hole: 1 } as const;
  plan.jumper({ kind: "splice", splice: made }, at, {
    awg: facts.awg,
    colour: pole === "hot" ? "black" : "white",
  });
  return true;
}

/** Cables where all ends are of cables, each once: "C2 and C5"; else the ends themselves. */
export function namesOfEnds(installation: Installation, enclosure: Enclosure, ends: readonly EndKey[]): string {
  const cables = ends.map((end) => {
    const parsed = parseEnd(end);
    return parsed?.of === "cable" ? installation.cables[parsed.cable]?.name : undefined;
  });
  const names = new Set(cables);
  if (!names.has(undefined) && names.size * 2 === ends.length) return listed([...names].flatMap((name) => name ?? []));
  return listed(ends.map((end) => nameOfEnd(installation, enclosure, end)));
}
