import { expect, test } from "vitest";
import { downstreamNeutralOnLine } from "../../shared-model/rules/checks/downstream-neutral-on-line.ts";
import { volts } from "../../shared-model/units/quantity.ts";
import { checkDocument, inShort, ofWiring } from "./check-drawing.ts";
import { fixOf } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

ruleTester(downstreamNeutralOnLine, {
  passes: [
    { name: "both conductors behind", drawing: () => laundryProposed() },
    {
      name: "both conductors on LINE: another matter",
      drawing: () => laundryProposed().put({ "C5.bk@B1": "HL", "C5.wh@B1": "NL" }),
    },
    { name: "the hot on LINE: another matter", drawing: () => laundryProposed().put({ "C4.wh@B1": "ND" }) },
    {
      name: "the neutrals of both sides joined: another matter",
      drawing: () => laundryProposed().jumper("y", "B1", "NL", "ND"),
    },
    { name: "no neutral at all: another matter", drawing: () => laundryProposed().put({ "C5.wh@B1": "cap" }) },
  ],
  finds: [
    {
      name: "it rests on who says where the white is",
      drawing: () => laundryProposed().put({ "C5.wh@B1": "NL" }).knownBy("C5.wh@B1", "assumed"),
      findings: [{ on: "R5", basis: "assumed", severity: "caution" }],
    },
    {
      name: "one white left in the LINE bundle: two outlets that must be protected",
      drawing: () => laundryProposed().put({ "C2.wh@B1": "NL" }),
      findings: [
        { on: "R2", severity: "violation", data: { tripsAboveW: 0.72, device: "R1b" }, says: ["Move C2 WH"] },
        { on: "R3", severity: "violation", says: ["Move C2 WH"] },
      ],
    },
    {
      name: "the same at an outlet whose protection is a wish",
      drawing: () => laundryProposed().put({ "C5.wh@B1": "NL" }),
      findings: [{ on: "R5", severity: "caution", says: ["over about 0.7 W", "Move C5 WH"] }],
    },
    {
      name: "it becomes a violation with the edition that lists the place",
      drawing: () =>
        laundryProposed(2020)
          .setDevice("R5", { zones: ["damp-wet-indoor"] })
          .put({ "C5.wh@B1": "NL" }),
      findings: [{ on: "R5", severity: "violation" }],
    },
    {
      name: "the edition before it does not list it",
      drawing: () =>
        laundryProposed(2017)
          .setDevice("R5", { zones: ["damp-wet-indoor"] })
          .put({ "C5.wh@B1": "NL" }),
      findings: [{ on: "R5", severity: "caution" }],
    },
  ],
  cannotTell: { never: "terminals and conductors are drawn or they are not" },
});

test("that the outlet is not protected follows from it and is folded", () => {
  const findings = ofWiring(checkDocument(laundryProposed().put({ "C2.wh@B1": "NL" }).project()).findings);
  expect(inShort(findings)).toEqual(["downstream-neutral-on-line R2", "downstream-neutral-on-line R3"]);
  expect(findings.map(({ folded }) => folded)).toEqual([1, 1]);
});

test("the load that trips it goes by the voltage of the supply: 6 mA at 127 V is 0.76 W", () => {
  const drawing = laundryProposed().put({ "C5.wh@B1": "NL" });
  drawing.extra.supply = { system: "208Y/120", nominalV: volts(127) };
  expect(checkDocument(drawing.project()).findings[0]?.numbers.tripsAboveW).toBe(0.76);
});

test("the white goes into the splice of LOAD: all outlets of the cable are mended", () => {
  const { title, gained, left } = trySectionFix(
    laundryProposed().put({ "C2.wh@B1": "NL" }),
    "downstream-neutral-on-line",
    "R3",
  );
  expect(title).toBe("Move C2 WH to the LOAD neutral of R1b");
  expect(gained).toEqual(["R2", "R3"]);
  expect(left.filter((one) => one.startsWith("downstream"))).toEqual([]);
  expect(fixOf(laundryProposed().put({ "C5.wh@B1": "NL" }), "downstream-neutral-on-line", "R5")?.call).toEqual({
    command: "join-splice",
    args: { state: "proposed", enclosure: "B1", end: "C5.wh.a", splice: "ND" },
  });
});

test("without a splice it goes to a free hole of LOAD", () => {
  const direct = laundryProposed().put({ "C5.wh@B1": "NL", "C2.wh@B1": "R1b.LOAD_N#1" }).removeJumper("d");
  const { project } = trySectionFix(direct, "downstream-neutral-on-line", "R5");
  expect(project.proposed?.enclosures["B1" as never]?.places["C5.wh.a" as never]).toEqual({
    at: { kind: "terminal", device: "R1b", terminal: "LOAD_N", hole: 2 },
  });
});

test("a splice that gets too many conductors for its connector gets another", () => {
  const drawing = laundryProposed()
    .box("B8", 18, { internalClamps: "none" })
    .cable("C8", "nm-12-2-g", "B1", "B8")
    .device("R8", "receptacle-15", "B8")
    .put({ "C8.bk@B1": "HD", "C8.wh@B1": "NL", "C8.cu@B1": "E2", "C8.bk@B8": "R8.H1", "C8.wh@B8": "R8.N1" })
    .setSplice("HD", { connector: "twist-large" });
  const { title, gained } = trySectionFix(drawing, "downstream-neutral-on-line", "R8");
  expect(title).toBe("Move C8 WH to the LOAD neutral of R1b; ND gets “Twist-on, large”");
  expect(gained).toEqual(["R8"]);
});
