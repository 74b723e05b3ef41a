import { expect, test } from "vitest";
import { egcOnwardFromNoGround } from "../../shared-model/rules/checks/egc-onward-from-no-ground.ts";
import { ruleTester } from "./rule-tester.ts";
import { press, unchanged } from "./two-states.ts";
import { groundBetween, twoWire } from "./two-wire.ts";

ruleTester(egcOnwardFromNoGround, {
  passes: [
    { name: "two-wire without any ground", drawing: () => twoWire() },
    {
      name: "a ground between the boxes, capped at one end",
      drawing: () => groundBetween(twoWire()).put({ "V9.cu@BT2": "cap" }),
    },
    {
      name: "a ground that comes from the panel",
      drawing: () =>
        groundBetween(twoWire())
          .cable("V8", "nm-14-2-g", "P", "BT1")
          .put({ "V8.cu@P": "P-GB.BAR", "V8.cu@BT1": "T1.G#1" }),
    },
    {
      name: "a pigtail to the box goes nowhere else",
      drawing: () => twoWire().jumper("b", "BT1", "T1.G", "bond", { colour: "bare" }),
    },
    { name: "a feed with a ground that is parted: another rule", drawing: () => partedFeed() },
  ],
  finds: [
    {
      name: "from the ground-fault receptacle to the one behind it",
      drawing: () => groundBetween(twoWire()),
      findings: [
        {
          on: "T1",
          severity: "violation",
          says: ["T1 in BT1 has no ground, and V9 bare joins its ground screw to T2", "Detach and cap V9 bare"],
        },
      ],
    },
    {
      name: "between two behind a ground-fault breaker",
      drawing: () => groundBetween(twoWire({ first: "receptacle-15", breaker: "breaker-gfci-1" })),
      findings: [{ on: "T1" }],
    },
    {
      name: "by a splice and a pigtail",
      drawing: () =>
        groundBetween(twoWire())
          .splice("E", "BT1", "twist-medium")
          .put({ "V9.cu@BT1": "E" })
          .jumper("g", "BT1", "E", "T1.G", { colour: "bare" }),
      findings: [{ on: "T1" }],
    },
    {
      name: "it rests on where the ground is",
      drawing: () => groundBetween(twoWire()).knownBy("V9.cu@BT1", "told"),
      findings: [{ on: "T1", basis: "told" }],
    },
  ],
  cannotTell: { never: "what is drawn joins them or does not" },
});

function partedFeed() {
  const drawing = groundBetween(twoWire());
  drawing
    .cable("V1", "nm-14-2-g", "P", "BT1")
    .put({ "V1.bk@P": "QT.OUT", "V1.wh@P": "P-NB.BAR", "V1.bk@BT1": "T1.LINE_H", "V1.wh@BT1": "T1.LINE_N" });
  return drawing
    .cable("V2", "nm-14-2-g", "BT1", "BT2")
    .put({ "V2.bk@BT1": "T1.LOAD_H", "V2.wh@BT1": "T1.LOAD_N", "V2.bk@BT2": "T2.H1", "V2.wh@BT2": "T2.N1" });
}

test("the fix caps it at both ends", () => {
  const { title, left } = press(unchanged(groundBetween(twoWire())), "egc-onward-from-no-ground", "T1");
  expect(title).toBe("Detach and cap V9 bare in BT1 and V9 bare in BT2");
  expect(left).not.toContain("egc-onward-from-no-ground T2");
});
