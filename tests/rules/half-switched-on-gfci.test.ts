import { expect, test } from "vitest";
import type { RoomKind } from "../../shared-model/model/room.ts";
import { halfSwitchedOnGfci } from "../../shared-model/rules/checks/half-switched-on-gfci.ts";
import { checkDocument } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** A ground-fault receptacle in place of a split one in the hall, which is now a room of that kind. */
const inRoom = (kinds: readonly RoomKind[]): Drawing =>
  laundryProposed().room("Hall", kinds).device("R5b", "gfci-receptacle-15", "B6", { wasSplit: true });

/** L1, which S1 switches, hangs in the same room. */
const withLight = (hot: string): Drawing =>
  inRoom(["bedroom"])
    .setBox("B7", { roomId: "Hall" as never })
    .put({ "C7.bk@B5": hot });

ruleTester(halfSwitchedOnGfci, {
  passes: [
    { name: "it was whole", drawing: () => laundryProposed() },
    {
      name: "an ordinary duplex keeps its halves",
      drawing: () => laundryProposed().setDevice("R5", { wasSplit: true }),
    },
    {
      name: "it is recorded that it was whole",
      drawing: () => laundryProposed().setDevice("R1b", { wasSplit: false }),
    },
  ],
  finds: [
    {
      name: "in a laundry: X69 of our list of slips",
      drawing: () => laundryProposed().setDevice("R1b", { wasSplit: true, evidence: { wasSplit: "told" } }),
      findings: [{ on: "R1b", severity: "caution", basis: "told", says: ["no break-off tabs"] }],
    },
    {
      name: "in a bedroom without another switched light",
      drawing: () => inRoom(["bedroom"]),
      findings: [
        { on: "R5b", severity: "violation", basis: "assumed", says: ["no other switched lighting outlet of Hall"] },
      ],
    },
    {
      name: "in a bedroom with a luminaire that a switch turns off",
      drawing: () => withLight("S1.L"),
      findings: [{ on: "R5b", severity: "caution" }],
    },
    {
      name: "in a bedroom with a luminaire that no switch turns off",
      drawing: () => withLight("S1.C"),
      findings: [{ on: "R5b", severity: "violation" }],
    },
    {
      name: "a hallway may not have a receptacle for its light in the first place",
      drawing: () => inRoom(["hallway"]),
      findings: [{ on: "R5b", severity: "caution" }],
    },
    {
      name: "a box in no room",
      drawing: () => {
        const drawing = inRoom(["bedroom"]);
        const { roomId: _none, ...box } = drawing.at("B6");
        drawing.enclosures.B6 = box as never;
        return drawing;
      },
      findings: [{ on: "R5b", severity: "caution" }],
    },
  ],
  cannotTell: { never: "that it was split is recorded or it is not" },
});

test("the section goes by what is told", () => {
  const section = (drawing: Drawing) =>
    checkDocument(drawing.project()).findings.find(({ rule }) => rule === "half-switched-on-gfci")?.section?.section;
  expect([section(inRoom(["bedroom"])), section(inRoom(["hallway"]))]).toEqual(["210.70(A)", "110.3(B)"]);
});
