import { expect, test } from "vitest";
import type { Box, Ring } from "../../shared-model/model/enclosure.ts";
import { asId, type RingId } from "../../shared-model/model/ids.ts";
import { ringVolumeUnmarked } from "../../shared-model/rules/checks/ring-volume-unmarked.ts";
import { cubicInches } from "../../shared-model/units/volume.ts";
import type { Drawing } from "./drawing.ts";
import { tryFix } from "./fix-tester.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

const ring = (facts: Partial<Ring>): Pick<Box, "rings"> => ({
  rings: {
    [asId<RingId>("g")]: {
      id: asId<RingId>("g"),
      kind: "plaster-ring",
      volume: { kind: "unknown" },
      order: 0,
      ...facts,
    },
  },
});
const MARKED: Partial<Ring> = { volume: { kind: "marked", volumeIn3: cubicInches(4) } };
const GUESSED: Partial<Ring> = { ...MARKED, evidence: { volume: "assumed" } };
const TABLE: Partial<Ring> = { volume: { kind: "table", size: "4x1-1/2 square" } };

const withRing = (facts: Partial<Ring>, drawing: Drawing = laundryProposed()) => drawing.setBox("B1", ring(facts));

/** B1 needs 29.8125 in³ of 30.3 in the plan and 32.0625 as found: by hand, see the tests of box fill. */
ruleTester(ringVolumeUnmarked, {
  passes: [
    { name: "no ring", drawing: () => laundryProposed() },
    { name: "a ring without a marking counts nothing", drawing: () => withRing({}) },
    { name: "4.0 in³ marked", drawing: () => withRing(MARKED) },
    { name: "and read off it", drawing: () => withRing({ ...MARKED, evidence: { volume: "seen" } }) },
    { name: "an extension is a box of a listed size", drawing: () => withRing({ ...TABLE, kind: "extension" }) },
  ],
  finds: [
    {
      name: "4.0 in³ guessed, and not needed",
      drawing: () => withRing(GUESSED),
      findings: [
        {
          on: "B1",
          severity: "caution",
          data: { volumeIn3: 4 },
          basis: "assumed",
          says: ["The ring on B1 is credited with 4 in³, and that it is marked so is assumed", "it counts 0."],
        },
      ],
    },
    {
      name: "guessed, and all that keeps the box from being overfull",
      drawing: () => withRing(GUESSED, laundryAsFound()),
      findings: [{ on: "B1", says: ["it counts 0, and B1 would be overfull."] }],
    },
    {
      name: "a raised cover with a volume from the table of boxes",
      drawing: () => withRing({ ...TABLE, kind: "raised-cover" }),
      findings: [
        {
          on: "B1",
          data: { volumeIn3: 21 },
          says: ["The raised cover on B1 is credited with 21 in³ from the table of boxes"],
        },
      ],
    },
    {
      name: "an extension with a guessed marking",
      drawing: () => withRing({ ...GUESSED, kind: "extension" }),
      findings: [{ on: "B1", says: ["The extension on B1"] }],
    },
  ],
  cannotTell: { never: "a ring that is not known to be marked counts nothing" },
});

test("its fix counts the ring as nothing", () => {
  const { project } = tryFix(withRing(GUESSED), "ring-volume-unmarked", "B1");
  const box = project.proposed?.enclosures["B1" as never] as Box | undefined;
  expect(box?.rings["g" as never]?.volume).toEqual({ kind: "unknown" });
});
