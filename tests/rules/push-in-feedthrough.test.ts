import { describe, expect, test } from "vitest";
import type { Device } from "../../shared-model/model/device.ts";
import { pushInFeedthrough } from "../../shared-model/rules/checks/push-in-feedthrough.ts";
import { Drawing } from "./drawing.ts";
import { fixOf, tryFix } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** A receptacle in the middle of a run of 14 AWG, all four conductors on it. */
const middle = (more: Partial<Device> = {}, awg: "14" | "12" = "14"): Drawing =>
  new Drawing()
    .box("B", 30)
    .cable("C", `nm-${awg}-2-g`, "country", "B")
    .cable("D", `nm-${awg}-2-g`, "B", "garden")
    .device("R", "receptacle-15", "B", { entryKind: "push-in", ...more })
    .put({ "C.bk@B": "R.H1", "D.bk@B": "R.H2", "C.wh@B": "R.N1", "D.wh@B": "R.N2" });

ruleTester(pushInFeedthrough, {
  passes: [
    { name: "side screws in the middle of a run", drawing: () => laundryProposed() },
    { name: "one cable, the last of a run", drawing: () => middle().put({ "D.bk@B": "cap", "D.wh@B": "cap" }) },
    {
      name: "both tabs off: each half has its own supply",
      drawing: () => middle({ hotTab: "removed", neutralTab: "removed" }),
    },
    {
      name: "spliced, one pigtail to the device",
      drawing: () =>
        middle()
          .splice("H", "B", "twist-medium")
          .splice("N", "B", "twist-medium")
          .put({ "C.bk@B": "H", "D.bk@B": "H", "C.wh@B": "N", "D.wh@B": "N" })
          .jumper("h", "B", "H", "R.H1", { awg: "14" })
          .jumper("n", "B", "N", "R.N1", { awg: "14", colour: "white" }),
    },
  ],
  finds: [
    {
      name: "hot and neutral onward through the springs",
      drawing: () => middle(),
      findings: [{ on: "R", severity: "advice", data: { conductors: 4 }, says: ["C BK, D BK, C WH and D WH"] }],
    },
    {
      name: "the neutral alone: the hot tab is off",
      drawing: () => middle({ hotTab: "removed" }),
      findings: [{ on: "R", data: { conductors: 2 } }],
    },
    {
      name: "a jumper to the next device is onward too",
      drawing: () =>
        middle()
          .put({ "D.bk@B": "cap", "D.wh@B": "cap" })
          .device("S", "switch-single-pole", "B")
          .jumper("y", "B", "R.H2", "S.C", { awg: "14" }),
      findings: [{ on: "R", data: { conductors: 2 }, says: ["C BK and y BK"] }],
    },
  ],
  cannotTell: { never: "where conductors are and how a device holds them is recorded, or that of its type" },
});

describe("its fix", () => {
  test("splices both poles and brings a pigtail to each", () => {
    const { title, project } = tryFix(middle(), "push-in-feedthrough", "R");
    expect(title).toBe("Splice the conductors of R and bring one pigtail to it for each");
    const jumpers = Object.values(project.proposed?.enclosures["B" as never]?.jumpers ?? {});
    expect(jumpers.map(({ awg, colour }) => `${awg} ${colour}`).sort()).toEqual(["14 black", "14 white"]);
  });

  test("is withheld where the conductors do not belong in these entries", () => {
    expect(fixOf(middle({}, "12"), "push-in-feedthrough", "R")).toBeUndefined();
  });
});
