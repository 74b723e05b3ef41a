import { expect, test } from "vitest";
import type { Box } from "../../shared-model/model/enclosure.ts";
import type { Edition } from "../../shared-model/model/project.ts";
import type { RoomKind } from "../../shared-model/model/room.ts";
import { spareFanConductor } from "../../shared-model/rules/checks/spare-fan-conductor.ts";
import { Drawing } from "./drawing.ts";
import { tryFix } from "./fix-tester.ts";
import { ruleTester } from "./rule-tester.ts";

interface Ceiling {
  readonly edition?: Edition;
  readonly kinds?: readonly RoomKind[];
  readonly box?: Partial<Box>;
  /** Where black and red start at the switches. */
  readonly red?: string;
}

/** A ceiling light on S1 by the black of a 12/3, its red capped at the light and on S2. */
function ceiling({ edition = 2020, kinds = ["bedroom"], box = {}, red = "S2.L" }: Ceiling = {}): Drawing {
  return new Drawing(edition)
    .room("Room", kinds)
    .panel()
    .breaker("Q", 20)
    .box("SB", 34, { gangs: 2 })
    .box("B", 21.5, {
      shape: "octagon",
      mountedOn: "ceiling",
      listedFor: ["luminaire"],
      roomId: "Room" as never,
      ...box,
    })
    .cable("C", "nm-12-2-g", "P", "SB")
    .cable("D", "nm-12-3-g", "SB", "B")
    .device("S1", "switch-single-pole", "SB")
    .device("S2", "switch-single-pole", "SB")
    .device("L", "luminaire-60", "B")
    .splice("H", "SB", "twist-medium")
    .splice("N", "SB", "twist-medium")
    .put({ "C.bk@P": "Q.OUT", "C.wh@P": "P-NB.BAR", "C.bk@SB": "H", "C.wh@SB": "N", "D.wh@SB": "N" })
    .jumper("a", "SB", "H", "S1.C")
    .jumper("b", "SB", "H", "S2.C")
    .put({ "D.bk@SB": "S1.L", "D.rd@SB": red, "D.bk@B": "L.H", "D.wh@B": "L.N" });
}

ruleTester(spareFanConductor, {
  passes: [
    { name: "listed for fans", drawing: () => ceiling({ box: { listedFor: ["luminaire", "fan"] } }) },
    { name: "both conductors on one switch", drawing: () => ceiling({ red: "S1.L" }) },
    { name: "the spare one on no switch, always live", drawing: () => ceiling({ red: "H" }) },
    { name: "the spare one dead", drawing: () => ceiling({ red: "cap" }) },
    { name: "a bathroom", drawing: () => ceiling({ kinds: ["bathroom"] }) },
    { name: "a wall", drawing: () => ceiling({ box: { mountedOn: "wall" } }) },
    {
      name: "2023, framing in reach behind the box",
      drawing: () => ceiling({ edition: 2023, box: { framingBehind: true } }),
    },
    { name: "2023, in a hallway", drawing: () => ceiling({ edition: 2023, kinds: ["hallway"] }) },
    {
      name: "a fan hangs there already: another rule",
      drawing: () => ceiling({ edition: 2023 }).device("F", "fan-light", "B"),
    },
  ],
  finds: [
    {
      name: "2020: a spare conductor on a switch of its own",
      drawing: () => ceiling(),
      findings: [
        {
          on: "B",
          severity: "caution",
          says: ["D RD in B is switched and spare", "an old one may stay, without a fan"],
        },
      ],
    },
    {
      name: "2017, in a kitchen",
      drawing: () => ceiling({ edition: 2017, kinds: ["kitchen-other"] }),
      findings: [{ on: "B" }],
    },
    {
      name: "2020: framing in reach behind it does not count yet",
      drawing: () => ceiling({ box: { framingBehind: true } }),
      findings: [{ on: "B" }],
    },
    {
      name: "2023: no spare conductor is needed",
      drawing: () => ceiling({ edition: 2023, red: "cap" }),
      findings: [{ on: "B", says: ["B is in the ceiling of a room where a fan may come"] }],
    },
    {
      name: "2026, which answers with the text of 2023, on an assumed listing",
      drawing: () => ceiling({ edition: 2026, red: "cap", box: { evidence: { listedFor: "assumed" } } }),
      findings: [{ on: "B", basis: "assumed" }],
    },
  ],
  cannotTell: { never: "a box that is not recorded as in a ceiling, or whose listing is not, is not asked about" },
});

test("its offer is a box that is listed for fans", () => {
  const { project } = tryFix(ceiling(), "spare-fan-conductor", "B", { offer: "listed for fans" });
  expect((project.proposed?.enclosures["B" as never] as Box | undefined)?.listedFor).toEqual(["luminaire", "fan"]);
});
