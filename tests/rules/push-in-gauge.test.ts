import { describe, expect, test } from "vitest";
import type { Device } from "../../shared-model/model/device.ts";
import { pushInGauge } from "../../shared-model/rules/checks/push-in-gauge.ts";
import { Drawing } from "./drawing.ts";
import { fixOf, tryFix } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** A receptacle with one cable in its push-in entries. */
const pushed = (item: string, more: Parameters<Drawing["setConductors"]>[1] = {}, device: Partial<Device> = {}) =>
  new Drawing()
    .box("B", 20)
    .cable("C", item, "country", "B")
    .setConductors("C", more)
    .device("R", "receptacle-15", "B", { entryKind: "push-in", ...device })
    .put({ "C.bk@B": "R.H1", "C.wh@B": "R.N1" });

ruleTester(pushInGauge, {
  passes: [
    { name: "12 AWG under side screws", drawing: () => laundryProposed() },
    { name: "14 AWG solid copper", drawing: () => pushed("nm-14-2-g") },
    {
      name: "12 AWG on the green screw of a device with push-in entries",
      drawing: () =>
        new Drawing()
          .box("B", 20)
          .cable("C", "nm-12-2-g", "country", "B")
          .device("R", "receptacle-15", "B", { entryKind: "push-in" })
          .put({ "C.cu@B": "R.G" }),
    },
    {
      name: "leads of a dimmer are no entries",
      drawing: () =>
        new Drawing()
          .box("B", 20)
          .cable("C", "nm-12-2-g", "country", "B")
          .device("D", "dimmer", "B", { entryKind: "push-in" })
          .put({ "C.bk@B": "D.C" }),
    },
  ],
  finds: [
    {
      name: "12 AWG in the hall receptacle of the laundry circuit",
      drawing: () => laundryProposed().setDevice("R5", { entryKind: "push-in" }),
      findings: [
        {
          on: "R5",
          severity: "violation",
          data: { conductors: 2, found: "2 × 12" },
          says: ["C5 BK and C5 WH are 2 × 12"],
        },
      ],
    },
    { name: "16 AWG, one too thin", drawing: () => pushed("nm-14-2-g", { awg: "16" }), findings: [{ on: "R" }] },
    {
      name: "14 AWG stranded",
      drawing: () => pushed("nm-14-2-g", { stranded: true }),
      findings: [{ on: "R", says: ["2 × 14 stranded"] }],
    },
    {
      name: "14 AWG aluminium",
      drawing: () => pushed("nm-14-2-g", { material: "aluminium" }),
      findings: [{ on: "R", says: ["2 × 14 aluminium"] }],
    },
    {
      name: "one of two",
      drawing: () => pushed("nm-14-2-g").cable("D", "nm-12-2-g", "country", "B").put({ "D.bk@B": "R.H2" }),
      findings: [{ on: "R", data: { conductors: 1, found: "1 × 12" }, says: ["D BK is 1 × 12"] }],
    },
  ],
  cannotTell: {
    never:
      "size, material and make of every conductor are recorded, and the entry kind is that of the type unless given",
  },
});

describe("its fix", () => {
  const RULE = "push-in-gauge";

  test("moves the conductors to the side screws", () => {
    const { title, left } = tryFix(laundryProposed().setDevice("R5", { entryKind: "push-in" }), RULE, "R5");
    expect(title).toBe("Move the conductors of R5 to its side screws");
    expect(left.filter((one) => !one.startsWith("fill-nearly-full"))).toEqual([]);
  });

  test("brings a pigtail where two would share a screw", () => {
    const drawing = laundryProposed().setDevice("R2", { entryKind: "push-in" }).put({ "C6.bk@B2": "R2.H1" });
    const { title, left } = tryFix(drawing, RULE, "R2");
    expect(title).toBe("Move the conductors of R2 to its side screws, one pigtail to a screw");
    expect(left.filter((one) => !one.startsWith("fill-nearly-full"))).toEqual([]);
  });

  test.each([
    ["stranded on a device not marked for it", pushed("nm-14-2-g", { stranded: true })],
    ["thinner than a screw takes", pushed("nm-14-2-g", { awg: "16" })],
    ["thicker than a screw takes", pushed("nm-10-2-g", { awg: "8" })],
    ["a white and a bare wire that would share a screw", pushed("nm-12-2-g").put({ "C.cu@B": "R.N1" })],
  ])("is withheld for %s", (_, drawing) => {
    expect(fixOf(drawing, RULE, "R")).toBeUndefined();
  });

  test("moves strands where the device is marked for them", () => {
    expect(tryFix(pushed("nm-14-2-g", { stranded: true }, { acceptsStranded: true }), RULE, "R").title).toContain(
      "side screws",
    );
  });
});
