import { describe, expect, it } from "vitest";
import { analyse, type Network } from "../../../shared-model/solver/network/network.ts";
import { spiceDeck } from "../../../shared-model/solver/network/spice-deck.ts";
import { Picker } from "../../builders/picker.ts";
import { getNgspice, NO_NGSPICE } from "../../get-ngspice.mjs";
import { withRoom } from "../../same-seed.ts";
import { NetworkBuilder, randomWiring } from "./random-network.ts";
import { runNgspice } from "./run-ngspice.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
const CIRCUITS = LONG ? 320 : 25;
/** Relative, with a floor of 1 mV. */
const TOLERANCE = 1e-6;
const FLOOR = 1e-3;

const program = getNgspice();
if (program === undefined) console.error(`SKIPPED, proves nothing here: ${NO_NGSPICE}`);

/** The worst node: how far, where, and how many nodes ngspice knew. */
function compare(network: Network): { worst: number; where: string; compared: number } {
  const factor = analyse(network);
  const { re, im } = factor.operatingPoint();
  const theirs = runNgspice(
    program ?? "",
    spiceDeck(factor, () => undefined),
  );
  let worst = 0;
  let where = "";
  let compared = 0;
  for (let node = 0; node < network.nodeCount; node++) {
    const name = factor.nameOf(node);
    const [vRe, vIm] = name < 0 ? [0, 0] : (theirs.get(String(name + 1)) ?? [Number.NaN, Number.NaN]);
    const error = Math.hypot((re[node] ?? Number.NaN) - vRe, (im[node] ?? Number.NaN) - vIm);
    const share = error / Math.max(FLOOR, Math.hypot(vRe, vIm));
    compared++;
    if (share <= worst) continue;
    worst = Number.isNaN(share) ? Infinity : share;
    where = `node ${node}: ${re[node]} + j${im[node]} against ${vRe} + j${vIm}`;
  }
  return { worst, where, compared };
}

describe.skipIf(program === undefined)("the solver against ngspice", () => {
  it(`gives the voltages of ${CIRCUITS} random wirings`, { timeout: withRoom(600_000) }, () => {
    let compared = 0;
    for (let seed = 1; seed <= CIRCUITS; seed++) {
      const pick = new Picker(seed * 7919);
      const nodes = Math.round(5 * 400 ** pick.next());
      const result = compare(randomWiring(seed, { nodes }));
      expect(result.worst, `seed ${seed}, ${nodes} nodes, ${result.where}`).toBeLessThan(TOLERANCE);
      compared += result.compared;
    }
    expect(compared).toBeGreaterThan(CIRCUITS * 20);
  });

  it("gives the voltages with ties, inductance, sources behind reactance and short circuits", () => {
    const builder = new NetworkBuilder();
    const [bar, leg, box, tied, loose, motor] = Array.from({ length: 6 }, () => builder.node());
    if (bar === undefined || leg === undefined || box === undefined) throw new Error("nodes");
    if (tied === undefined || loose === undefined || motor === undefined) throw new Error("nodes");
    builder.ohms(bar, -1, 0.1);
    builder.sources.push({ plus: leg, minus: bar, re: 100, im: -66, g: 3, bS: -9 });
    builder.sources.push({ plus: motor, minus: -1, re: 5, im: 1, g: 0.1, bS: 0.05 });
    builder.sources.push({ plus: loose, minus: tied, re: 24, im: 0, g: 2, bS: -1 });
    builder.ohms(leg, box, 0.2);
    builder.branch(box, motor, 0.02, -0.05);
    builder.branch(motor, bar, 0.3, 0.1);
    builder.branch(box, bar, 0, 0);
    builder.ohms(tied, loose, 10);
    const network = { ...builder.network(), ties: Int32Array.of(tied, box, box, motor) };
    expect(compare(network).worst).toBeLessThan(1e-9);
    const shorted = { ...network, ties: Int32Array.of(leg, bar, tied, -1) };
    expect(compare(shorted).worst).toBeLessThan(1e-9);
  });
});
