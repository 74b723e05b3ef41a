/**
 * What the golden table says in volts and amperes of slips on the way to the plan of the laundry circuit: residuals, and
 * what is live with the contacts of R1b open. The figures are our own computed table, made by an independent
 * implementation that solves the circuit; `tests/rules/golden.test.ts` holds the findings of the same slips.
 */
import { describe, expect, test } from "vitest";
import { liveIn } from "../../../shared-model/analysis/drawn-outlets.ts";
import type { Project } from "../../../shared-model/model/project.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { outletsOf, type PlacedOutlet } from "../../../shared-model/queries/outlets-of.ts";
import { buildCircuit } from "../../../shared-model/solver/circuit/build-circuit.ts";
import { type Added, type Circuit, EVERYTHING_ON } from "../../../shared-model/solver/circuit/circuit.ts";
import { residualOf } from "../../../shared-model/solver/circuit/currents.ts";
import { leakAt } from "../../../shared-model/solver/circuit/test-currents.ts";
import { deviceId, jumperId, loadId } from "../../builders/ids.ts";
import { openSample } from "../../builders/samples/open-sample.ts";
import { SampleDrawing } from "../../builders/samples/sample-drawing.ts";
import { type Edit, ROWS } from "../../rules/golden-rows.ts";
import { stateOf } from "./measure.ts";

const R1b = deviceId("R1b");
const plan = (): SampleDrawing => new SampleDrawing(openSample("laundry-proposed"), "proposed");

const outletsIn = ({ proposed }: Project): readonly PlacedOutlet[] =>
  inOrder(proposed?.enclosures ?? {}).flatMap(({ devices }) => inOrder(devices).flatMap(outletsOf));

/** The plan after a slip, with nothing in use but what is added; `isOpen`: the contacts of R1b are open. */
function solved(edit: Edit, added: readonly Added[] = [], isOpen = false, idle = true): Circuit {
  const drawing = plan();
  edit(drawing);
  const { proposed, supply } = drawing.project;
  if (proposed === undefined) throw new Error("Nothing is proposed.");
  return buildCircuit(proposed, supply, {
    ...EVERYTHING_ON,
    added,
    idle: new Set(idle ? [deviceId("L1"), loadId("Freezer")] : []),
    tripped: new Set(isOpen ? [R1b] : []),
  });
}

const editOf = (start: string): Edit => {
  const row = ROWS.find(({ name }) => name.startsWith(start));
  if (row === undefined) throw new Error(`No row ${start}.`);
  return row.edit;
};

const outlet = (name: string): PlacedOutlet => {
  const found = outletsIn(plan().project).find((one) => one.name === name);
  if (found === undefined) throw new Error(`No outlet ${name}.`);
  return found;
};

const at = (name: string, contact: "hot" | "neutral") =>
  ({ kind: "device", device: outlet(name).device.id, node: outlet(name)[contact] }) as const;
const heaterAt = (name: string): Added => ({ from: at(name, "hot"), to: at(name, "neutral"), ohm: 12 });

describe("G3, white of C2 on LINE", () => {
  test("12 ohm at R3 leave about 9.7 A of residual", () => {
    const { residualMa, trips } = stateOf(solved(editOf("G3,"), [heaterAt("R3")]), R1b);
    expect(Math.abs(residualMa / 1000 - 9.7)).toBeLessThan(0.05);
    expect(trips).toBe("yes");
  });

  test("the same 12 ohm at R5, whose white is still on LOAD, leave none", () => {
    const { residualMa, trips } = stateOf(solved(editOf("G3,"), [heaterAt("R5")]), R1b);
    expect(residualMa).toBeLessThan(0.2);
    expect(trips).toBe("no");
  });

  test("and in the plan as it is, none at R3 either", () => {
    expect(
      stateOf(
        solved(() => undefined, [heaterAt("R3")]),
        R1b,
      ).residualMa,
    ).toBeLessThan(0.2);
  });
});

describe("live with the contacts of R1b open, by volts", () => {
  const rows = ROWS.flatMap(({ name, edit, live }) => (live === undefined ? [] : [{ name, edit, live }]));
  test.each(rows)("$name", ({ edit, live }) => {
    const circuit = solved(edit, [], true);
    const hot = liveIn(circuit, outletsIn(plan().project)).filter(({ contact }) => contact === "hot");
    expect(hot.map(({ place }) => place.device.replace("device-", "")).sort()).toEqual(live);
    // Nothing is in use, so what is live is at the full voltage, within 0.2 V.
    for (const { volts } of hot) expect(Math.abs(volts - 120)).toBeLessThan(0.2);
  });
});

describe("G6, a jumper from HL to HD: a path around the contacts", () => {
  /** As in the table, which gives a jumper and a pair of contacts a milliohm each: 12 AWG of 7.56 in. */
  const slip: Edit = (drawing) => {
    editOf("G6, a")(drawing);
    for (const name of ["p", "c", "y"]) drawing.set({ kind: "jumper", id: jumperId(name) }, "lengthIn", 7.56);
  };
  const shareOf = (name: string): number => {
    const leak = leakAt(outlet(name));
    if (leak === undefined) throw new Error("No leak.");
    // The electronics draw their 4 mA over both ways too: what the leak itself adds, in phase.
    const seen = [[], [leak]].map((added) => {
      const circuit = solved(slip, added);
      const sensor = circuit.sensors.find(({ device }) => device === R1b);
      if (sensor === undefined) throw new Error("No sensor.");
      return residualOf(circuit, sensor, circuit.factor.operatingPoint());
    });
    const [before, after] = seen;
    if (before === undefined || after === undefined) throw new Error("Nothing seen.");
    return Math.hypot(after.re - before.re, after.im - before.im) / (120 / leak.ohm);
  };

  test("the device sees only a quarter of a leak at R3, and half of one at its face", () => {
    expect(Math.abs(shareOf("R3") - 0.25)).toBeLessThan(0.02);
    expect(Math.abs(shareOf("R1b") - 0.5)).toBeLessThan(0.02);
  });

  test("so a leak of 6.3 mA does not open it", () => {
    const leak = leakAt(outlet("R3"));
    expect(stateOf(solved(slip, leak === undefined ? [] : [leak]), R1b).byResidual).toBe("no");
  });
});
