import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Factor, Network, NetworkSource } from "./network.ts";

const wording = catalogue({
  node: (number: Part, comment: Part) => `* node ${number} = ${comment}`,
  phasors: (hertz: Part) => `* phasors at ${hertz} Hz; run: ngspice -b -r out.raw FILE`,
  sharedNode: (number: Part, comment: Part, other: Part) => `* node ${number} = ${comment} (joined with node ${other})`,
});

/** How a deck is written. */
interface DeckOptions {
  /** One line that says what the circuit is. */
  readonly title?: string;
  /** Hertz; the susceptances of the network belong to it. */
  readonly frequency?: number;
}

/**
 * A complete SPICE deck of the circuit that `factor` solves, for one phasor analysis: `ngspice -b -r out.raw FILE`. Node
 * n of the network is node n+1 of the deck and the reference is 0; every node has one line `* node N = comment`.
 *
 * Open branches are left out; nodes that are joined without impedance share the name of the first; a part without any
 * path to the reference is tied to it by 1 Ω at the same node as in `factor`.
 */
export function spiceDeck(
  factor: Factor,
  commentOfNode: (node: number) => string | undefined,
  { title = "Circuit", frequency = 60 }: DeckOptions = {},
): string {
  const { network, tiedNodes } = factor;
  const omega = 2 * Math.PI * frequency;
  const name = (node: number): string => String(factor.nameOf(node) + 1);
  const lines = [oneLine(title), wording.phasors(frequency)];
  for (let node = 0; node < network.nodeCount; node++) {
    const comment = oneLine(commentOfNode(node) ?? "");
    const isOwn = factor.nameOf(node) === node;
    lines.push(isOwn ? wording.node(node + 1, comment) : wording.sharedNode(node + 1, comment, name(node)));
  }
  addBranches(lines, network, name, omega);
  for (const [i, source] of network.sources.entries()) lines.push(...sourceLines(i + 1, source, name, omega));
  for (const node of tiedNodes) lines.push(`RT${node + 1} ${name(node)} 0 1`);
  // Without an operating point first: for direct current, what only capacitors join would be singular.
  lines.push(card(".options", "noopac"), card(".ac", "lin", 1, frequency, frequency), ".end", "");
  return lines.join("\n");
}

function addBranches(lines: string[], { a, b, g, bS }: Network, name: (node: number) => string, omega: number): void {
  for (let i = 0; i < a.length; i++) {
    const from = name(a[i] as number);
    const to = name(b[i] as number);
    if (from === to) continue;
    const conductance = g[i] as number;
    const susceptance = bS[i] as number;
    if (conductance > 0) lines.push(`R${i + 1} ${from} ${to} ${1 / conductance}`);
    if (susceptance > 0) lines.push(`C${i + 1} ${from} ${to} ${susceptance / omega}`);
    if (susceptance < 0) lines.push(`L${i + 1} ${from} ${to} ${-1 / (susceptance * omega)}`);
  }
}

/** The source, its resistance and its reactance in series. */
function sourceLines(
  number: number,
  { plus, minus, re, im, g, bS }: NetworkSource,
  name: (node: number) => string,
  omega: number,
): readonly string[] {
  const square = g * g + bS * bS;
  if (square === 0 || name(plus) === name(minus)) return [];
  const resistance = g / square;
  const reactance = bS === 0 ? 0 : -bS / square;
  const between = resistance > 0 && reactance !== 0 ? `x${number}` : `e${number}`;
  const degrees = (Math.atan2(im, re) * 180) / Math.PI;
  const lines = [card(`V${number}`, `e${number}`, name(minus), "DC", 0, "AC", Math.hypot(re, im), degrees)];
  if (resistance > 0) lines.push(`RV${number} e${number} ${reactance === 0 ? name(plus) : between} ${resistance}`);
  if (reactance > 0) lines.push(`LV${number} ${between} ${name(plus)} ${reactance / omega}`);
  if (reactance < 0) lines.push(`CV${number} ${between} ${name(plus)} ${-1 / (reactance * omega)}`);
  return lines;
}

/** One line of the simulator's own language. */
const card = (...fields: readonly (string | number)[]): string => fields.join(" ");

/** A comment ends with its line: what follows would be read as an element. */
function oneLine(text: string): string {
  return text.replace(/[\s\p{Cc}]+/gu, " ").trim();
}
