import { describe, expect, test } from "vitest";
import samples from "../../../assets/samples/index.json" with { type: "json" };
import type { Circuit } from "../../../shared-model/solver/circuit/circuit.ts";
import { spiceDeck } from "../../../shared-model/solver/network/spice-deck.ts";
import { physicsCircuit, physicsFaults } from "../../builders/physics-circuit.ts";
import { openSample } from "../../builders/samples/open-sample.ts";
import { getNgspice, NO_NGSPICE } from "../../get-ngspice.mjs";
import { runNgspice } from "../network/run-ngspice.ts";
import { circuitOf } from "./solve.ts";

const program = getNgspice();
if (program === undefined) console.error(`SKIPPED, proves nothing here: ${NO_NGSPICE}`);

/** The greatest difference at a node, relative with a floor of 1 mV. */
function worstDifference(circuit: Circuit, ngspice: string): number {
  const theirs = runNgspice(
    ngspice,
    spiceDeck(circuit.factor, () => undefined),
  );
  const ours = circuit.factor.operatingPoint();
  let worst = 0;
  for (let node = 0; node < circuit.network.nodeCount; node++) {
    const [re, im] = theirs.get(String(node + 1)) ?? [Number.NaN, Number.NaN];
    const difference = Math.hypot((ours.re[node] as number) - re, (ours.im[node] as number) - im);
    if (Number.isNaN(difference)) throw new Error(`ngspice has no node ${node + 1}.`);
    worst = Math.max(worst, difference / Math.max(Math.hypot(re, im), 0.001));
  }
  return worst;
}

describe.skipIf(program === undefined)("ngspice finds the same voltages in drawings", () => {
  test.each(physicsFaults.map((fault) => [fault]))("%s", (fault) => {
    expect(worstDifference(circuitOf(physicsCircuit(fault).project), program as string)).toBeLessThan(1e-6);
  });

  test.each(samples.map(({ name }) => [name]))("sample %s", (name) => {
    const circuit = circuitOf(openSample(name));
    expect(worstDifference(circuit, program as string)).toBeLessThan(1e-6);
    const dark = circuit.inSetting({
      ...circuit.setting,
      off: new Set(circuit.overcurrent.map(({ device }) => device)),
    });
    expect(worstDifference(dark, program as string)).toBeLessThan(1e-6);
  });
});
