import { expect, test } from "vitest";
import type { Box, Ring } from "../../shared-model/model/enclosure.ts";
import { asId, type RingId } from "../../shared-model/model/ids.ts";
import { ringMissing } from "../../shared-model/rules/checks/ring-missing.ts";
import { fixOf, tryFix } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

const ring = (kind: Ring["kind"]): Pick<Box, "rings"> => ({
  rings: { [asId<RingId>("g")]: { id: asId<RingId>("g"), kind, volume: { kind: "unknown" }, order: 0 } },
});

const loose = (box: Partial<Box> = {}) =>
  laundryProposed().setDevice("R1b", { fastenedTo: "nothing" }).setBox("B1", box);

ruleTester(ringMissing, {
  passes: [
    { name: "not recorded, and no ring drawn on a square box", drawing: () => laundryProposed() },
    { name: "screwed to a ring", drawing: () => laundryProposed().setDevice("R1b", { fastenedTo: "ring" }) },
    { name: "screwed to a cover", drawing: () => laundryProposed().setDevice("R1b", { fastenedTo: "cover" }) },
  ],
  finds: [
    {
      name: "a square box without a ring",
      drawing: () => loose(),
      findings: [
        {
          on: "R1b B1",
          severity: "violation",
          says: ["R1b is screwed to nothing: B1 has no ears for a device, and no ring"],
        },
      ],
    },
    {
      name: "an extension has no ears either",
      drawing: () => loose(ring("extension")),
      findings: [{ on: "R1b B1", says: ["and no ring"] }],
    },
    {
      name: "a ring that does not hold",
      drawing: () => loose(ring("plaster-ring")),
      findings: [{ on: "R1b B1", says: ["its ears or their threads are gone"] }],
    },
    {
      name: "a device box whose threads are stripped, as told",
      drawing: () =>
        laundryProposed()
          .setBox("B5", { shape: "device" })
          .setDevice("S1", { fastenedTo: "nothing", evidence: { fastenedTo: "told" } }),
      findings: [{ on: "S1 B5", basis: "told", says: ["its ears or their threads are gone"] }],
    },
  ],
  cannotTell: { never: "a device that nobody found loose is not asked about" },
});

test("its fix is a ring, which adds no volume until it is marked", () => {
  const { title, project } = tryFix(loose(), "ring-missing", "R1b");
  expect(title).toBe("Fit a device ring on B1 and screw R1b to it");
  const box = project.proposed?.enclosures["B1" as never] as Box | undefined;
  expect(Object.values(box?.rings ?? {})).toMatchObject([{ kind: "plaster-ring", volume: { kind: "unknown" } }]);
  expect(box?.devices["R1b" as never]?.fastenedTo).toBe("ring");
});

test("threads are mended by hand", () => {
  expect(fixOf(loose(ring("plaster-ring")), "ring-missing", "R1b")).toBeUndefined();
});
