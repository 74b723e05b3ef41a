import { describe, expect, test } from "vitest";
import { byOvercurrent, byResidual, classALimitS } from "../../../shared-model/solver/circuit/trip-limits.ts";

describe("limits", () => {
  test("Class A: 6 mA opens, 4 mA does not, between them either", () => {
    expect([0, 3.99, 4, 4.01, 5.99, 6, 1000].map((ma) => byResidual("personnel", ma))).toEqual([
      "no",
      "no",
      "no",
      "may",
      "may",
      "yes",
      "yes",
    ]);
    const equipment = [6, 15, 15.01, 29.99, 30].map((ma) => byResidual("equipment", ma));
    expect(equipment).toEqual(["no", "no", "may", "may", "yes"]);
    expect([6, 30, 30.01, 1000].map((ma) => byResidual("arc-fault", ma))).toEqual(["no", "no", "may", "may"]);
  });

  // UL 943: T = (20 / I)^1.43, as restated at http://www.electrical-contractor.net/forums/ubbthreads.php/posts/37797.html
  // Below 6 mA the standard names no time: that of 6 mA stands for all.
  test.each([
    [0, 5.5939],
    [5, 5.5939],
    [6, 5.5939],
    [10, 2.6945],
    [15, 1.5089],
    [20, 1],
    [25, 0.7268],
    [30, 0.56],
    [50, 0.2697],
    [100, 0.1001],
    [150, 0.0561],
    [200, 0.0372],
    [264, 0.025],
    [1000, 0.025],
    [248_000, 0.025],
  ])("%d mA: within %d s", (ma, seconds) => {
    expect(Math.abs(classALimitS(ma) - seconds)).toBeLessThan(0.0001);
  });

  test("a breaker carries its rating, opens within an hour at 1.35 times, two minutes at twice, at once at ten times", () => {
    // UL 489, up to 30 A, from memory; at once from 150 A for 15 A is a modelling value.
    expect(byOvercurrent(15, 15)).toEqual({ trips: "no" });
    expect(byOvercurrent(15.1, 15).trips).toBe("may");
    expect(byOvercurrent(20.24, 15).trips).toBe("may");
    expect(byOvercurrent(20.25, 15)).toMatchObject({ trips: "yes", time: { latestS: 3600 } });
    expect(byOvercurrent(30, 15)).toMatchObject({ trips: "yes", time: { earliestS: 10, latestS: 120 } });
    expect(byOvercurrent(149, 15).time?.latestS).toBeGreaterThan(1);
    expect(byOvercurrent(150, 15).time?.latestS).toBeLessThan(0.1);
    expect(byOvercurrent(0, 15)).toEqual({ trips: "no" });
    let before = Infinity;
    for (let amps = 15.1; amps < 200; amps += 0.5) {
      const { earliestS = 0, latestS = 0 } = byOvercurrent(amps, 15).time ?? {};
      expect(latestS).toBeLessThanOrEqual(before);
      expect(earliestS).toBeLessThan(latestS);
      before = latestS;
    }
  });
});
