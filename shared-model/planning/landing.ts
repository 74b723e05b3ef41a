import type { MakeUpStyle } from "../answers/make-up-intent.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { Installation } from "../model/project.ts";
import type { EndFacts } from "../queries/end-facts.ts";
import { getEndFacts } from "../queries/end-facts.ts";
import { findTerminal, type PlacedTerminal } from "../queries/terminals-of.ts";
import { compareWireSize, isThicker, thickestOf, type WireSize } from "../units/wire-size.ts";
import { type JointGroup, type Planned, type Port, planned, refused } from "./joint-group.ts";

const wording = catalogue({
  bond: (box: Part) => `the ground screw of ${box}`,
  tooSmall: (terminal: Part, most: Part, asked: Part, joint: Part) =>
    `${terminal} takes ${most} AWG at most, and the breaker ahead asks for ${asked} AWG in ${joint}. Use a device for that circuit, or a smaller breaker.`,
});

/** How the net of a group is made: nothing to do, capped, one end or two straight on a terminal, one jumper, or splices. */
export type Landing =
  | { readonly kind: "none" | "cap" | "direct" | "strap" }
  /** `awgs`: size of the jumper to each port. */
  | { readonly kind: "splice"; readonly awgs: readonly WireSize[]; readonly linkAwg: WireSize };

/** Size of a jumper where nothing tells: the thinnest of branch circuits. A modelling choice. */
const THINNEST: WireSize = "14";

/** The landing table: what comes in, and how many places it must reach. */
export function landingOf(
  installation: Installation,
  enclosure: Enclosure,
  group: JointGroup,
  style: MakeUpStyle,
): Planned<Landing> {
  const { ends, ports, role, name } = group;
  if (ends.length === 0 && (ports.length < 2 || role === "ground")) return planned({ kind: "none" });
  if (ends.length === 1 && ports.length === 0) return planned({ kind: "cap" });
  const facts = ends.map((end) => getEndFacts(installation, enclosure, end));
  const [port] = ports;
  if (port !== undefined && ports.length === 1 && isStraight(enclosure, group, facts, port, style))
    return planned({ kind: "direct" });
  const thickest = thickestOf(facts.map(({ awg }) => awg)) ?? group.leastAwg ?? THINNEST;
  const linkAwg = group.leastAwg !== undefined && isThicker(group.leastAwg, thickest) ? group.leastAwg : thickest;
  const awgs: WireSize[] = [];
  for (const one of ports) {
    const terminal = terminalOfPort(enclosure, one);
    const most = terminal?.thickest ?? linkAwg;
    const awg = terminal !== undefined && terminal.entryKind !== "lead" && isThicker(linkAwg, most) ? most : linkAwg;
    if (group.leastAwg !== undefined && isThicker(group.leastAwg, awg))
      return refused("terminal-too-small", wording.tooSmall(nameOfPort(enclosure, one), awg, group.leastAwg, name));
    awgs.push(awg);
  }
  if (ends.length === 0 && ports.length === 2) return planned({ kind: "strap" });
  return planned({ kind: "splice", awgs, linkAwg });
}

/** Size of the one jumper of a strap. */
export const strapAwg = ({ leastAwg }: JointGroup): WireSize => leastAwg ?? THINNEST;

function isStraight(
  enclosure: Enclosure,
  { ends, role, multiwire }: JointGroup,
  facts: readonly EndFacts[],
  port: Port,
  { direct, bothHoles }: MakeUpStyle,
): boolean {
  if (!direct) return false;
  const terminal = terminalOfPort(enclosure, port);
  if (port.kind === "terminal" && terminal === undefined) return false;
  if (!facts.every((one) => canLand(enclosure, port, terminal, one))) return false;
  if (ends.length === 1) return true;
  if (ends.length !== 2 || !bothHoles || role === "ground" || (role === "neutral" && multiwire === true)) return false;
  return terminal?.entryKind === "clamp-plate" && terminal.holes >= 2;
}

function canLand(enclosure: Enclosure, port: Port, terminal: PlacedTerminal | undefined, facts: EndFacts): boolean {
  if (port.kind === "bond") return facts.grounding;
  const device = enclosure.devices[port.device];
  if (device === undefined || terminal === undefined) return false;
  if (terminal.entryKind === "lead") return true;
  if (facts.material !== "copper" && device.markedForAluminium !== true) return false;
  if (facts.stranded && device.acceptsStranded !== true) return false;
  return compareWireSize(facts.awg, terminal.thinnest) >= 0 && compareWireSize(facts.awg, terminal.thickest) <= 0;
}

export function terminalOfPort({ devices }: Enclosure, port: Port): PlacedTerminal | undefined {
  const device = port.kind === "terminal" ? devices[port.device] : undefined;
  const [first] = port.kind === "terminal" ? port.terminals : [];
  return device === undefined || first === undefined ? undefined : findTerminal(device, first);
}

export function nameOfPort(enclosure: Enclosure, port: Port): string {
  if (port.kind === "bond") return wording.bond(enclosure.name);
  const device = enclosure.devices[port.device];
  const terminal = terminalOfPort(enclosure, port);
  return [device?.name ?? port.device, terminal?.group, terminal?.label].filter(Boolean).join(" ");
}
