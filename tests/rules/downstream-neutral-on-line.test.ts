import { expect, test } from "vitest";
import { downstreamNeutralOnLine } from "../../shared-model/rules/checks/downstream-neutral-on-line.ts";
import { volts } from "../../shared-model/units/quantity.ts";
import { checkDocument, inShort } from "./check-drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

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
  const { findings } = checkDocument(laundryProposed().put({ "C2.wh@B1": "NL" }).project());
  expect(inShort(findings)).toEqual(["downstream-neutral-on-line R2", "downstream-neutral-on-line R3"]);
  expect(findings.map(({ folded }) => folded)).toEqual([1, 1]);
});

test("the load that trips it goes by the voltage of the supply: 6 mA at 127 V is 0.76 W", () => {
  const drawing = laundryProposed().put({ "C5.wh@B1": "NL" });
  drawing.extra.supply = { system: "208Y/120", nominalV: volts(127) };
  expect(checkDocument(drawing.project()).findings[0]?.numbers.tripsAboveW).toBe(0.76);
});

test("in proposed it offers to join the splice on LOAD, or a free hole of LOAD", () => {
  const fixOf = (drawing: ReturnType<typeof laundryProposed>) => {
    const project = drawing.project();
    return checkDocument({ ...project, proposed: project.asFound }, "proposed").findings.find(
      ({ rule }) => rule === "downstream-neutral-on-line",
    )?.fix?.call;
  };
  expect(fixOf(laundryProposed().put({ "C5.wh@B1": "NL" }))).toEqual({
    command: "join-splice",
    args: { state: "proposed", enclosure: "B1", end: "C5.wh.a", splice: "ND" },
  });
  const direct = laundryProposed().put({ "C5.wh@B1": "NL", "C2.wh@B1": "R1b.LOAD_N#1" }).removeJumper("d");
  expect(fixOf(direct)).toEqual({
    command: "land-end",
    args: {
      state: "proposed",
      enclosure: "B1",
      end: "C5.wh.a",
      at: { kind: "terminal", device: "R1b", terminal: "LOAD_N", hole: 2 },
    },
  });
});
