import type { SurveyRefusedTest } from "../../answers/survey.ts";
import type { Inference } from "./inference.ts";
import { isDoubleVoltage, isShort, joinedCircuit } from "./joined-circuit.ts";
import { isSource, type Lead } from "./lead.ts";

/** What a test would do to the wiring under one guess that is not ruled out. */
export interface Harm {
  readonly because: Exclude<SurveyRefusedTest["because"], "needs-reference">;
  /** Amperes of a short, volts on what is made for 120. */
  readonly figure: number;
  /** The guess: leads by place among the joined cables. */
  readonly leads: readonly Lead[];
}

/** Leads of a cable that are not ruled out. */
export const leadsLeft = (inference: Inference, cable: number): readonly Lead[] =>
  inference.assignments.options.flatMap(({ lead }, option) => (inference.mayBe(cable, option) ? [lead] : []));

/** Its two wires are one where a contact elsewhere is closed: the loop of a switch, travellers. */
export const mayClose = ({ kind }: Lead): boolean => kind === "loop" || kind === "travellers";

/**
 * What joining cables to each other could do at worst, from solving every guess about which of them bring power; two
 * supplies are taken from the same leg and from opposite ones. Undefined where no guess does harm.
 * @param isOpen Whether a cable was found open, or through a load, from hot to white with the power off: what could close
 *   its two wires did not.
 */
export function harmOfJoining(
  inference: Inference,
  cables: readonly number[],
  nominalV: number,
  isOpen: (cable: number) => boolean,
): Harm | undefined {
  const leads = cables.map((cable) => leadsLeft(inference, cable));
  const sources = leads.map((mine) => mine.filter(isSource));
  const closing = leads.map((mine, index) => (isOpen(cables[index] as number) ? [] : mine.filter(mayClose)));
  let worst: Harm | undefined;
  sources.forEach((mine, index) => {
    for (const lead of mine) {
      worst = worse(worst, [lead], joinedCircuit([lead], nominalV, false, false));
      closing.forEach((theirs, other) => {
        if (other === index) return;
        for (const loop of theirs) {
          const found = joinedCircuit([lead, loop], nominalV, false, false);
          if (isShort(found)) worst = worse(worst, [lead, loop], found);
        }
      });
      for (const theirs of sources.slice(index + 1))
        for (const second of theirs)
          for (const opposite of [false, true])
            worst = worse(worst, [lead, second], joinedCircuit([lead, second], nominalV, opposite, false));
    }
  });
  return worst;
}

/** What closing a switch between the two wires of a cable could do at worst. */
export function harmOfSwitch(inference: Inference, cable: number, nominalV: number): Harm | undefined {
  let worst: Harm | undefined;
  for (const lead of leadsLeft(inference, cable).filter(isSource))
    worst = worse(worst, [lead], joinedCircuit([lead], nominalV, false, true));
  return worst;
}

/** What a lamp of 120 V across the two wires of a cable could come to at worst. */
export function harmOfTestLamp(inference: Inference, cable: number, nominalV: number): Harm | undefined {
  let worst: Harm | undefined;
  for (const lead of leadsLeft(inference, cable).filter(isSource)) {
    const { volts } = joinedCircuit([lead], nominalV, false, false);
    worst = worse(worst, [lead], { volts, amps: 0 });
  }
  return worst;
}

function worse(
  worst: Harm | undefined,
  leads: readonly Lead[],
  found: ReturnType<typeof joinedCircuit>,
): Harm | undefined {
  if (isShort(found) && (worst?.because !== "short" || worst.figure < found.amps))
    return { because: "short", figure: found.amps, leads };
  if (worst !== undefined) return worst;
  if (isDoubleVoltage(found)) return { because: "double-voltage", figure: found.volts, leads };
  return leads.length > 1 ? { because: "back-feed", figure: found.volts, leads } : undefined;
}
