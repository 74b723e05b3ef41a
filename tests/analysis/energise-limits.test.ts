import { expect, test } from "vitest";
import { energise } from "../../shared-model/analysis/energise.ts";
import { outletKey } from "../../shared-model/model/ids.ts";
import { deviceId } from "../builders/ids.ts";
import { physicsCircuit } from "../builders/physics-circuit.ts";

/** Half a milliampere: a figure of our own, below which nobody would call it a current that a device sees. */
test.each([
  [0.48, []],
  [0.52, ["R1"]],
] as const)("a leak of %d mA behind a device: named as having seen it: %j", (mA, named) => {
  const { asFound, supply } = physicsCircuit().project;
  const operated = { off: [], positions: {}, tripped: [], idle: [deviceId("L1")] };
  const act = { kind: "leak", outlet: outletKey(deviceId("R2")), contact: "hot", mA } as const;
  const said = energise(asFound, supply, operated, { act });
  expect(said.act?.devices.map(({ name }) => name)).toEqual(named);
  for (const { residualMa, trips } of said.act?.devices ?? []) {
    expect(Math.abs(residualMa - mA)).toBeLessThan(0.02);
    expect(trips).toBe("no");
  }
});
