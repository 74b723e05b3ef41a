import { describe, expect, test } from "vitest";
import { allSections } from "../../shared-model/solver/sections.ts";
import { findingsOf, inShort, proofs } from "../builders/samples/look-into.ts";
import { openSample } from "../builders/samples/open-sample.ts";

const project = openSample("house-twelve-circuits");
const { enclosures, directory } = project.asFound;

test("a panel of twelve circuits and forty-four boxes, each in a room and on the breaker that its name says", () => {
  const boxes = Object.values(enclosures).filter(({ kind }) => kind === "box");
  expect(boxes).toHaveLength(44);
  expect(boxes.filter(({ roomId }) => roomId === undefined)).toEqual([]);
  expect(Object.keys(directory)).toHaveLength(12);
  for (const section of allSections(project.asFound)) {
    const breakers = section.breakers().map(({ device }) => device.name);
    const ofBoxes = new Set(section.enclosures.map(({ name }) => `Q${name.slice(1, -1)}`));
    expect(breakers).toEqual([...ofBoxes]);
  }
});

test("everything that uses or gives current is live", () => {
  const dead = allSections(project.asFound).flatMap((section) =>
    section
      .outlets()
      .filter(({ live }) => !live)
      .map(({ outlet }) => outlet.name),
  );
  expect(dead).toEqual([]);
});

/**
 * By hand. Receptacles of kitchen counters, laundries and unfinished basements are on the list of NFPA 70 (2020) 210.8(A);
 * R52, R53 hang on R51, R82 protects itself; R105 hangs with R104 and is told with it; garage and outdoors are behind Q9. B21: six 14 AWG 12.00, clamps 2.00, yoke
 * 4.00, grounds 2.00 make 20.00 in 18.0. The freezer at R92 goes off with whatever trips Q9. B41: seven 14.00, yoke 4.00, grounds 2.00 make 20.00 in 20.0. 3 % are
 * 3.6 V: R13 lies behind 70 ft and R34 behind 79 ft of 14 AWG (5.05 ohm in 1000 ft there and back) at 12 A, 4.2 and 4.8 V;
 * R94 behind 97 ft of 12 AWG (3.18 ohm) at 16 A, 4.9 V.
 */
test("what is to be found", () => {
  expect(inShort(findingsOf(project, "as-found"))).toEqual([
    "box-overfull B21",
    "box-volume-unknown B43",
    "fill-nearly-full B41",
    "freezer-shares-trip Q9",
    "outlet-not-protected R104",
    "outlet-not-protected R61",
    "outlet-not-protected R81",
    "voltage-drop-advice R13",
    "voltage-drop-advice R34/lower",
    "voltage-drop-advice R94",
  ]);
});

describe("who protects whom", () => {
  const by = proofs(project, "as-found");
  test.each([
    ["R51", ["R51", "R52", "R53"]],
    ["R71", ["R71"]],
    ["R82", ["R82"]],
    ["Q9", ["R91", "R92", "R93", "R94"]],
  ])("%s", (device, outlets) => {
    expect(by.filter((line) => line.endsWith(` by ${device}`))).toEqual(
      outlets.map((outlet) => `${outlet} by ${device}`),
    );
  });

  test("an arc-fault breaker protects nobody from a ground fault", () => {
    expect(by.filter((line) => /^(R1[123]|L15) /.test(line))).toEqual(
      ["L15", "R11", "R12", "R13"].map((o) => `${o} by nothing`),
    );
  });
});
