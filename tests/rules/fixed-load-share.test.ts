import type { Device } from "../../shared-model/model/device.ts";
import { fixedLoadShare } from "../../shared-model/rules/checks/fixed-load-share.ts";
import { watts } from "../../shared-model/units/quantity.ts";
import type { Drawing } from "./drawing.ts";
import { ruleTester } from "./rule-tester.ts";
import { inRoom } from "./two-states.ts";

/** Something wired in of so many watts, with a receptacle on the same circuit or without. */
function fastened(loadW: number, ratingA = 15, shared = true, more: Partial<Device> = {}): Drawing {
  const drawing = inRoom(["utility"], { ratingA })
    .box("B", 42)
    .cable("C2", "nm-12-2-g", "A", "B")
    .device("A1", "appliance-120", "B", { loadW: watts(loadW), ...more })
    .put({ "C2.bk@A": "R1.H2", "C2.wh@A": "R1.N2", "C2.bk@B": "A1.H", "C2.wh@B": "A1.N" });
  if (shared) return drawing;
  return drawing
    .splice("h", "A", "twist-medium")
    .splice("n", "A", "twist-medium")
    .put({ "C1.bk@A": "h", "C2.bk@A": "h", "C1.wh@A": "n", "C2.wh@A": "n" });
}

/** By hand, at 120 V: 720 W are 6 A, 900 W are 7.5 A, which is half of 15 A, 1080 W are 9 A. */
ruleTester(fixedLoadShare, {
  passes: [
    { name: "6 A on a shared 15 A circuit", drawing: () => fastened(720) },
    { name: "exactly half", drawing: () => fastened(900) },
    { name: "9 A on a circuit of its own", drawing: () => fastened(1080, 15, false) },
    { name: "9 A on a shared 20 A circuit", drawing: () => fastened(1080, 20) },
    { name: "a circuit of 30 A is not asked", drawing: () => fastened(2400, 30) },
  ],
  finds: [
    {
      name: "9 A on a shared 15 A circuit",
      drawing: () => fastened(1080),
      findings: [
        {
          on: "Q1",
          severity: "caution",
          data: { loadA: 9, mostA: 7.5 },
          says: [
            "9 A of equipment fastened in place (A1) on Q1 of 15 A in P, which feeds R1 too",
            "7.5 A is the most there (50 %)",
          ],
        },
      ],
    },
    {
      name: "11 A on a shared 20 A circuit",
      drawing: () => fastened(1320, 20),
      findings: [{ on: "Q1", data: { loadA: 11, mostA: 10 } }],
    },
    {
      name: "it rests on the watts",
      drawing: () => fastened(1080, 15, true, { evidence: { loadW: "assumed" } }),
      findings: [{ on: "Q1", basis: "assumed" }],
    },
  ],
  cannotTell: { never: "equipment without recorded watts does not count, and a missing rating is asked for elsewhere" },
});
