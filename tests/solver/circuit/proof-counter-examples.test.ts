import { describe, expect, test } from "vitest";
import { ARRANGEMENTS, drawnWithLengths } from "./counter-examples.ts";
import { failing, offenders, proofBy, proofs } from "./proofs.ts";

describe("what fails, and by how much", () => {
  test.each(ARRANGEMENTS)("$name", (arrangement) => {
    const {
      failures,
      trips: [sensor, ...outlets],
    } = arrangement;
    const all = proofs(drawnWithLengths(arrangement).installation());
    for (const { outlet, device, fails, balance, detection } of failures) {
      expect([outlet, device, failing(all, outlet, device)]).toEqual([outlet, device, fails]);
      const proof = proofBy(all, outlet, device);
      if (balance !== undefined) expect(Math.abs(proof.balance - balance)).toBeLessThan(0.01);
      if (detection !== undefined) expect(Math.abs(proof.detection - detection)).toBeLessThan(0.01);
    }
    expect(
      all
        .filter(({ protectedBy }) => protectedBy.length === 0)
        .map(({ standing }) => standing.outlet.key)
        .sort(),
    ).toEqual(arrangement.open);
    expect(Object.keys(offenders(all, sensor))).toEqual(outlets);
    expect(proofBy(all, failures[0]?.outlet ?? "", sensor).tests.P6).toBe(outlets.length > 0 ? "fail" : "pass");
  });
});
