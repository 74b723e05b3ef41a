import { expect, test } from "vitest";
import { standardBoxes } from "../../shared-model/catalog/standard-boxes.ts";
import type { Box, Ring } from "../../shared-model/model/enclosure.ts";
import { asId, type RingId } from "../../shared-model/model/ids.ts";
import { depthOfSize } from "../../shared-model/queries/box-depth.ts";
import { deviceDeeperThanRoom } from "../../shared-model/rules/checks/device-deeper-than-room.ts";
import { inches } from "../../shared-model/units/quantity.ts";
import { cubicInches } from "../../shared-model/units/volume.ts";
import { Drawing } from "./drawing.ts";
import { tryFix } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** A receptacle with so deep a body in a box so deep, on 12 AWG unless told. */
const fitted = (
  body: number | undefined,
  depth: number | undefined,
  item = "nm-12-2-g",
  box: Partial<Box> = {},
): Drawing =>
  new Drawing()
    .box("B", 30.3, { ...(depth !== undefined && { depthIn: inches(depth) }), ...box })
    .device("R", "receptacle-15", "B", body === undefined ? {} : { bodyDepthIn: inches(body) })
    .cable("C", item, "country", "B")
    .put({ "C.bk@B": "R.H1", "C.wh@B": "R.N1" });

const ring = (facts: Partial<Ring>): Partial<Box> => ({
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

/**
 * The code asks for 1/4 in. behind a body that reaches in more than 1-7/8 in., or more than 1 in. on 12 or 10 AWG
 * (NFPA 70 314.24(B), see the edition values); 3/8 in. more for folded conductors is common practice.
 */
ruleTester(deviceDeeperThanRoom, {
  passes: [
    { name: "body not measured", drawing: () => fitted(undefined, 1) },
    {
      name: "X7: 1.3 in. in a box of 2-1/8 in.",
      drawing: () =>
        laundryProposed()
          .setDevice("R1b", { bodyDepthIn: inches(1.3) })
          .setBox("B1", { depthIn: inches(2.125) }),
    },
    { name: "exactly room enough", drawing: () => fitted(1.375, 2) },
    {
      name: "a ring brings it forward",
      drawing: () => fitted(1.375, 1.5, "nm-12-2-g", ring({ depthIn: inches(0.5) })),
    },
    {
      name: "an extension of a standard size",
      drawing: () =>
        fitted(1.5, 1.25, "nm-12-2-g", ring({ kind: "extension", volume: { kind: "table", size: "4x1-1/2 square" } })),
    },
    {
      name: "the depth of a standard size stands for its own",
      drawing: () => fitted(1.375, undefined, "nm-12-2-g", { volume: { kind: "table", size: "4x2-1/8 square" } }),
    },
    { name: "deep enough whatever the ring adds", drawing: () => fitted(1, 2.125, "nm-12-2-g", ring({})) },
    {
      name: "what hangs on a box is not in it",
      drawing: () =>
        new Drawing()
          .box("B", 15.5, { depthIn: inches(1) })
          .device("L", "luminaire-60", "B", { bodyDepthIn: inches(3) }),
    },
  ],
  finds: [
    {
      name: "X6: 1.3 in. in a box of 1-1/2 in.",
      drawing: () =>
        laundryProposed()
          .setDevice("R1b", { bodyDepthIn: inches(1.3) })
          .setBox("B1", { depthIn: inches(1.5) }),
      findings: [
        {
          on: "R1b B1",
          severity: "violation",
          says: [
            "The body of R1b reaches 1.3 in. into B1, which is 1-1/2 in. deep: 0.2 in. is left behind it, and 1/4 in. is the least",
          ],
        },
      ],
    },
    {
      name: "just short of 1/4 in.",
      drawing: () => fitted(1.3125, 1.5),
      findings: [{ on: "R B", severity: "violation", data: { bodyIn: 1.3125, depthIn: 1.5, leftIn: 0.1875 } }],
    },
    {
      name: "1/4 in. exactly: enough for the code, tight for the hand",
      drawing: () => fitted(1.25, 1.5),
      findings: [
        { on: "R B", severity: "caution", says: ["That passes, but folded conductors commonly want 3/8 in. more"] },
      ],
    },
    {
      name: "14 AWG: the code asks for nothing up to 1-7/8 in.",
      drawing: () => fitted(1.3125, 1.5, "nm-14-2-g"),
      findings: [{ on: "R B", severity: "caution" }],
    },
    {
      name: "14 AWG behind a body of more",
      drawing: () => fitted(1.9375, 2.125, "nm-14-2-g"),
      findings: [{ on: "R B", severity: "violation" }],
    },
    {
      name: "12 AWG behind a body of 1 in. or less",
      drawing: () => fitted(1, 1.125),
      findings: [{ on: "R B", severity: "caution" }],
    },
    {
      name: "a body that does not go in at all",
      drawing: () => fitted(1, 1, "nm-14-2-g"),
      findings: [{ on: "R B", severity: "violation", says: ["nothing is left behind it"] }],
    },
    {
      name: "on an assumed depth",
      drawing: () => fitted(1.375, 1.5, "nm-12-2-g", { evidence: { depthIn: "assumed" } }),
      findings: [{ on: "R B", basis: "assumed" }],
    },
  ],
  cannotTell: [
    { name: "depth of the box", drawing: () => fitted(1.3, undefined), on: ["R B"], missing: "the depth of B" },
    {
      name: "what the ring adds",
      drawing: () =>
        fitted(
          1.3,
          1.5,
          "nm-12-2-g",
          ring({ kind: "raised-cover", volume: { kind: "marked", volumeIn3: cubicInches(4) } }),
        ),
      on: ["R B"],
      missing: "the depth that the ring of B adds",
    },
  ],
});

test("every standard size tells its depth, the last of its dimensions", () => {
  const fractions = { "1/4": 0.25, "1/2": 0.5, "3/8": 0.375, "3/4": 0.75, "7/8": 0.875, "1/8": 0.125 };
  for (const { size } of standardBoxes) {
    const last = size.match(/[\d/-]+(?=( min depth)?[ ,]\D*$)/)?.[0] ?? "";
    const [whole = "", part] = last.split("-");
    expect(depthOfSize(size), size).toBe(
      Number(whole) + (part === undefined ? 0 : fractions[part as keyof typeof fractions]),
    );
  }
  expect(depthOfSize("4 in. square")).toBeUndefined();
});

test("its offer is a box of the same kind, as large and deep enough", () => {
  const drawing = fitted(1.3, 1.5).setBox("B", { volume: { kind: "table", size: "4x1-1/2 square" } });
  const { title, project } = tryFix(drawing, "device-deeper-than-room", "R", {
    offer: "Exchange B",
    changesFill: true,
  });
  expect(title).toContain("2-1/8");
  expect(project.proposed?.enclosures["B" as never]).toMatchObject({ depthIn: 2.125 });
});
