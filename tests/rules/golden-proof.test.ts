import { describe, expect, test } from "vitest";
import { proveState } from "../../shared-model/analysis/prove-state.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import { SampleDrawing } from "../builders/samples/sample-drawing.ts";
import { type Edit, ROWS } from "./golden-rows.ts";

/*
 * The plan of the laundry circuit after each slip of the golden table: who is proved, by what, and which test fails where.
 * Worked out by hand from how the device works and from what each slip moves; shares from the independent resistive reference
 * (see `counter-examples.ts`). L1 is on LINE by intent.
 */
const PLAN: Readonly<Record<string, string | RegExp>> = {
  R1b: "R1b",
  R2: "R1b",
  R3: "R1b",
  R4b: "R4b",
  R5: "R1b",
  L1: /^P1: neither its hot nor its neutral is behind R1b: C4 BK leaves splice HL in B1\.( P6: .*)?$/,
};
const roundBy = (cable: string): RegExp =>
  new RegExp(
    `^P1: its neutral goes round R1b: ${cable} WH leaves splice NL in B1; of what it uses 100 % is missing there\\.`,
  );
const onLine = (cable: string): RegExp =>
  new RegExp(`^P1: neither its hot nor its neutral is behind R1b: ${cable} BK leaves splice HL in B1\\.$`);
const REVERSED = /^P5: R1b is fed on its LOAD terminals\.$/;
const JUMPED =
  /^P1: its hot comes round R1b: jumper y joins splice HD to splice HL in B1; of a leak R1b sees \d+ %\. P6/;
/** The lamp hangs between the supply and the neutral behind the device. */
const THROUGH_LAMP = /^P1: with R1b open, a load still brings a live conductor to it\. P6: R1b trips .* L1\.$/;
const EXCHANGED = {
  R1b: /^P5: it is fed on its LOAD terminals\.$/,
  R2: REVERSED,
  R3: REVERSED,
  R5: REVERSED,
  L1: REVERSED,
};
const AROUND = { R2: JUMPED, R3: JUMPED, R5: JUMPED, L1: /^P1: .* P6: R1b trips/ };

const AFTER: Readonly<Record<string, Readonly<Record<string, string | RegExp>>>> = {
  "G3, white of C2 on LINE": { R2: roundBy("C2"), R3: roundBy("C2") },
  "G3b, white of C5 on LINE": { R5: roundBy("C5") },
  "G3c, white of C4 on LOAD": {
    L1: /^P1: its hot comes round R1b: C4 BK leaves splice HL in B1; of a leak R1b sees 0 %\./,
    R2: THROUGH_LAMP,
    R3: THROUGH_LAMP,
    R5: THROUGH_LAMP,
  },
  "G4, both of C2 on LINE": { R2: onLine("C2"), R3: onLine("C2") },
  "G4b, both of C5 on LINE: the hall is a wish": { R5: onLine("C5") },
  "G4c, both of C3 on LOAD: R4b behind R1b": { R4b: "R1b, R4b" },
  "G4d, both of C4 on LOAD: the stair goes dark": { L1: "R1b" },
  "G5, LINE and LOAD of R1b exchanged": EXCHANGED,
  "G5, the same with a face tied to LOAD": EXCHANGED,
  "G6, a jumper from HL to HD": { ...AROUND, R1b: /^P3: of a leak R1b sees [45]\d %: jumper y joins/ },
  "G6, the same with a face tied to LOAD": {
    ...AROUND,
    R1b: /^P1: a source reaches its hot without passing its own sensor\./,
  },
  "G7, without e": {},
  "G7, without f": {},
  "G8, c of 14 AWG": {},
  "G8, a 30 A breaker": {},
  "G8, a and b of 16 AWG": {},
};

function provedAfter(edit: Edit) {
  const drawing = new SampleDrawing(openSample("laundry-proposed"), "proposed");
  edit(drawing);
  return new Map(
    proveState(drawing.project, "proposed").lines.map(({ proof, isProtected, protectedBy, reason }) => [
      proof.standing.outlet.name,
      isProtected ? protectedBy.map(({ name }) => name).join(", ") : reason,
    ]),
  );
}

describe("protection of the plan after each slip", () => {
  test("every row of the golden table has its proof here", () => {
    const wiring = ROWS.map(({ name }) => name).filter((name) => /^G[3-8]/.test(name));
    expect(Object.keys(AFTER).sort()).toEqual([...wiring].sort());
  });

  test("as planned", () => {
    const found = provedAfter(() => undefined);
    for (const [outlet, wanted] of Object.entries(PLAN))
      expect([outlet, found.get(outlet)]).toEqual([
        outlet,
        typeof wanted === "string" ? wanted : expect.stringMatching(wanted),
      ]);
  });

  test.each(ROWS.filter(({ name }) => name in AFTER))("$name", ({ name, edit }) => {
    const found = provedAfter(edit);
    expect([...found.keys()].sort()).toEqual(Object.keys(PLAN).sort());
    for (const [outlet, wanted] of Object.entries({ ...PLAN, ...AFTER[name] }))
      expect([outlet, found.get(outlet)]).toEqual([
        outlet,
        typeof wanted === "string" ? wanted : expect.stringMatching(wanted),
      ]);
  });
});
