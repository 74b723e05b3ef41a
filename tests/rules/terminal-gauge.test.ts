import { describe, expect, test } from "vitest";
import type { Device } from "../../shared-model/model/device.ts";
import { terminalGauge } from "../../shared-model/rules/checks/terminal-gauge.ts";
import type { WireSize } from "../../shared-model/units/wire-size.ts";
import { Drawing } from "./drawing.ts";
import { findingOn, proposing, tryFix } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** A device with the hot of one cable on one of its terminals. */
const on = (type: string, terminal: string, awg: WireSize, more: Partial<Device> = {}): Drawing =>
  new Drawing()
    .box("B", 60)
    .cable("C", "nm-12-2-g", "country", "B")
    .setConductors("C", { awg })
    .device("R", type, "B", more)
    .put({ "C.bk@B": `R.${terminal}` });

/** A breaker with the hot of one cable. */
const breaker = (awg: WireSize, ratingA: number): Drawing =>
  new Drawing()
    .panel()
    .breaker("Q", ratingA)
    .cable("C", "nm-12-2-g", "P", "country")
    .setConductors("C", { awg })
    .put({ "C.bk@P": "Q.OUT" });

ruleTester(terminalGauge, {
  passes: [
    { name: "12 AWG everywhere", drawing: () => laundryProposed() },
    { name: "12 AWG in a clamp plate made for 14 and 12", drawing: () => on("gfci-receptacle-15", "LINE_H", "12") },
    { name: "14 AWG there", drawing: () => on("gfci-receptacle-15", "LINE_H", "14") },
    { name: "10 AWG under a side screw", drawing: () => on("receptacle-15", "H1", "10") },
    { name: "a lead, whose connector is not drawn", drawing: () => on("appliance-240", "L1", "8") },
    {
      name: "a push-in entry, which has a rule of its own",
      drawing: () => on("receptacle-15", "H1", "8", { entryKind: "push-in" }),
    },
    { name: "8 AWG on a breaker of 30 A", drawing: () => breaker("8", 30) },
    { name: "6 AWG on a breaker of 50 A, which has larger lugs", drawing: () => breaker("6", 50) },
  ],
  finds: [
    {
      name: "10 AWG in a clamp plate made for 14 and 12",
      drawing: () => on("gfci-receptacle-15", "LINE_H", "10"),
      findings: [
        {
          on: "R LINE H",
          severity: "violation",
          data: { found: "10", thinnest: "14", thickest: "12" },
          says: ["C BK is 10 AWG, too thick", "14 to 12 AWG"],
        },
      ],
    },
    {
      name: "16 AWG under a side screw",
      drawing: () => on("receptacle-15", "H1", "16"),
      findings: [{ on: "R H", says: ["C BK is 16 AWG, too thin"] }],
    },
    { name: "8 AWG under a side screw", drawing: () => on("receptacle-15", "H1", "8"), findings: [{ on: "R H" }] },
    { name: "6 AWG on a breaker of 30 A", drawing: () => breaker("6", 30), findings: [{ on: "Q H" }] },
    {
      name: "two of one plate, one too thick",
      drawing: () =>
        on("gfci-receptacle-15", "LOAD_H", "12")
          .cable("D", "nm-10-2-g", "country", "B")
          .put({ "D.bk@B": "R.LOAD_H#2" }),
      findings: [{ on: "R LOAD H", data: { found: "10", thinnest: "14", thickest: "12" }, says: ["D BK is 10 AWG"] }],
    },
  ],
  cannotTell: { never: "the size of every conductor is recorded, and that of the terminal is that of its kind" },
});

describe("what it offers", () => {
  test("a jumper that is too thin is made anew, as thick as what it is spliced with", () => {
    const { title } = tryFix(laundryProposed().setJumper("a", { awg: "16" }), "terminal-gauge", "R1b LINE H", {
      offer: "Make jumper",
    });
    expect(title).toBe("Make jumper a of 12 AWG");
  });

  test("a conductor of a cable that is too thin gets a pigtail that the terminal takes", () => {
    const drawing = on("receptacle-15", "H1", "16").jumper("x", "B", "R.N1", "cap");
    const { title, project } = tryFix(drawing, "terminal-gauge", "R H", { offer: "Splice" });
    expect(title).toBe("Splice C BK with a pigtail of 14 AWG to R H");
    const box = project.proposed?.enclosures["B" as never];
    expect(box?.places["C.bk.b" as never]?.at.kind).toBe("splice");
  });

  test("nothing where it is too thick: which pigtail the breaker allows is not seen in the box", () => {
    const { offers } = findingOn(proposing(on("gfci-receptacle-15", "LINE_H", "10")), "terminal-gauge", "R LINE H");
    expect(offers ?? []).toEqual([]);
  });
});
