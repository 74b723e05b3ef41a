import { expect, test } from "vitest";
import { coverMissing } from "../../shared-model/rules/checks/cover-missing.ts";
import { Drawing } from "./drawing.ts";
import { tryFix } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

const open = (box: string) => laundryProposed().setBox(box, { cover: "none" });

/** A junction box with one joint of the hots of a 20 A circuit in some room. */
const junction = (kind: "attic" | "bedroom", connector: string): Drawing =>
  new Drawing()
    .room("Room", [kind])
    .panel()
    .breaker("Q", 20)
    .box("J", 21, { cover: "none", roomId: "Room" as never })
    .cable("C", "nm-12-2-g", "P", "J")
    .cable("D", "nm-12-2-g", "J", "country")
    .splice("X", "J", connector)
    .put({ "C.bk@P": "Q.OUT", "C.bk@J": "X", "D.bk@J": "X" });

ruleTester(coverMissing, {
  passes: [
    { name: "not recorded", drawing: () => laundryProposed() },
    { name: "a plate", drawing: () => laundryProposed().setBox("B5", { cover: "device-plate" }) },
    { name: "a blank cover", drawing: () => laundryProposed().setBox("B1", { cover: "blank" }) },
  ],
  finds: [
    {
      name: "X11: the stair switch, its screws live where people pass",
      drawing: () => open("B5"),
      findings: [
        {
          on: "B5",
          severity: "danger",
          data: { liveEnds: 2 },
          says: ["B5 has no cover, and C4 BK and C7 BK are live on bare metal where people live", "fit a plate before"],
        },
      ],
    },
    {
      name: "the same in an attic",
      drawing: () => open("B5").room("Stair", ["attic"]),
      findings: [{ on: "B5", severity: "violation", says: ["B5 has no cover. Fit a plate."] }],
    },
    {
      name: "in no room: who passes there is not known",
      drawing: () => {
        const drawing = open("B5");
        const { roomId: _none, ...box } = drawing.at("B5");
        drawing.enclosures.B5 = box as (typeof drawing.enclosures)[string];
        return drawing;
      },
      findings: [{ on: "B5", severity: "violation" }],
    },
    {
      name: "nothing live: the breaker feeds nothing",
      drawing: () => open("B5").put({ "C1.bk@P": "cap" }),
      findings: [{ on: "B5", severity: "violation", data: { liveEnds: 0 } }],
    },
    {
      name: "a joint under a connector is not bare",
      drawing: () => junction("bedroom", "twist-medium"),
      findings: [{ on: "J", severity: "violation", says: ["Fit a blank cover."] }],
    },
    {
      name: "a joint without one is",
      drawing: () => junction("bedroom", "none"),
      findings: [{ on: "J", severity: "danger", data: { liveEnds: 2 } }],
    },
    {
      name: "and in an attic nobody passes",
      drawing: () => junction("attic", "none"),
      findings: [{ on: "J", severity: "violation" }],
    },
    {
      name: "a loose hot end",
      drawing: () => junction("bedroom", "twist-medium").put({ "C.bk@J": "loose" }),
      findings: [{ on: "J", severity: "danger", data: { liveEnds: 1 }, says: ["C BK is live on bare metal"] }],
    },
    {
      name: "a luminaire without its canopy: its leads end in connectors",
      drawing: () => open("B7"),
      findings: [{ on: "B7", severity: "violation", says: ["Fit the canopy of its luminaire."] }],
    },
    {
      name: "outdoors",
      drawing: () => open("B3"),
      findings: [{ on: "B3", says: ["fit a cover that protects it while in use"] }],
    },
  ],
  cannotTell: { never: "a cover that nobody recorded is not asked about" },
});

test("its fix is the cover that belongs there", () => {
  const covers = (["B3", "B5", "B7"] as const).map((box) => {
    const { project } = tryFix(open(box), "cover-missing", box);
    return (project.proposed?.enclosures[box as never] as { readonly cover?: string } | undefined)?.cover;
  });
  expect(covers).toEqual(["weatherproof-in-use", "device-plate", "luminaire"]);
});
