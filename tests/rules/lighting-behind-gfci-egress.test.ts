import type { RoomKind } from "../../shared-model/model/room.ts";
import { lightingBehindGfciEgress } from "../../shared-model/rules/checks/lighting-behind-gfci-egress.ts";
import type { Drawing } from "./drawing.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** The cable of the stair light on LOAD of R1b: X67 of our list of slips. */
const dark = (edition: 2017 | 2020 = 2020): Drawing =>
  laundryProposed(edition).put({ "C4.bk@B1": "HD", "C4.wh@B1": "ND" });

const stairIs = (kinds: readonly RoomKind[]): Drawing => {
  const drawing = dark(2017);
  return drawing.room("Stair", kinds);
};

/** A second luminaire of the stair, fed by the cable that is said. */
const second = (hot: string, neutral: string): Drawing =>
  dark()
    .device("L2", "luminaire-led-9", "B5")
    .jumper("y", "B5", hot, "L2.H")
    .jumper("z", "B5", neutral, "L2.N", { colour: "white" });

ruleTester(lightingBehindGfciEgress, {
  passes: [
    { name: "the stair light is on LINE", drawing: () => laundryProposed() },
    { name: "the customer wished its protection", drawing: () => dark().wish({ L1: "protect" }) },
    { name: "the cable is meant to be behind R1b", drawing: () => dark().meant("B1", { C4: true }) },
    { name: "a light in a bedroom", drawing: () => stairIs(["bedroom"]) },
    {
      name: "a light over a shower",
      drawing: () => dark().setDevice("L1", { zones: ["bathroom", "tub-shower-zone"] }),
    },
    { name: "a light in a crawl space must be protected in 2017", drawing: () => stairIs(["crawl-space", "stair"]) },
    {
      name: "a breaker takes the whole circuit in any case",
      drawing: () =>
        laundryAsFound().breaker("QG", 20, {}, "breaker-gfci-1").put({ "C1.bk@P": "QG.OUT", "C1.wh@P": "QG.LOAD_N" }),
    },
    {
      name: "another light of the stair stays on",
      drawing: () =>
        dark()
          .box("B8", 18, { roomId: "Stair" as never })
          .cable("C8", "nm-12-2-g", "B1", "B8")
          .device("L2", "luminaire-led-9", "B8")
          .put({ "C8.bk@B1": "HL", "C8.wh@B1": "NL", "C8.bk@B8": "L2.H", "C8.wh@B8": "L2.N" }),
    },
  ],
  finds: [
    {
      name: "the stair light on LOAD",
      drawing: () => dark(),
      findings: [
        {
          on: "L1",
          severity: "advice",
          data: { device: "R1b" },
          says: ["A trip of R1b in B1 leaves Stair dark: L1 is behind it", "feed it from LINE of R1b"],
        },
      ],
    },
    {
      name: "two lights of the stair",
      drawing: () => second("S1.L", "B5n"),
      findings: [{ on: "L1 L2", says: ["L1 and L2 are behind it"] }],
    },
    {
      name: "somebody decided against it, and it is there; who says where the black is",
      drawing: () => dark().wish({ L1: "decided-not" }).knownBy("C4.bk@B1", "told"),
      findings: [{ on: "L1", basis: "told" }],
    },
    { name: "a bathroom light", drawing: () => stairIs(["bathroom"]), findings: [{ on: "L1" }] },
    {
      name: "a crawl-space stair, where the edition wants protection of the light no more",
      drawing: () =>
        dark()
          .setDevice("L1", { zones: ["crawl-space"] })
          .setBox("B7", { roomId: "Stair" as never }),
      findings: [],
    },
    {
      name: "a zone without a room: it is called by its box",
      drawing: () => {
        const drawing = dark().setDevice("L1", { zones: ["stair"] });
        const { roomId: _none, ...box } = drawing.at("B7");
        drawing.enclosures.B7 = box as never;
        return drawing;
      },
      findings: [{ on: "L1", says: ["leaves B7 dark"] }],
    },
  ],
  cannotTell: { never: "a box without a room is in no stair: that it is in no room is asked elsewhere" },
});
