import { expect, test } from "vitest";
import type { Box } from "../../shared-model/model/enclosure.ts";
import type { RoomKind } from "../../shared-model/model/room.ts";
import { wetBoxCover } from "../../shared-model/rules/checks/wet-box-cover.ts";
import { amps } from "../../shared-model/units/quantity.ts";
import { checkDocument } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { tryFix } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

const porch = (cover: Box["cover"] & string, more: Partial<Box> = {}) =>
  laundryProposed().setBox("B3", { cover, ...more });

const indoors = (kinds: readonly RoomKind[], box: Partial<Box>): Drawing =>
  new Drawing()
    .room("Room", kinds)
    .box("B", 18, { roomId: "Room" as never, ...box })
    .device("R", "receptacle-15", "B");

ruleTester(wetBoxCover, {
  passes: [
    { name: "cover not recorded", drawing: () => laundryProposed() },
    { name: "an in-use cover", drawing: () => porch("weatherproof-in-use") },
    { name: "a flap under a roof", drawing: () => porch("weatherproof-closed", { exposure: "damp" }) },
    {
      name: "a plate in the dry, though outdoors by its room",
      drawing: () => porch("device-plate", { exposure: "dry" }),
    },
    { name: "a plate indoors", drawing: () => indoors(["bedroom"], { cover: "device-plate" }) },
    { name: "a flap in a damp cellar", drawing: () => indoors(["damp-wet-indoor"], { cover: "weatherproof-closed" }) },
    { name: "no cover at all is another rule's", drawing: () => porch("none") },
    {
      name: "a receptacle of 30 A",
      drawing: () => porch("weatherproof-closed").setDevice("R3", { ratingA: amps(30) }),
    },
    {
      name: "a switch",
      drawing: () =>
        new Drawing().box("B", 18, { exposure: "wet", cover: "device-plate" }).device("S", "switch-single-pole", "B"),
    },
  ],
  finds: [
    {
      name: "a flap on the porch, which nobody recorded as damp",
      drawing: () => porch("weatherproof-closed"),
      findings: [
        {
          on: "B3 R3",
          severity: "violation",
          basis: "assumed",
          says: [
            "The cover of B3 protects R3 only while nothing is plugged in",
            "record B3 as damp if a roof keeps it off",
          ],
        },
      ],
    },
    {
      name: "a flap in the rain, as seen",
      drawing: () => porch("weatherproof-closed", { exposure: "wet", evidence: { exposure: "seen", cover: "seen" } }),
      findings: [{ on: "B3 R3", basis: "seen", says: ["and rain reaches it there. Fit a cover"] }],
    },
    {
      name: "a plain plate outdoors",
      drawing: () => porch("device-plate"),
      findings: [{ on: "B3 R3", says: ["keeps no water from R3, and rain reaches it there"] }],
    },
    {
      name: "a plain plate under a roof",
      drawing: () => porch("device-plate", { exposure: "damp" }),
      findings: [{ on: "B3 R3", says: ["and it is damp there. Fit a weatherproof cover."] }],
    },
    {
      name: "a receptacle of 20 A",
      drawing: () => porch("weatherproof-closed").setDevice("R3", { ratingA: amps(20) }),
      findings: [{ on: "B3 R3" }],
    },
  ],
  cannotTell: { never: "what is outdoors counts as wet, and a cover that nobody recorded is not asked about" },
});

test("sections: the damp has its own", () => {
  const section = (box: Partial<Box>) =>
    checkDocument(porch("device-plate", box).project()).findings.find(({ rule }) => rule === "wet-box-cover")?.section;
  expect(section({ exposure: "wet" })?.section).toBe("406.9(B)(1)");
  expect(section({ exposure: "damp" })?.section).toBe("406.9(A)");
});

test("its offer is the cover that is enough there", () => {
  const cover = (box: Partial<Box>) => {
    const { project } = tryFix(porch("device-plate", box), "wet-box-cover", "B3", { offer: "Fit" });
    return (project.proposed?.enclosures["B3" as never] as Box | undefined)?.cover;
  };
  expect([cover({}), cover({ exposure: "damp" })]).toEqual(["weatherproof-in-use", "weatherproof-closed"]);
});
